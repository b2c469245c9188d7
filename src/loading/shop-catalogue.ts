import {
  type Catalogue,
  findModel,
  isManifest,
  type Part,
  type Plate,
  parseInSteps,
  partFor,
} from "../catalogue/index.ts";
import type { FoundModel, FoundPart } from "../turn/index.ts";
import { type Complain, complain } from "./complain.ts";
import { nextTask } from "./pace/index.ts";
import { HEAVY_BYTES, readJson, TOO_HEAVY_BYTES } from "./read-json.ts";
import { complainOfRows } from "./row-complaints.ts";

/** Seconds before a file counts as out of reach; poor signal beside a fridge is the rule. */
const PATIENCE_SECONDS = 15;

/** What a shop sells, as far as a screen asks. */
export type ShopCatalogue = {
  findModel(typed: string): Promise<FoundModel>;
  partFor(code: string, kind: string, plate?: Plate): Promise<FoundPart>;
  /** Starts the fetch early, so that a person who walks out of reach has it already. */
  warmUp(): void;
  /** True once it is known that the catalogue cannot be used on a phone: parts are named by kind only. */
  isRefused(): boolean;
};

type Listeners = { complain: Complain; seen?: (parts: readonly Part[]) => void };

type Loaded = Pick<ShopCatalogue, "findModel" | "partFor">;

/**
 * The shop's catalogue, one file or many, fetched when it is needed and parsed at the door. A failed fetch is tried
 * anew at the next question.
 * @param address where the catalogue lies; null rejects every question with "missing"
 * @param listeners the page's developer, and who looks through the parts of a catalogue in one file
 */
export function createShopCatalogue(
  address: string | null,
  get: typeof fetch,
  listeners: Listeners = { complain },
): ShopCatalogue {
  let loading: Promise<Loaded> | null = null;
  let isRefused = false;
  const load = () => {
    loading ??= fetchCatalogue(address, get, listeners).catch((problem: unknown) => {
      loading = null;
      if (problem instanceof Error && problem.message === "too-heavy") {
        isRefused = true;
        listeners.complain(
          `the catalogue ${address} has more than ${inMegabytes(TOO_HEAVY_BYTES)} in one file and is not used; ` +
            `parts are named by their kind. ${remedy}`,
        );
      }
      throw problem;
    });
    return loading;
  };
  /** A page that was open for days may ask for files that the shop has replaced: it looks once where they are now. */
  const ask = <Answer>(question: (shop: Loaded) => Promise<Answer>) =>
    load()
      .then(question)
      .catch((problem: unknown) => {
        if (!(problem instanceof Error && problem.message === "gone")) throw problem;
        loading = null;
        return load().then(question);
      });
  return {
    findModel: (typed) => ask((shop) => shop.findModel(typed)),
    partFor: (code, kind, plate) => ask((shop) => shop.partFor(code, kind, plate)),
    warmUp: () => {
      if (address) load().catch(() => {});
    },
    isRefused: () => isRefused,
  };
}

const remedy = 'Make many files of it with "fridgeside catalogue build".';
const inMegabytes = (bytes: number) => `${(bytes / 1_000_000).toFixed(1)} MB`;

async function fetchJson(
  address: string,
  get: typeof fetch,
  complain: Complain,
  cache: RequestCache = "default",
): Promise<{ json: unknown; bytes: number }> {
  const response = await get(address, { cache, signal: AbortSignal.timeout(PATIENCE_SECONDS * 1000) });
  if (!response.ok) throw new Error(response.status === 404 ? "gone" : "unreachable");
  return readJson(response, address, complain);
}

async function fetchCatalogue(
  address: string | null,
  get: typeof fetch,
  listeners: Listeners,
): Promise<Loaded> {
  if (!address) throw new Error("missing");
  const { complain } = listeners;
  // A browser that kept an old one would be led to files that are gone, and to prices of last week.
  const { json, bytes } = await fetchJson(address, get, complain, "no-cache").catch((problem: Error) => {
    throw problem.message === "gone" ? new Error("unreachable") : problem;
  });
  if (!isManifest(json)) {
    if (bytes > HEAVY_BYTES)
      complain(
        `the catalogue ${address} has ${inMegabytes(bytes)} in one file. Above ${inMegabytes(HEAVY_BYTES)} it ` +
          `belongs in many. ${remedy}`,
      );
    return wholeCatalogue(await parseCalmly(json, complain), address, listeners);
  }
  const read = async (file: string) => (await fetchJson(file, get, complain)).json;
  // Only a shop with many files needs the code that finds its way in them.
  const { openManyFiles } = await import("./for-some-shops.ts");
  return openManyFiles(json, address, read, complain);
}

function wholeCatalogue(catalogue: Catalogue, address: string, { complain, seen }: Listeners): Loaded {
  if (catalogue.models.size === 0) {
    complain(`the catalogue ${address} is empty: it has no model that can be used.`);
    throw new Error("unusable");
  }
  seen?.(catalogue.parts);
  return {
    findModel: async (typed) => findModel(catalogue, typed),
    partFor: async (code, kind, plate) => partFor(catalogue, code, kind, plate),
  };
}

/** Thousands of rows in one go would freeze a phone. */
async function parseCalmly(json: unknown, complain: Complain): Promise<Catalogue> {
  const steps = parseInSteps(json);
  let step = steps.next();
  while (!step.done) {
    await nextTask();
    step = steps.next();
  }
  const { catalogue, problems } = step.value;
  complainOfRows("catalogue", problems, complain);
  return catalogue;
}
