import { createHash } from "node:crypto";
import type { Plugin } from "vite";
import { type ChartConfig, shortenChart } from "../../chart/index.ts";
import { careOf, compileGuide } from "../../compile/index.ts";
import { createFirstTurns } from "../../turn/index.ts";
import { createCutOpen } from "../pictures/index.ts";
import { verifyChart } from "../verify/index.ts";
import { laterChunks, placeOf, textsPlace } from "./chunks.ts";
import { createDrawings } from "./drawings.ts";
import { readFlow } from "./flows-folder.ts";
import { readLocales } from "./locales-folder.ts";
import {
  careTextsOf,
  createPanelData,
  deskTextsOf,
  knownDangers,
  liveTextsOf,
  plateTextsOf,
} from "./panel-data.ts";
import { plateFilesOf } from "./plate-files.ts";

/**
 * Compiles flows/, locales/ and the drawings into data files for each language beside the script, named by their
 * content: the opening for the first file, what every session starts with, and each scenario. A flow with a problem
 * stops the build.
 */
export function flowPlugin(compiled = compileOnce()): Plugin {
  let modules: Record<string, string> = {};
  let files: Record<string, string> = {};
  return {
    name: "fridgeside-flow",
    buildStart() {
      ({ modules, files } = compiled());
    },
    resolveId: (id) => (id.startsWith("virtual:") ? `\0${id}` : null),
    load: (id) => (id.startsWith("\0virtual:") ? (modules[id.slice("\0virtual:".length)] ?? null) : null),
    generateBundle() {
      for (const [fileName, source] of Object.entries(files))
        this.emitFile({ type: "asset", fileName, source });
    },
  };
}

type Compiled = { modules: Record<string, string>; files: Record<string, string> };

/** Compiles when it is first asked to: one build of several scripts needs it once. */
export function compileOnce(): () => Compiled {
  let compiled: Compiled | null = null;
  return () => {
    compiled ??= compile();
    return compiled;
  };
}

function compile(): Compiled {
  const flow = readFlow();
  const problems = verifyChart(flow);
  if (problems.length > 0) throw new Error(problems.map((one) => one.message).join("\n"));
  const locales = readLocales();
  const files: Record<string, string> = {};
  const emit = (name: string, data: unknown) => {
    const fileName = `parts/${name}-${digestOf(data)}.json`;
    files[fileName] = JSON.stringify(data);
    return fileName;
  };
  // One digest for all drawings: an engine knows each by its id alone.
  const drawings = createDrawings(locales);
  const digest = digestOf(drawings);
  for (const [tag, all] of Object.entries(drawings))
    for (const [id, drawing] of Object.entries(all))
      files[`parts/picture-${tag}-${id}-${digest}.json`] = JSON.stringify(drawing);
  const dataFiles = Object.entries(createPanelData(flow, locales)).map(([tag, { start, scenarios }]) => {
    const beside = scenarios.map(
      (scenario) => [scenario.id, emit(`${scenario.id}-${tag}`, withShortChart(scenario))] as const,
    );
    const files = Object.fromEntries(beside.map(([id, file]) => [id, file.replace("parts/", "")]));
    return [tag, emit(tag, { ...withShortChart(start), files })];
  });
  const firstTurns = Object.entries(createFirstTurns(compileGuide(flow), locales, flow.regions)).map(
    ([tag, data]) => [tag, emit(`first-${tag}`, data)],
  );
  const { version, bytes } = plateFilesOf();
  const modules = {
    plate: `export const plateFiles = ${JSON.stringify({ version, bytes })};
export const plateTexts = ${JSON.stringify(plateTextsOf(locales))}`,
    live: `export const liveTexts = ${JSON.stringify(liveTextsOf(locales))}`,
    care: `export const careRules = ${JSON.stringify(careOf(flow))};
export const careTexts = ${JSON.stringify(careTextsOf(flow, locales))}`,
    "cut-open": `export const drawing = ${JSON.stringify(createCutOpen())}`,
    // Each language's own goes in when all else is built.
    "first-turns": `export default { place: "${textsPlace}" }`,
    dangers: `export const knownDangers = ${JSON.stringify(knownDangers(flow))}`,
    // The addresses start from this very module, which is the first file, wherever a shop may host it.
    data: `const address = (file) => new URL(file, import.meta.url).href;
export const dataFiles = ${JSON.stringify(Object.fromEntries(dataFiles))};
const firstTurns = ${JSON.stringify(Object.fromEntries(firstTurns))};
export const dataAddress = (tag) => address(dataFiles[tag]);
export const firstTurnAddress = (tag) => address(firstTurns[tag]);
export const engineAddress = () => address("${placeOf("engine")}");`,
    // The desk is one file, which lies beside the first file.
    desk: `const address = (file) => new URL(file, import.meta.url).href;
const dataFiles = ${JSON.stringify(Object.fromEntries(dataFiles))};
export const deskTexts = ${JSON.stringify(deskTextsOf(locales))};
export const dataAddress = (tag) => address(dataFiles[tag]);
export const drawingAddress = (id, tag) => address("parts/picture-" + tag + "-" + id + "-${digest}.json");`,
    // From the engine's place, beside which they lie.
    later: `const chunks = ${JSON.stringify(Object.fromEntries(laterChunks.map((chunk) => [chunk, placeOf(chunk)])))};
export const chunkAddress = (chunk) => new URL("../" + chunks[chunk], import.meta.url).href;
export const drawingAddress = (id, tag) => new URL("picture-" + tag + "-" + id + "-${digest}.json", import.meta.url).href;`,
  };
  return { modules, files };
}

const digestOf = (data: unknown) =>
  createHash("sha256").update(JSON.stringify(data)).digest("hex").slice(0, 8);

const withShortChart = <Data extends { chart: ChartConfig }>(data: Data) => ({
  ...data,
  chart: shortenChart(data.chart),
});
