import { describe, expect, test } from "vitest";
import { createTexts, type Resource } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";
import { expectedKeys } from "./expected-keys.ts";
import { findWords, onlyAmerican, onlyBritish } from "./spellings.ts";

const flow = ownFlow;
const locales = ownTexts;
const { needed, allowed } = expectedKeys(flow);
const files = [...new Set(needed.map((key) => key.slice(0, key.indexOf("."))))];

/** Every text of a language by dotted key. */
function everyTextIn(language: string): Record<string, string> {
  const flatten = (resource: Resource, prefix: string): [string, string][] =>
    Object.entries(resource).flatMap(([id, text]): [string, string][] =>
      typeof text === "string" ? [[prefix + id, text]] : flatten(text, `${prefix}${id}.`),
    );
  return Object.fromEntries(flatten(locales[language] ?? {}, ""));
}

/** Only the files of the troubleshooter's flow. */
function textsIn(language: string): Record<string, string> {
  const texts = Object.entries(everyTextIn(language));
  return Object.fromEntries(texts.filter(([key]) => files.some((file) => key.startsWith(`${file}.`))));
}

/** What a reader of a language may meet: all but units that can be chosen, one region's law, and ids of drawings. */
function everyTextReadIn(language: string): [string, string][] {
  const texts = Object.entries({ ...everyTextIn("en-GB"), ...everyTextIn(language) });
  return texts.filter(([key]) => !/^(statutes\.|measure\.unit-|asides\..*\.drawing$)/.test(key));
}

const british = textsIn("en-GB");
const differences = textsIn("en-US");
const american = { ...british, ...differences };

describe("the keys", () => {
  test("every id in flows/ has its text", () => {
    expect(needed.filter((key) => !british[key]?.trim())).toEqual([]);
  });

  test("no text belongs to nothing", () => {
    const known = new Set([...needed, ...allowed]);
    expect(Object.keys(british).filter((key) => !known.has(key))).toEqual([]);
  });

  test("en-US holds only texts that en-GB has, and only where they differ", () => {
    expect(Object.keys(differences).length).toBeGreaterThan(0);
    expect(Object.keys(differences).filter((key) => !british[key])).toEqual([]);
    expect(Object.keys(differences).filter((key) => british[key] === differences[key])).toEqual([]);
  });
});

test("a limit appears in the reader's own unit", () => {
  // -18 °C: three- and four-star compartment, (EU) 2019/2016 Annex Table 3. 0 °F: USDA FSIS and FDA advice.
  const note = "checks.freezer-temperature.read.note";
  expect(createTexts(locales, "en-GB", readerOf(flow))(note)).toContain("should be at \u221218\u00a0°C,");
  expect(createTexts(locales, "en-US", readerOf(flow, "en-US"))(note)).toContain("should be at 0\u00a0°F,");
});

describe.each([
  ["en-GB", british, onlyAmerican],
  ["en-US", american, onlyBritish],
])("the texts of %s", (own, texts, foreign) => {
  const all = Object.entries(texts);
  const ending = (...ends: string[]) => all.filter(([key]) => ends.some((end) => key.endsWith(`.${end}`)));
  const inside = (part: RegExp) => all.filter(([key]) => part.test(key));
  const faulty = (some: [string, string][], isWrong: (text: string) => boolean) =>
    some.filter(([, text]) => isWrong(text)).map(([key, text]) => `${key}: ${text}`);

  test("use no word of the other side of the Atlantic", () => {
    const found = everyTextReadIn(own).map(
      ([key, text]) => [key, findWords(text.replace(/\{\{.*?\}\}/g, ""), foreign)] as const,
    );
    expect(found.filter(([, words]) => words.length)).toEqual([]);
  });

  test("hold no markup and no empty line", () => {
    expect(faulty(all, (text) => /</.test(text) || /\n\s*\n/.test(text) || text !== text.trim())).toEqual([]);
  });

  test("write no number themselves, neither in digits nor in words", () => {
    const measured =
      /\b(two|three|four|five|six|ten|twelve|twenty|thirty|sixty|half an?) (seconds?|minutes?|hours?|days?|weeks?|months?|degrees?|ml)\b/i;
    expect(faulty(all, (text) => /\d/.test(text) || measured.test(text))).toEqual([]);
  });

  test("name no value but a limit's id, or one that the session gives", () => {
    const given: Record<string, string[]> = {
      endings: ["part"],
      findings: ["value", "unit", "seconds", "error", "verdict", "low", "high", "range", "count", "spots"],
      notices: ["time"],
      care: ["day"],
      resumed: ["kept", "shown", "date"],
    };
    const unknown = all.flatMap(([key, text]) => {
      const names = [...text.matchAll(/\{\{(.*?)\}\}/g)].map(([, name = ""]) => name);
      const known = given[key.slice(0, key.indexOf("."))] ?? [];
      return names.filter((name) => !(name in flow.limits) && !known.includes(name));
    });
    expect(unknown).toEqual([]);
    // A brace too many or too few shows itself on the screen.
    expect(faulty(all, (text) => /[{}]/.test(text.replace(/\{\{[a-z-]+\}\}/g, "")))).toEqual([]);
  });

  test("ask in one short question", () => {
    expect(faulty(ending("ask"), (text) => !text.endsWith("?") || text.length > 70)).toEqual([]);
  });

  test("label each answer with what is seen, in few words", () => {
    const labels = inside(/\.answers\./);
    expect(faulty(labels, (text) => text.length > 40 || /^(yes|no)\W?$/i.test(text))).toEqual([]);
    expect(faulty(labels, (text) => /[.?]$/.test(text))).toEqual([]);
  });

  test("tell the answers of one turn apart", () => {
    const seen = new Map<string, number>();
    for (const [key, text] of inside(/\.answers\./)) {
      const place = `${key.slice(0, key.lastIndexOf("."))}: ${text}`;
      seen.set(place, (seen.get(place) ?? 0) + 1);
    }
    expect([...seen].filter(([, times]) => times > 1)).toEqual([]);
  });

  test("quote an answer only as its button has it", () => {
    const labels = new Set([...inside(/\.answers\./), ...inside(/^standing\./)].map(([, text]) => text));
    // Buttons that stand at every turn, and at an ending.
    for (const language of ["en-GB", own]) {
      const { ui, part } = (locales[language] ?? {}) as Record<string, Record<string, string>>;
      for (const label of [ui?.danger, part?.["came-back"]]) if (label) labels.add(label);
    }
    const quoted = all.flatMap(([, text]) => [...text.matchAll(/“(.*?)”/g)].map(([, words = ""]) => words));
    expect(quoted.length).toBeGreaterThan(0);
    expect(quoted.filter((words) => !labels.has(words))).toEqual([]);
  });

  test("name a check in one to three words", () => {
    const names = inside(/^(checks|gates)\..*\.?name$/);
    expect(faulty(names, (text) => text.split(" ").length > 3)).toEqual([]);
  });

  test("let a person confirm a gate in the first person", () => {
    expect(faulty(inside(/\.items\./), (text) => !/^(I|We|There are two of us)\b/.test(text))).toEqual([]);
  });

  test("warn of each hazard in one sentence that ends with how to avoid it", () => {
    expect(faulty(inside(/^hazards\./), (text) => !/^[^.:]+: [^.:]+\.$/.test(text))).toEqual([]);
  });

  test.each(files)("%s speaks in short sentences", (file) => {
    // At most 14 words on average: reading age 9 of the GOV.UK content guidance, second-hand; the count is ours.
    const sentences = inside(new RegExp(`^${file}\\.`)).flatMap(
      ([, text]) => text.match(/[^.?!\n]+[.?!]/g) ?? [],
    );
    const words = sentences.map((sentence) => sentence.trim().split(/\s+/).length);
    const mean = words.reduce((sum, count) => sum + count, 0) / Math.max(1, words.length);
    expect(mean).toBeLessThanOrEqual(14);
  });
});
