import { beforeAll, describe, expect, test } from "vitest";
import { buildOurs, type Files, importsOf, isScript, sizeOf } from "./bench/built.ts";
import { budget } from "./bench/goals.ts";

/*
 * Budgets in bytes of brotli, by the project's own goals: one file draws the first question, because on a slow
 * connection each file that has to be waited for first costs a whole round trip.
 */
let files: Files;
/** What a visit loads; the second set is for a browser that cannot use the first (see again-plugin.ts). */
const isAgain = (name: string) => name.includes("-again-");
const script = () => [...files].filter(([name]) => isScript(name) && !isAgain(name));
const contentOf = (name: string) => {
  const content = files.get(name);
  if (!content) throw new Error(`The build holds no ${name}, only ${[...files.keys()].join(", ")}`);
  return content;
};
/** What judges a shop's own flows, and what finds its way in a catalogue of many files: nobody else loads them. */
const forSomeShops = /^parts\/for-some-shops-/;
const nameOf = (start: string) => script().find(([name]) => name.startsWith(start))?.[0] ?? start;

beforeAll(async () => {
  files = await buildOurs();
}, 60_000);

describe("the built script", () => {
  test(`the first file has ${budget.firstFile} bytes of brotli at most`, () => {
    expect(sizeOf(contentOf("fridgeside.js")).brotli).toBeLessThanOrEqual(budget.firstFile);
  });

  test("the first file waits for no other", async () => {
    expect((await importsOf(contentOf("fridgeside.js"))).now).toEqual([]);
  });

  test(`all script of a session to a part has ${budget.allScript} bytes of brotli at most`, () => {
    const all = script()
      .filter(([name]) => !forSomeShops.test(name))
      .reduce((sum, [, content]) => sum + sizeOf(content).brotli, 0);
    expect(all).toBeLessThanOrEqual(budget.allScript);
  });

  test("a later file waits for nothing but what asked for it, and the first: both are there already", async () => {
    const engine = nameOf("parts/engine-");
    expect((await importsOf(contentOf(engine))).now).toEqual(["../fridgeside.js"]);
    const { now } = await importsOf(contentOf(nameOf("parts/for-some-shops-")));
    expect(now.sort()).toEqual(["../fridgeside.js", `./${engine.replace("parts/", "")}`]);
  });

  test("the first file asks for the engine, and the engine for what only some shops need", async () => {
    const asked = async (name: string) =>
      (await importsOf(contentOf(name))).later.map((one) => one.replace(/^\.\/(parts\/)?/, "parts/"));
    const engine = nameOf("parts/engine-");
    // What is asked for after a fault has an address that is made up then.
    expect((await asked("fridgeside.js")).filter((name) => /^[\w./-]+$/.test(name))).toEqual([engine]);
    expect(new Set(await asked(engine))).toEqual(new Set([nameOf("parts/for-some-shops-")]));
    expect(script()).toHaveLength(3);
  });
});

describe("the second set of script", () => {
  const again = () => [...files.keys()].filter(isAgain);

  test("is every later file and the first that they take their libraries from, tied together by content", async () => {
    expect(again()).toHaveLength(3);
    const [engine = "", first = "", shops = ""] = again().sort();
    const beside = (name: string) => name.replace("parts/", "./");
    const { now, later } = await importsOf(contentOf(engine));
    expect([now, new Set(later)]).toEqual([[beside(first)], new Set([beside(shops)])]);
    expect((await importsOf(contentOf(shops))).now.sort()).toEqual([beside(engine), beside(first)]);
    expect((await importsOf(contentOf(first))).now).toEqual([]);
    expect(contentOf("fridgeside.js").toString()).toContain(engine);
  });

  test("names nothing that is not there", () => {
    for (const name of again())
      for (const [, other] of contentOf(name)
        .toString()
        .matchAll(/\.\/([\w-]+-[\da-f]{8}\.(?:json|js|css))/g))
        expect([...files.keys()]).toContain(`parts/${other}`);
  });
});

describe("what is built beside the script", () => {
  test(`the data of a journey to a part has ${budget.journeyData} bytes of brotli at most in one language`, () => {
    const weigh = (pattern: RegExp) =>
      [...files].filter(([name]) => pattern.test(name)).map(([, content]) => sizeOf(content).brotli);
    const scenarios = weigh(/^parts\/[a-z-]+-en-GB-[\da-f]{8}\.json$/);
    expect(scenarios.length).toBeGreaterThan(5);
    const shared = [...weigh(/^parts\/en-GB-[\da-f]{8}\.json$/), ...weigh(/\.css$/)];
    const most = shared.reduce((sum, each) => sum + each, 0) + Math.max(...scenarios);
    expect(most).toBeLessThanOrEqual(budget.journeyData);
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
      if (name !== "fridgeside.js") expect(name).toMatch(/^parts\/[\w-]+-[\da-f]{8}\.\w+$/);
  });
});
