import {
  type Catalogue,
  type CatalogueProblem,
  findModel,
  type Plate,
  parseInSteps,
  partFor,
} from "../catalogue/index.ts";
import { createShardedCatalogue, isManifest, parseManifest } from "../catalogue/shards/index.ts";
import type { FittedPart, FoundModel } from "../session/index.ts";
import { breath } from "./breath.ts";

/** Seconds before a file counts as out of reach; poor signal beside a fridge is the rule. */
const PATIENCE_SECONDS = 15;

/** What a shop sells, as far as a screen asks. */
export type ShopCatalogue = {
  findModel(typed: string): Promise<FoundModel>;
  partFor(code: string, kind: string, plate?: Plate): Promise<FittedPart>;
  /** Starts the fetch early, so that a person who walks out of reach has it already. */
  warmUp(): void;
};

type Loaded = Omit<ShopCatalogue, "warmUp">;

/**
 * The shop's catalogue, one file or many, fetched when it is needed and parsed at the door. A failed fetch is tried
 * anew at the next question.
 * @param address where the catalogue lies; null rejects every question with "missing"
 */
export function createShopCatalogue(address: string | null, get: typeof fetch): ShopCatalogue {
  let loading: Promise<Loaded> | null = null;
  const load = () => {
    loading ??= fetchCatalogue(address, get).catch((problem: unknown) => {
      loading = null;
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
  };
}

async function fetchJson(
  address: string,
  get: typeof fetch,
  cache: RequestCache = "default",
): Promise<unknown> {
  const response = await get(address, { cache, signal: AbortSignal.timeout(PATIENCE_SECONDS * 1000) });
  if (!response.ok) throw new Error(response.status === 404 ? "gone" : "unreachable");
  return response.json();
}

async function fetchCatalogue(address: string | null, get: typeof fetch): Promise<Loaded> {
  if (!address) throw new Error("missing");
  // A browser that kept an old one would be led to files that are gone, and to prices of last week.
  const json = await fetchJson(address, get, "no-cache").catch((problem: Error) => {
    throw problem.message === "gone" ? new Error("unreachable") : problem;
  });
  if (!isManifest(json)) return wholeCatalogue(await parseCalmly(json));
  const manifest = parseManifest(json);
  if (!manifest) throw new Error("unusable");
  const folder = new URL(`${manifest.folder}/`, address);
  return createShardedCatalogue(manifest, (path) => fetchJson(new URL(path, folder).href, get), warn);
}

function wholeCatalogue(catalogue: Catalogue): Loaded {
  if (catalogue.models.size === 0) throw new Error("unusable");
  return {
    findModel: async (typed) => findModel(catalogue, typed),
    partFor: async (code, kind, plate) => partFor(catalogue, code, kind, plate),
  };
}

/** Thousands of rows in one go would freeze a phone. */
async function parseCalmly(json: unknown): Promise<Catalogue> {
  const steps = parseInSteps(json);
  let step = steps.next();
  while (!step.done) {
    await breath();
    step = steps.next();
  }
  const { catalogue, problems } = step.value;
  for (const problem of problems.slice(0, 20)) warn(problem);
  return catalogue;
}

const warn = ({ path, code }: CatalogueProblem) =>
  console.warn(`<fridgeside-panel>: catalogue ${path}: ${code}`);
