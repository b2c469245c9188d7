import { restoreChart, type ShortChart } from "../chart/index.ts";
import { addScenario, type Guide, type ScenarioData } from "../session/index.ts";
import type { GrowingTexts, Resource } from "../turn/index.ts";
import { createOnce } from "./once.ts";
import { nextTask } from "./pace/index.ts";

/** One scenario in one language, as it is built: what it adds to what every session starts with. */
export type ScenarioFile = ScenarioData & {
  format: 2;
  /** The version of the flow; another one has other names. */
  version: string;
  resources: Record<string, Resource>;
};

/** Where a scenario is put in. */
export type Scene = { guide: Guide; language: string; texts: GrowingTexts };

/** The scenarios of one language and where they lie. */
export type ScenarioFiles = {
  /** Makes a scenario ready. @throws Error where that cannot be; it is fetched again the next time */
  load(id: string): Promise<void>;
  /** Fetches all files, one after the other: a page that has them works offline. What fails is left for when it is needed. */
  fetchAll(): Promise<void>;
};

/** @param addresses where each scenario's file lies */
export function createScenarioFiles(
  addresses: Record<string, string>,
  scene: Scene,
  get: typeof fetch,
): ScenarioFiles {
  const { read, forget } = createOnce(get);
  const addressOf = (id: string): string => {
    const address = addresses[id];
    if (address === undefined) throw new Error(`The scenario "${id}" has no file`);
    return address;
  };

  return {
    async load(id) {
      const text = await read(addressOf(id));
      await nextTask();
      if (scene.guide.loaded.has(id)) return;
      try {
        const file = readFile(text, id, scene);
        await nextTask();
        if (!scene.guide.loaded.has(id)) putIn(file, scene);
      } catch (problem) {
        forget(addressOf(id));
        throw problem;
      }
    },
    async fetchAll() {
      for (const address of Object.values(addresses)) await read(address).catch(() => null);
    },
  };
}

/** A server may answer anything for a file that it no longer has. */
function readFile(text: string, id: string, { guide, language }: Scene): ScenarioFile {
  const file = JSON.parse(text) as Omit<ScenarioFile, "chart"> & { chart: ShortChart };
  const isRight =
    file.format === 2 && file.id === id && file.version === guide.flow.version && file.resources?.[language];
  if (!isRight) throw new Error(`Something else lies where the scenario "${id}" was`);
  return { ...file, chart: restoreChart(file.chart) };
}

function putIn(file: ScenarioFile, { guide, language, texts }: Scene): void {
  addScenario(guide, file);
  texts.add(file.resources[language] ?? {});
}
