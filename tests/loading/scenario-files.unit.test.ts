import { describe, expect, test } from "vitest";
import type { Flow } from "../../src/guide/index.ts";
import { createScenarioFiles, type ScenarioFile } from "../../src/loading/scenario-files.ts";
import { createGuide } from "../../src/session/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { compiledOnce } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";

const whole = ownFlow;
const id = "odd-taste";
const flow = { ...whole, scenarios: { [id]: whole.scenarios[id] } } as Flow;
const compiled = compiledOnce(flow);
const right = {
  ...compiled.scenarios[0],
  format: 2,
  version: compiled.start.flow.version,
  resources: { "en-GB": { checks: { rinse: "Rinse the tray." } } },
} as ScenarioFile;

type Answer = { body: string; status?: number } | "no connection";
const file = (change: object = {}): Answer => ({ body: JSON.stringify({ ...right, ...change }) });

/** Files of two scenarios on a server that answers what it is told to, one answer after the other; the last one stays. */
function open(...answers: Answer[]) {
  const asked: [address: string, cache?: string | undefined][] = [];
  const scene = {
    guide: createGuide(compiled.start),
    language: "en-GB",
    texts: createTexts({ "en-GB": {} }, "en-GB", readerOf(whole)),
  };
  const get = (async (address: string, settings?: RequestInit) => {
    asked.push([address, settings?.cache]);
    const answer = answers.length > 1 ? answers.shift() : answers[0];
    if (!answer || answer === "no connection") throw new TypeError("Failed to fetch");
    return new Response(answer.body, { status: answer.status ?? 200 });
  }) as typeof fetch;
  const files = createScenarioFiles({ [id]: "/taste.json", other: "/other.json" }, scene, get);
  return { ...files, scene, asked };
}

describe("a scenario's file", () => {
  test("makes its chart and texts ready, beside those that are there", async () => {
    const { load, scene } = open(file());
    await load(id);
    expect([...scene.guide.loaded.keys()]).toEqual([id]);
    expect(scene.texts("checks.rinse")).toBe("Rinse the tray.");
  });

  test("is fetched once, and put in once, by whoever asks for it meanwhile and later", async () => {
    const { load, scene, asked } = open(file());
    await Promise.all([load(id), load(id)]);
    const ready = scene.guide.loaded.get(id);
    await load(id);
    expect(asked).toEqual([["/taste.json", "default"]]);
    expect(scene.guide.loaded.get(id)).toBe(ready);
  });

  test.each<[string, Answer, string]>([
    ["no connection", "no connection", "Failed to fetch"],
    ["an answer that the file is gone", { body: "gone", status: 404 }, "404 for /taste.json"],
    ["a page in its place", { body: "<!doctype html>" }, "JSON"],
    ["the file of another scenario", file({ id: "no-ice-plumbed" }), "Something else lies where"],
    ["the file of another version", file({ version: "0" }), "Something else lies where"],
    ["the file of another format", file({ format: 1 }), "Something else lies where"],
    ["the file of another language", file({ resources: { "en-US": {} } }), "Something else lies where"],
    ["nothing in it", { body: "{}" }, "Something else lies where"],
  ])("that %s stands for is refused, and leaves all as it was", async (_, answer, said) => {
    const { load, scene } = open(answer);
    await expect(load(id)).rejects.toThrow(said);
    expect(scene.guide.loaded.size).toBe(0);
    expect(scene.texts("checks.rinse")).toBe("");
  });

  test.each<[string, Answer]>([
    ["did not come", "no connection"],
    ["came broken", { body: '{"format":2' }],
  ])("that %s is fetched anew the next time, past every cache", async (_, answer) => {
    const { load, scene, asked } = open(answer, file());
    await expect(load(id)).rejects.toThrow();
    await load(id);
    expect(asked.map(([, cache]) => cache)).toEqual(["default", "reload"]);
    expect([...scene.guide.loaded.keys()]).toEqual([id]);
  });

  test("that the build did not name is asked of nobody", async () => {
    const { load, asked } = open(file());
    await expect(load("no-ise")).rejects.toThrow('The scenario "no-ise" has no file');
    expect(asked).toEqual([]);
  });
});

describe("fetching all of them", () => {
  test("asks for one after the other, and for none again once it is needed", async () => {
    const { fetchAll, load, scene, asked } = open(file());
    await fetchAll();
    expect(asked.map(([address]) => address)).toEqual(["/taste.json", "/other.json"]);
    expect(scene.guide.loaded.size).toBe(0);
    await load(id);
    expect(asked).toHaveLength(2);
    expect(scene.guide.loaded.size).toBe(1);
  });

  test("goes on past one that does not come, which is fetched when it is needed", async () => {
    const { fetchAll, load, asked } = open("no connection", file());
    await fetchAll();
    await load(id);
    expect(asked).toEqual([
      ["/taste.json", "default"],
      ["/other.json", "default"],
      ["/taste.json", "reload"],
    ]);
  });
});
