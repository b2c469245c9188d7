import { type Catalogue, findModel, parseCatalogue, partFor } from "../catalogue/index.ts";
import type { ShopCatalogue } from "../loading/index.ts";
import { type Complain, complainOfRows, complain as complainOnce, readJson } from "../loading/index.ts";

/**
 * Asks a shop that keeps its parts elsewhere what it has for a model code: models and parts in the shape of a
 * catalogue file, as many as may be meant. It may throw, wait for ever or answer nonsense.
 */
export type Lookup = (code: string) => unknown;

/** Seconds before a try counts as failed; there are two, and a person waits for both. */
const PATIENCE_SECONDS = 8;

/**
 * A catalogue that is asked code by code. What comes back is parsed like any catalogue, so near misses are offered
 * and never taken. Each code is asked for once; a failure is tried once more at once, and anew at the next question.
 */
export function createShopLookup(ask: Lookup, complain: Complain = complainOnce): ShopCatalogue {
  const known = new Map<string, Promise<Catalogue>>();
  const look = (typed: string) => {
    const code = typed.trim();
    const asked = known.get(code) ?? askTwice(ask, code, complain);
    known.set(code, asked);
    asked.catch(() => known.delete(code));
    return asked;
  };
  return {
    findModel: async (typed) => findModel(await look(typed), typed),
    partFor: async (code, kind, plate) => partFor(await look(code), code, kind, plate),
    warmUp: () => {},
    isRefused: () => false,
  };
}

/** @param address gets `?code=…`; 404 says that the shop does not know the code */
export function lookupAt(address: string, get: typeof fetch, complain: Complain = complainOnce): Lookup {
  return async (code) => {
    const url = new URL(address);
    url.searchParams.set("code", code);
    const response = await get(url.href);
    if (response.status === 404) return { models: [], parts: [] };
    if (!response.ok) throw new Error("unreachable");
    // Without the code: each of them would be a complaint of its own.
    return (await readJson(response, address, complain)).json;
  };
}

async function askTwice(ask: Lookup, code: string, complain: Complain): Promise<Catalogue> {
  const answer = await inTime(ask, code)
    .catch(() => inTime(ask, code))
    .catch((problem: unknown) => {
      const reason = problem instanceof Error ? problem.message : String(problem);
      complain(`lookup failed twice: ${reason.slice(0, 200)}`, "lookup failed");
      throw problem;
    });
  const { catalogue, problems } = parseCatalogue(answer);
  // An empty answer is one; something that is no catalogue at all is not.
  if (problems.some(({ code: fault }) => fault === "not-a-catalogue" || fault === "not-a-list")) {
    const got = typeof answer === "string" && /^\s*</.test(answer) ? "a web page" : "something else";
    complain(`lookup must answer {models: [...], parts: [...]}; got ${got}.`, "lookup shape");
    throw new Error("unusable");
  }
  complainOfRows("lookup", problems, complain);
  return catalogue;
}

function inTime(ask: Lookup, code: string): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("no-answer")), PATIENCE_SECONDS * 1000);
    Promise.resolve()
      .then(() => ask(code))
      .then(resolve, reject)
      .finally(() => clearTimeout(timer));
  });
}
