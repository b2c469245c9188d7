import { expect, test } from "vitest";
import type { StateConfig } from "../../../src/chart/index.ts";
import { createTexts } from "../../../src/turn/index.ts";
import { flowPlugin } from "../../../src/workbench/build/flow-plugin.ts";
import { pictures } from "../../../src/workbench/pictures/index.ts";
import { ownFlow, ownTexts } from "../../own-flow.ts";

/** The data files of a build, by name. */
function emitted(): Map<string, string> {
  const plugin = flowPlugin() as unknown as Record<"buildStart" | "generateBundle", () => void>;
  const files = new Map<string, string>();
  plugin.buildStart();
  plugin.generateBundle.call({
    emitFile: ({ fileName, source }: Record<string, string>) => files.set(fileName ?? "", source ?? ""),
  });
  return files;
}

test("every language has its texts in a file of its own, without those that lie with drawings and typed words", () => {
  const locales = ownTexts;
  const files = emitted();
  const ofEach = 2 + Object.keys(ownFlow.scenarios).length + Object.keys(pictures).length;
  expect(files.size).toBe(Object.keys(locales).length * ofEach);
  for (const tag of Object.keys(locales)) {
    const [, source = ""] = [...files].find(([name]) => name.startsWith(`parts/${tag}-`)) ?? [];
    const { resources, flow } = JSON.parse(source);
    expect(createTexts(resources, tag, flow)("composer.label")).toMatch(/\w/);
    for (const elsewhere of ["asides", "pictures"]) {
      expect(locales["en-GB"]?.[elsewhere]).toBeDefined();
      expect(resources[tag][elsewhere]).toBeUndefined();
    }
  }
});

test("every scenario lies in a file of its own beside the start, which names it, with its texts", () => {
  const files = emitted();
  const [, start = "{}"] = [...files].find(([name]) => name.startsWith("parts/en-GB-")) ?? [];
  const { files: beside, flow, resources } = JSON.parse(start);
  expect(Object.keys(beside)).toEqual(Object.keys(ownFlow.scenarios));
  for (const [id, file] of Object.entries(beside)) {
    const scenario = JSON.parse(files.get(`parts/${file}`) ?? "{}");
    expect([scenario.id, scenario.version, scenario.format]).toEqual([id, flow.version, 2]);
    const parts = Object.values(scenario.chart.states[id].states) as {
      states?: Record<string, StateConfig>;
    }[];
    const turns = parts.flatMap(({ states = {} }) => Object.values(states));
    for (const check of new Set(turns.flatMap(({ meta }) => meta?.check ?? []))) {
      expect(scenario.resources["en-GB"].checks[check].name, check).toMatch(/\w/);
      expect(resources["en-GB"].checks[check]).toBeUndefined();
    }
  }
});

test("each language's start has the region of its readers, and that one alone", () => {
  const files = [...emitted()];
  const regionIn = (tag: string) => {
    const [, start = "{}"] = files.find(([name]) => name.startsWith(`parts/${tag}-`)) ?? [];
    expect(start.match(/"date-order"/g)).toHaveLength(1);
    return JSON.parse(start).flow.region;
  };
  const { GB, US } = ownFlow.regions;
  expect([regionIn("en-GB"), regionIn("en-US")]).toEqual([GB, US]);
});

test("every drawing lies in a file of its own in each language, with the words of its parts", () => {
  const files = emitted();
  const drawing = (tag: string) => {
    const isIt = (name: string) => name.startsWith(`parts/picture-${tag}-house-tap-`);
    const [, source = "{}"] = [...files].find(([name]) => isIt(name)) ?? [];
    return JSON.parse(source);
  };
  const wordsIn = (tag: string) =>
    drawing(tag).shapes.flatMap((shape: string) => shape.match(/^T\w \S+ \S+ (.*)/)?.[1] ?? []);
  expect(wordsIn("en-GB")).toEqual(["Cold tap", "Bucket", "Stopwatch"]);
  expect(wordsIn("en-US")).toEqual(["Cold faucet", "Bucket", "Stopwatch"]);
  expect(drawing("en-US").title).toContain("faucet");
  expect(drawing("en-US").legend).toEqual([]);
});
