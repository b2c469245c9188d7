import { dataAddress } from "virtual:data";
import { restoreChart } from "../chart/index.ts";
import type { EngineData, OwnFlows, StartFile } from "../loading/index.ts";
import { complain, createScenarioFiles, getForSomeShops, type ScenarioFiles } from "../loading/index.ts";
import { nextTask } from "../loading/pace/index.ts";
import { addScenario, createGuide, type Guide } from "../session/index.ts";
import { createTexts, type GrowingTexts, type Resource } from "../turn/index.ts";
import type { Asides } from "../understanding/index.ts";
import { getDress } from "./dress-file.ts";
import { bringDoor } from "./open-door.ts";
import type { Options } from "./options.ts";
import type { ShopFacts } from "./shop-facts.ts";

/** What sessions run on in one language. */
export type Compiled = {
  guide: Guide;
  texts: GrowingTexts;
  scenarios: ScenarioFiles;
  /** Side answers with the shop's own words in place of ours. */
  asides: (ours: Asides) => Asides;
  /** What side answers quote of the shop. */
  facts: ShopFacts;
  /** Just made: what comes next is better done in another task. */
  isFresh: boolean;
};

/** What was made of one language's data and a shop's flows, piece by piece. A tag that is moved about finds it ready. */
type Made = Partial<Omit<Compiled, "isFresh">> & {
  own?: Promise<OwnFlows | null>;
  shop?: Promise<OwnShop>;
  data?: EngineData;
};
const made = new Map<string, Made>();

// Apart from any start: what is made holds on to these for as long as the page lives, and to no tag that is gone.
const get: typeof fetch = (address, settings) => fetch(address, settings);
const forgetting = (key: string) => () => made.delete(key);
const asidesBy = (put: PutWords) => (ours: Asides) => put({ asides: ours }, "asides")["asides"] as Asides;

/**
 * Makes a language's data ready, in several short tasks.
 * @returns null where `isCurrent` says no meanwhile
 */
export async function openData(
  { flows, words }: Pick<Options, "flows" | "words">,
  language: string,
  built: StartFile,
  isCurrent: () => boolean,
): Promise<Compiled | null> {
  const key = `${language} ${flows} ${words}`;
  const pieces = made.get(key) ?? {};
  const isFresh = !pieces.guide;
  made.set(key, pieces);
  const isOvertaken = async () => {
    await nextTask();
    return !isCurrent();
  };
  pieces.own ??= fetchOwn(flows, language, built);
  pieces.shop ??= fetchShop(words, language, forgetting(key));
  const own = await pieces.own;
  if (!pieces.data) {
    pieces.data = own?.start ?? { ...built, chart: restoreChart(built.chart) };
    // What could not be fetched today is asked for at the next start.
    if (flows && !own) made.delete(key);
    if (await isOvertaken()) return null;
  }
  const { flow, resources, files } = pieces.data;
  if (!pieces.texts) {
    // The first of these wakes up the browser's language data, which takes a slow phone as long as all the texts.
    new Intl.ListFormat(language);
    if (await isOvertaken()) return null;
    const { put, facts } = await pieces.shop;
    const ours = resources[language];
    pieces.texts = createTexts(
      { ...resources, ...(ours && { [language]: put(ours, "texts") }) },
      language,
      flow,
    );
    pieces.asides = asidesBy(put);
    pieces.facts = facts;
    if (await isOvertaken()) return null;
  }
  pieces.guide ??= createGuide(pieces.data);
  const { texts, guide, asides = (ours) => ours, facts = {} } = pieces;
  for (const scenario of own?.scenarios ?? []) {
    if (guide.loaded.has(scenario.id)) continue;
    if (await isOvertaken()) return null;
    addScenario(guide, scenario);
  }
  if (isFresh && (await isOvertaken())) return null;
  const beside = (file: string) => new URL(file, dataAddress(language)).href;
  const addresses = Object.fromEntries(Object.entries(files).map(([id, file]) => [id, beside(file)]));
  pieces.scenarios ??= createScenarioFiles(addresses, { guide, language, texts }, get);
  return { guide, texts, asides, facts, scenarios: pieces.scenarios, isFresh };
}

/** Puts a shop's own words in place of ours: in side answers, which come later, or in all other texts. */
type PutWords = (ours: Resource, which: "asides" | "texts") => Resource;

type OwnShop = { put: PutWords; facts: ShopFacts };

/** @param failed what did not come today is asked for at the next start */
async function fetchShop(address: string | null, language: string, failed: () => void): Promise<OwnShop> {
  const file = address && (await getDress().catch(() => null));
  if (!file) {
    if (address)
      complain('attribute "words": our words are used, because what checks yours could not be loaded.');
    return { put: (ours) => ours, facts: {} };
  }
  const read = await file.ownWordsAt(address, language, complain);
  if (!read) failed();
  const isAside = ([key]: [string, string]) => key.startsWith("asides.");
  const [asides, others] = [true, false].map((wanted) =>
    Object.fromEntries(Object.entries(read?.words ?? {}).filter((entry) => isAside(entry) === wanted)),
  );
  const put: PutWords = (ours, which) =>
    file.putOwnWords(ours, (which === "asides" ? asides : others) ?? {}, complain);
  return { put, facts: read?.facts ?? {} };
}

/** A shop's own flows; null where there are none, or none that can be used. */
async function fetchOwn(folder: string | null, language: string, built: StartFile): Promise<OwnFlows | null> {
  if (!folder) return null;
  try {
    // Only shops with flows of their own need the code that judges them.
    await bringDoor();
    const { fetchOwnFlows } = await getForSomeShops();
    return await fetchOwnFlows(folder, language, built);
  } catch (problem) {
    complain(`attribute "flows": the built-in flows are used, because ${(problem as Error).message}.`);
    return null;
  }
}
