import { readFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { isOpen, openWords } from "../../src/embed/open-words.ts";
import { putOwnWords, readOwnWords, wordsBounds } from "../../src/embed/own-words.ts";
import { ownWordsAt } from "../../src/embed/own-words-at.ts";
import type { Resource } from "../../src/turn/index.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";

const ours = readLocales()["en-GB"] as Resource;

const textAt = (texts: Resource, key: string) =>
  key
    .split(".")
    .reduce<Resource | string | undefined>(
      (at, name) => (typeof at === "object" ? at[name] : undefined),
      texts,
    );

const put = (words: Record<string, string>) => {
  const said: string[] = [];
  const texts = putOwnWords(ours, words, (sentence) => said.push(sentence));
  return { at: (key: string) => textAt(texts, key), said };
};

describe("a shop's own words", () => {
  test("stand in place of ours, and ours stay as they were", () => {
    const words = {
      "thread.hello": "Hi, Larder Lane here. What's wrong?",
      "asides.cost-engineer.says": "Our engineer's visit costs £65, and the first half hour is in it.",
      "part.ask-shop": "Ring {{ shop }}",
    };
    const { at, said } = put(words);
    expect(said).toEqual([]);
    for (const [key, text] of Object.entries(words)) expect(at(key)).toBe(text);
    expect(at("ui.title")).toBe(textAt(ours, "ui.title"));
    expect(textAt(ours, "thread.hello")).toBe("Hello. What's going wrong?");
  });

  test.each([
    ["part.ask-shop", "Ask us", "it lacks {{shop}}"],
    ["thread.hello", "Hello from {{shop}}", "it names {{shop}}, which that text knows nothing of"],
    ["thread.hello", "Hello {{", "a brace that begins or ends nothing"],
    ["thread.hello", "<b>Hello</b> there", "it has markup"],
    ["thread.hello", "Bits &amp; pieces", "it has markup"],
    ["thread.hello", " \u0007 ", "it is empty"],
    ["ui.menu", "Everything else that there is", "it has 29 characters, and there is room for 18"],
    ["thread.hallo", "Hello", "no such text"],
    ["who.nobody.worth", "Yes", "no text by that key"],
    ["__proto__.hello.there", "Hello", "no such text"],
  ])("%s: “%s” is left, with why in one sentence, and all others hold", (key, text, why) => {
    const { at, said } = put({ [key]: text, "ui.title": "Ice help" });
    expect(said).toEqual([expect.stringContaining(why)]);
    expect(said[0]).toContain(`"${key}" keeps our words`);
    expect(at(key)).toBe(textAt(ours, key));
    expect(at("ui.title")).toBe("Ice help");
  });

  test("lose marks that turn the direction of what stands around them", () => {
    expect(put({ "ui.title": "Ice \u202Ehelp" }).at("ui.title")).toBe("Ice  help");
  });

  test.each([
    ["ui.danger", "Trouble"],
    ["ui.danger-ask", "What is wrong?"],
    ["ui.signal-warning", "NOTE"],
    ["dangers.smell.ask", "Fine"],
    ["gates.water-supply.ready", "Go on"],
    ["gates.water-supply.items.tap-closed", "I may close it."],
    ["hazards.slip", "All is well."],
    ["endings.plug.danger", "Put the plug in."],
    ["endings.professional.body", "Take every cover off."],
    ["checks.flow-test.run.how", "Use hot water."],
    ["checks.opening.danger.ask", "All well?"],
    ["part.outcome-stopped", "Done"],
    ["part.check-model", "Any will fit."],
    ["thread.water", "Water is on"],
    ["thread.danger-first", "Go on."],
    ["asides.safe-myself.says", "Do it all yourself."],
    ["who.refrigeration-engineer.name", "Anybody"],
    ["causes.plug-out.is", "Nothing"],
  ])("never touch what keeps people safe, nor what is asked and found: %s", (key, text) => {
    const { at, said } = put({ [key]: text });
    expect(said).toEqual([expect.stringContaining("no such text that a shop may put otherwise")]);
    expect(at(key)).toEqual(textAt(ours, key));
  });

  test("have keys that are there, none of them of a danger, a gate, a caution or a check", () => {
    const some = (key: string) => key.replace("who.*", "who.plumber");
    for (const key of openWords) {
      expect(isOpen(some(key)), key).toBe(true);
      const isThere = typeof textAt(ours, some(key)) === "string" || key === "who.*.worth-age";
      expect(isThere, key).toBe(true);
      expect(key).not.toMatch(/danger|signal|gate|hazard|caution|^(checks|causes|claims|statutes|measure)\./);
    }
  });

  test("are named by their keys in the guide, one by one", () => {
    const guide = readFileSync(new URL("../../demo/docs/colours-and-words.md", import.meta.url), "utf8");
    const [, table = ""] = guide.split("## Words");
    const named = [...table.matchAll(/^\| `([\w.*-]+)`/gm)].map(([, key]) => key);
    expect(named).toEqual(openWords);
  });
});

describe("the file of a shop's own words", () => {
  const read = (json: unknown) => {
    const said: string[] = [];
    return { words: readOwnWords(json, "en-GB", (sentence) => said.push(sentence)), said };
  };

  test("holds texts for all languages, and those of one below its tag, which win", () => {
    const json = {
      "ui.title": "Ice",
      "ui.menu": "Rest",
      "en-GB": { "ui.title": "Ice, dear" },
      "en-US": { "ui.title": "x" },
    };
    expect(read(json)).toEqual({ words: { "ui.title": "Ice, dear", "ui.menu": "Rest" }, said: [] });
  });

  test.each([[[]], ["words"], [null], [7]])("that is %j has none", (json) => {
    expect(read(json)).toEqual({ words: {}, said: [expect.stringContaining("must hold an object")] });
  });

  test("is read without what is no text, and no further than its bound", () => {
    expect(read({ "ui.title": 7, "ui.menu": "Rest" })).toEqual({
      words: { "ui.menu": "Rest" },
      said: [expect.stringContaining('"ui.title" keeps our words, because it is no text')],
    });
    const many = Object.fromEntries(Array.from({ length: 400 }, (_, at) => [`ui.x${at}`, "x"]));
    expect(Object.keys(read(many).words)).toHaveLength(wordsBounds.entries);
    expect(read(many).said).toHaveLength(1);
  });

  const fetched = async (get: () => Promise<Response>) => {
    const said: string[] = [];
    const file = await ownWordsAt("https://shop.example/words.json", "en-GB", (one) => said.push(one), get);
    return { file, said };
  };

  test.each([
    ["a server that has no such file", async () => new Response("", { status: 404 }), "the server said 404"],
    ["a page in its place", async () => new Response("<!doctype html>"), "the file is not JSON"],
    ["no connection", () => Promise.reject(new TypeError("Failed to fetch")), "Failed to fetch"],
    [
      "a server that says nothing",
      () => Promise.reject(new DOMException("", "TimeoutError")),
      "did not come within 3 seconds",
    ],
  ])("leaves our words at %s", async (_, get, why) => {
    expect(await fetched(get)).toEqual({ file: null, said: [expect.stringContaining(why)] });
  });

  test("is given up once it is too long", async () => {
    const long = JSON.stringify({ "ui.title": "x".repeat(wordsBounds.bytes) });
    const { file, said } = await fetched(async () => new Response(long));
    expect(file).toEqual({ words: {}, facts: {} });
    expect(said).toEqual([expect.stringContaining("more than 30000 bytes")]);
  });

  test("has the shop's facts beside its words, which are no text of ours by its key", async () => {
    const json = { "ui.title": "Ice", shop: { "return-days": 30, "call-out": "65" } };
    const { file, said } = await fetched(async () => new Response(JSON.stringify(json)));
    expect(file).toEqual({ words: { "ui.title": "Ice" }, facts: { returnDays: 30 } });
    expect(said).toEqual([expect.stringContaining('"call-out" below "shop" must be an amount of money')]);
  });

  test("is asked for with a time limit", async () => {
    const get = vi.fn(async (_: unknown, settings?: RequestInit) => {
      expect(settings?.signal).toBeInstanceOf(AbortSignal);
      return new Response("{}");
    });
    await fetched(get as never);
    expect(get).toHaveBeenCalledTimes(1);
  });
});
