import { createHash } from "node:crypto";
import { beforeAll, describe, expect, test } from "vitest";
import { laterChunks } from "../src/workbench/build/chunks.ts";
import { type Files, importsOf, isScript, sizeOf } from "./bench/built.ts";
import { budget } from "./bench/goals.ts";
import { builtOnce } from "./built-once.ts";

/*
 * Budgets in bytes of brotli, by the project's own goals, of journeys: what has to have come before a person sees
 * something. On a slow connection each file that has to be waited for first costs a whole round trip.
 */
let files: Files;
const contentOf = (name: string) => {
  const content = files.get(name);
  if (!content) throw new Error(`The build holds no ${name}, only ${[...files.keys()].join(", ")}`);
  return content;
};
const nameOf = (chunk: string) =>
  [...files.keys()].find((name) => name.startsWith(`parts/${chunk}-`) && isScript(name)) ?? chunk;
/** The script of the support pages, which no phone fetches. */
const desk = "fridgeside-desk.js";
const firstFiles = () => [...files.keys()].filter((name) => /^fridgeside\..+\.js$/.test(name));
const weightOf = (names: string[]) =>
  names.reduce((sum, name) => sum + weightWithSetNames(contentOf(name)), 0);

/** The names that files have by their content weigh up to 60 bytes more or less from build to build: here they are set. */
function weightWithSetNames(content: Buffer): number {
  const names = new Map<string, string>();
  const setOf = (name: string) => {
    const set = names.get(name) ?? createHash("sha256").update(`${names.size}`).digest("hex").slice(0, 8);
    names.set(name, set);
    return set;
  };
  return sizeOf(Buffer.from(content.toString().replace(/(?<=-)[\da-f]{8}\b/g, setOf))).brotli;
}

beforeAll(async () => {
  files = new Map((await builtOnce()).map(({ path, content }) => [path, Buffer.from(content)]));
}, 240_000);

describe("the built script", () => {
  test("there is a first file for every language, and one that chooses", () => {
    expect(firstFiles().sort()).toEqual(["fridgeside.en-GB.js", "fridgeside.en-US.js"]);
    expect(weightOf(["fridgeside.js"])).toBeLessThan(600);
  });

  test(`a first file has ${budget.firstFile} bytes of brotli at most`, () => {
    for (const name of firstFiles()) expect(weightOf([name]), name).toBeLessThanOrEqual(budget.firstFile);
  });

  test(`until the first check stands on screen script has ${budget.firstCheck} bytes at most`, () => {
    expect(weightOf(["fridgeside.en-GB.js", nameOf("engine")])).toBeLessThanOrEqual(budget.firstCheck);
  });

  test(`script of a journey to a part has ${budget.journey} bytes at most`, () => {
    const script = ["engine", "later-screens", "door", "shop"].map(nameOf);
    expect(weightOf(["fridgeside.en-GB.js", ...script])).toBeLessThanOrEqual(budget.journey);
  });

  test(`what is fetched once somebody asks for a person has ${budget.livePerson} bytes at most`, () => {
    expect(weightOf(["live", "live-screens"].map(nameOf))).toBeLessThanOrEqual(budget.livePerson);
  });

  test("what checks data from outside comes with the door, and with no other file", () => {
    const checking = [...files.keys()].filter(
      (name) => isScript(name) && name !== desk && /ZodMiniType/.test(contentOf(name).toString()),
    );
    expect(checking).toEqual([nameOf("door")]);
  });

  test("no file waits for another", async () => {
    for (const name of [...files.keys()].filter(isScript))
      expect((await importsOf(contentOf(name))).now, name).toEqual([]);
  });

  test("each asks for those that come next, and only a handful there are", async () => {
    const asked = async (name: string) => {
      const later = (await importsOf(contentOf(name))).later.map((one) =>
        one.replace(/^\.\/(parts\/)?/, "parts/"),
      );
      // What is asked for after a fault has an address that is made up then.
      return new Set(later.filter((one) => /^parts\/[\w-]+\.js$/.test(one)));
    };
    const [
      engine,
      screens,
      door,
      shop,
      forSome,
      photo,
      words,
      cutOpen,
      carry,
      live,
      liveScreens,
      care,
      insight,
      dress,
    ] = laterChunks.map(nameOf);
    for (const name of firstFiles()) expect(await asked(name)).toEqual(new Set([engine]));
    expect(await asked(engine ?? "")).toEqual(
      new Set([screens, door, shop, forSome, words, cutOpen, carry, live, liveScreens, care, insight, dress]),
    );
    expect(await asked(shop ?? "")).toEqual(new Set([forSome, photo]));
    expect([...files.keys()].filter((name) => isScript(name) && name.startsWith("parts/"))).toHaveLength(
      laterChunks.length,
    );
  });

  test("all of one build meet in one place, and nothing that they name is missing", () => {
    const places = new Set<string | undefined>();
    for (const name of [...files.keys()].filter((each) => isScript(each) && each !== "fridgeside.js")) {
      const code = contentOf(name).toString();
      for (const [, place] of code.matchAll(/Symbol\.for\("(fridgeside-[\da-f]{8})"\)/g)) places.add(place);
      for (const [named] of code.matchAll(/[\w-]+-[\da-f]{8}\.(?:json|js|css)/g))
        expect([...files.keys()]).toContain(`parts/${named}`);
      expect(code).not.toMatch(/chunk:|texts-of-this-language/);
    }
    expect(places.size).toBe(1);
  });
});

describe("the desk", () => {
  test(`is one file of ${budget.desk} bytes at most, that needs no other script`, async () => {
    expect(weightOf([desk])).toBeLessThanOrEqual(budget.desk);
    expect(await importsOf(contentOf(desk))).toEqual({ now: [], later: [] });
  });

  test("keeps its texts to itself: no file that a phone fetches has one of them", () => {
    const own = "Ask for the code on their phone";
    expect(contentOf(desk).toString()).toContain(own);
    for (const [name, content] of files)
      if (name !== desk) expect(content.toString(), name).not.toContain(own);
  });
});

describe("what is built beside the script", () => {
  test(`the data of a journey to a part has ${budget.journeyData} bytes of brotli at most in one language`, () => {
    const weigh = (pattern: RegExp) =>
      [...files].filter(([name]) => pattern.test(name)).map(([, content]) => sizeOf(content).brotli);
    const scenarios = weigh(/^parts\/(?!words-)[a-z-]+-en-GB-[\da-f]{8}\.json$/);
    expect(scenarios.length).toBeGreaterThan(5);
    const shared = [...weigh(/^parts\/en-GB-[\da-f]{8}\.json$/), ...weigh(/\.css$/)];
    const most = shared.reduce((sum, each) => sum + each, 0) + Math.max(...scenarios);
    expect(most).toBeLessThanOrEqual(budget.journeyData);
  });

  test(`what understands sentences has ${budget.words} bytes at most, and a language's model ${budget.model}`, () => {
    expect(weightOf([nameOf("words")])).toBeLessThanOrEqual(budget.words);
    const models = [...files].filter(([name]) => /^parts\/words-[\w-]+\.json$/.test(name));
    expect(models).toHaveLength(2);
    for (const [, content] of models) {
      const { model } = JSON.parse(content.toString());
      expect(sizeOf(Buffer.from(JSON.stringify(model))).brotli).toBeLessThanOrEqual(budget.model);
    }
  });

  test("flow and texts are data that a browser can read without running anything", () => {
    const data = [...files].filter(([name]) => name.endsWith(".json"));
    expect(data.length).toBeGreaterThanOrEqual(2);
    for (const [, content] of data) expect(JSON.parse(content.toString())).toBeTypeOf("object");
  });

  test("there is script, data and style, and nothing else", () => {
    for (const name of files.keys()) expect(name).toMatch(/\.(js|json|css)$/);
  });

  test("every file that may be kept for ever is named by its content", () => {
    for (const name of files.keys())
      if (name !== desk && !/^fridgeside\.([\w-]+\.)?js$/.test(name))
        expect(name).toMatch(/^parts\/[\w-]+-[\da-f]{8}\.\w+$/);
  });
});
