import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isScalar, LineCounter, type Pair, parseDocument, visit } from "yaml";
import { ownLocales } from "../../src/workbench/build/locales-folder.ts";

/** A text with the file and the line that it begins in. */
type Written = { key: string; text: string; path: string; line: number };

const files = readdirSync(ownLocales, { recursive: true, encoding: "utf8" }).filter((path) =>
  /^en-[A-Z]+\/(?!phrases\/).*\.yaml$/.test(path),
);

const written: Written[] = files.flatMap((path) => {
  const lines = new LineCounter();
  const found: Written[] = [];
  const nameOf = (pair: Pair) => (isScalar(pair.key) ? String(pair.key.value) : "");
  visit(parseDocument(readFileSync(`${ownLocales}${path}`, "utf8"), { lineCounter: lines }), {
    Pair(_, pair, parents) {
      if (!isScalar(pair.value) || typeof pair.value.value !== "string") return;
      const above = parents.flatMap((each) => (each && "key" in each ? [nameOf(each as Pair)] : []));
      const key = [...above, nameOf(pair)].join(".");
      const { line } = lines.linePos(pair.value.range?.[0] ?? 0);
      const isBlock = pair.value.type?.startsWith("BLOCK") ? 1 : 0;
      found.push({ key, text: pair.value.value, path, line: line + isBlock });
    },
  });
  return found;
});

const named = (name: RegExp) => written.filter(({ key }) => name.test(key));

const report = (some: Written[], say = (_: string) => "") =>
  some.map(({ key, text, path, line }) => `locales/${path}:${line} ${key}: ${say(text)}${text}`);

/** What is done at a turn: a check's own steps, and those that put something back. */
const steps = named(/(^|\.)(how|open-first|open-again|keep-closed|until-part|back)$/)
  .filter(({ key, path }) => !/\.answers\./.test(key) && !path.endsWith("measure.yaml"))
  .flatMap((each) => each.text.split("\n").map((text, at) => ({ ...each, text, line: each.line + at })));

/** A number with its unit is read as two words. */
const wordsIn = (step: string) => step.replace(/\{\{.*?\}\}/g, "so many").split(/\s+/).length;

describe("the steps of a turn", () => {
  test("are found", () => {
    expect(steps.length).toBeGreaterThan(500);
  });

  test("have twelve words each at most", () => {
    const long = steps.filter(({ text }) => wordsIn(text) > 12);
    expect(report(long, (text) => `${wordsIn(text)} words: `)).toEqual([]);
  });

  test("begin with what to do, not with a condition or a description", () => {
    const first = /^(It|Its|The|A|An|If|Is|Are|Was|Or|Some|Many|Then|There|When|Without|You|Your|No|On|In)\b/;
    // Two machines and the page's question about them: nothing is done there.
    const others = steps.filter(({ key }) => key !== "machine.how");
    expect(report(others.filter(({ text }) => first.test(text)))).toEqual([]);
  });

  test("end as a sentence", () => {
    expect(report(steps.filter(({ text }) => !text.endsWith(".")))).toEqual([]);
  });
});

test("a note below the steps has two sentences at most, on one line", () => {
  const notes = named(/(^|\.)note$/);
  expect(notes.length).toBeGreaterThan(50);
  const long = notes.filter(({ text }) => (text.match(/[.?!](?=\s|$)/g) ?? []).length > 2 || /\n/.test(text));
  expect(report(long)).toEqual([]);
});

/** Words that read as translated, or that scold; each has a plain one that is used instead. */
const stiff =
  /\b(tells? (if|whether|better|more|best)|whoever|anew|vessel|dwindles|hang together|of before|holds? fast|by itself|pieces)\b/i;

test("no text reads as if translated", () => {
  const spoken = written.map((each) => ({ ...each, text: each.text.replace(/\{\{.*?\}\}/g, "…") }));
  expect(report(spoken.filter(({ text }) => stiff.test(text)))).toEqual([]);
});
