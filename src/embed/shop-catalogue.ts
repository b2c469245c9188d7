import { type Catalogue, findModel, parseInSteps, partFor } from "../catalogue/index.ts";
import type { FittedPart, FoundModel } from "../session/index.ts";
import { breath } from "./breath.ts";

/** Seconds before a catalogue counts as out of reach; poor signal beside a fridge is the rule. */
const PATIENCE_SECONDS = 15;

/** The shop's catalogue, fetched once and parsed at the door. A failed fetch is tried anew at the next question. */
export type ShopCatalogue = {
  findModel(typed: string): Promise<FoundModel>;
  partFor(code: string, kind: string): Promise<FittedPart>;
  /** Starts the fetch early, so that a person who walks out of reach has it already. */
  warmUp(): void;
};

/** @param address where the catalogue lies; null rejects every question with "missing" */
export function createShopCatalogue(address: string | null, get: typeof fetch): ShopCatalogue {
  let loading: Promise<Catalogue> | null = null;
  const load = () => {
    loading ??= fetchCatalogue(address, get).catch((problem: unknown) => {
      loading = null;
      throw problem;
    });
    return loading;
  };
  return {
    findModel: async (typed) => findModel(await load(), typed),
    partFor: async (code, kind) => partFor(await load(), code, kind),
    warmUp: () => {
      if (address) load().catch(() => {});
    },
  };
}

async function fetchCatalogue(address: string | null, get: typeof fetch): Promise<Catalogue> {
  if (!address) throw new Error("missing");
  const response = await get(address, { signal: AbortSignal.timeout(PATIENCE_SECONDS * 1000) });
  if (!response.ok) throw new Error("unreachable");
  const steps = parseInSteps(await response.json());
  let step = steps.next();
  while (!step.done) {
    await breath();
    step = steps.next();
  }
  const { catalogue, problems } = step.value;
  for (const problem of problems.slice(0, 20))
    console.warn(`<fridgeside-panel>: catalogue ${problem.path}: ${problem.code}`);
  if (catalogue.models.size === 0) throw new Error("unusable");
  return catalogue;
}
