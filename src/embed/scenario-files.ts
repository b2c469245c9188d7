import { restoreChart, type ShortChart } from "../chart/index.ts";
import { addScenario, type Guide, type ScenarioData } from "../session/index.ts";
import type { GrowingTexts, Resource } from "../turn/index.ts";
import { nextTask } from "./next-task.ts";

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
  const asked = new Map<string, Promise<string>>();
  const failed = new Set<string>();

  async function read(id: string): Promise<string> {
    const address = addresses[id];
    if (address === undefined) throw new Error(`The scenario "${id}" has no file`);
    // Nothing that a cache holds is good enough for a second try.
    const response = await get(address, { cache: failed.has(id) ? "reload" : "default" });
    if (!response.ok) throw new Error(`${response.status} for ${address}`);
    return response.text();
  }

  function textOf(id: string): Promise<string> {
    const text = asked.get(id) ?? read(id);
    asked.set(id, text);
    text.catch(() => forget(id));
    return text;
  }

  function forget(id: string): void {
    failed.add(id);
    asked.delete(id);
  }

  return {
    async load(id) {
      const text = await textOf(id);
      await nextTask();
      if (scene.guide.loaded.has(id)) return;
      try {
        const file = readFile(text, id, scene);
        await nextTask();
        if (!scene.guide.loaded.has(id)) putIn(file, scene);
      } catch (problem) {
        forget(id);
        throw problem;
      }
    },
    async fetchAll() {
      for (const id of Object.keys(addresses)) await textOf(id).catch(() => null);
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
