import { dataAddress } from "virtual:data";
import { restoreChart } from "../chart/index.ts";
import type { EngineData, OwnFlows, StartFile } from "../loading/index.ts";
import { complain, createScenarioFiles, getForSomeShops, type ScenarioFiles } from "../loading/index.ts";
import { nextTask } from "../loading/pace/index.ts";
import { addScenario, createGuide, type Guide } from "../session/index.ts";
import { createTexts, type GrowingTexts } from "../turn/index.ts";
import { bringDoor } from "./open-door.ts";

/** What sessions run on in one language. */
export type Compiled = {
  guide: Guide;
  texts: GrowingTexts;
  scenarios: ScenarioFiles;
  /** Just made: what comes next is better done in another task. */
  isFresh: boolean;
};

/** What was made of one language's data and a shop's flows, piece by piece. A tag that is moved about finds it ready. */
type Made = Partial<Omit<Compiled, "isFresh">> & { own?: Promise<OwnFlows | null>; data?: EngineData };
const made = new Map<string, Made>();

/**
 * Makes a language's data ready, in several short tasks.
 * @returns null where `isCurrent` says no meanwhile
 */
export async function openData(
  flows: string | null,
  language: string,
  built: StartFile,
  isCurrent: () => boolean,
): Promise<Compiled | null> {
  const key = `${language} ${flows}`;
  const pieces = made.get(key) ?? {};
  const isFresh = !pieces.guide;
  made.set(key, pieces);
  const isOvertaken = async () => {
    await nextTask();
    return !isCurrent();
  };
  pieces.own ??= fetchOwn(flows, language, built);
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
    pieces.texts = createTexts(resources, language, flow);
    if (await isOvertaken()) return null;
  }
  pieces.guide ??= createGuide(pieces.data);
  const { texts, guide } = pieces;
  for (const scenario of own?.scenarios ?? []) {
    if (guide.loaded.has(scenario.id)) continue;
    if (await isOvertaken()) return null;
    addScenario(guide, scenario);
  }
  if (isFresh && (await isOvertaken())) return null;
  const beside = (file: string) => new URL(file, dataAddress(language)).href;
  const addresses = Object.fromEntries(Object.entries(files).map(([id, file]) => [id, beside(file)]));
  const get: typeof fetch = (address, settings) => fetch(address, settings);
  pieces.scenarios ??= createScenarioFiles(addresses, { guide, language, texts }, get);
  return { guide, texts, scenarios: pieces.scenarios, isFresh };
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
