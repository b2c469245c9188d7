import { describe, expect, test } from "vitest";
import { askedOf, createWordsData, phrasesOf, sharedOf, withOwnLines } from "../../src/training/index.ts";
import { type Asides, wordsOf } from "../../src/understanding/index.ts";
import { readPhrases } from "../../src/workbench/build/locales-folder.ts";
import { halves, readUnseen } from "../bench/words/unseen.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { phrases as few, smallData } from "./small-model.ts";

const flow = ownFlow;
const texts = { ...ownTexts["en-GB"], phrases: readPhrases()["en-GB"] ?? {} };
const phrases = phrasesOf(texts);
const countOf = (label: string) => phrases.filter((one) => one.label === label).length;

/** Every answer of a check or the opening, as `check.turn.answer`. */
const answers = [flow.opening, ...Object.values(flow.checks)].flatMap(({ id, turns }) =>
  Object.entries(turns).flatMap(([turn, { answers: own = {} }]) =>
    Object.keys(own).map((answer) => `${id}.${turn}.${answer}`),
  ),
);

describe("the phrases of en-GB", () => {
  test("are of answers that flows/ has", () => {
    const known = new Set(answers);
    const named = [
      ...phrases.flatMap(({ label }) => (label.startsWith("answer ") ? [label.slice("answer ".length)] : [])),
      ...Object.values(sharedOf(texts)).flatMap((given) => given.split(" ")),
    ];
    expect([...new Set(named)].filter((answer) => !answer.startsWith("*.") && !known.has(answer))).toEqual(
      [],
    );
  });

  test("name turns and answers that flows/ has, wherever they speak of one", () => {
    const { facts, risky, within, tank } = texts.phrases["words"] as Record<string, string>;
    const turns = new Set(answers.map((answer) => answer.replace(/\.[^.]*$/, "")));
    const pairs = (within ?? "").split(/\s+/).map((pair) => pair.split("="));
    const named = [facts, risky].flatMap((list) => (list ?? "").split(/\s+/));
    expect([...named, ...pairs.map(([turn]) => turn ?? "")].filter((turn) => !turns.has(turn))).toEqual([]);
    const said = [tank, ...pairs.map(([, answer]) => answer)];
    expect(said.filter((answer) => !answers.includes(answer ?? ""))).toEqual([]);
  });

  test("are eight or more for every answer, its own or what is said alike, and for every danger", () => {
    const shared = sharedOf(texts);
    const enough = new Set(
      Object.keys(shared)
        .filter((id) => countOf(`shared ${id}`) >= 8)
        .flatMap((id) => (shared[id] ?? "").split(" ")),
    );
    const few = answers.filter((answer) => {
      const [check, turn, id] = answer.split(".");
      const label = `${check}.${turn}` === "opening.danger" ? `danger ${id}` : `answer ${answer}`;
      return !enough.has(answer) && countOf(label) < 8;
    });
    // Whoever taps this is asked about a danger and says that there is one.
    expect(few).toEqual(["opening.danger-again.general"]);
  });

  test("ask for every side answer, of which there are eighty and more", () => {
    const entries = Object.keys((texts as Record<string, object>)["asides"] ?? {});
    const asked = [
      ...askedOf(texts).split(" "),
      ...phrases.flatMap(({ label }) =>
        label.startsWith("question ") ? [label.slice("question ".length)] : [],
      ),
    ];
    expect(entries.length).toBeGreaterThanOrEqual(80);
    expect([...new Set(asked)].sort()).toEqual(entries.sort());
  });

  test("are none of the sentences written apart, but for a few that are short", () => {
    const trained = new Set(phrases.map(({ text, label }) => `${label} ${wordsOf(text).join(" ")}`));
    const same = readUnseen(halves.two).flatMap(({ answers: each }) =>
      Object.entries(each).flatMap(([turn, given]) =>
        Object.entries(given).flatMap(([answer, lines]) =>
          lines
            .split("\n")
            .filter((line) => trained.has(`answer ${turn}.${answer} ${wordsOf(line).join(" ")}`)),
        ),
      ),
    );
    expect(same.filter((sentence) => wordsOf(sentence).length > 4)).toEqual([]);
  });
});

test("side answers have two sentences at most, and no number of money of ours", () => {
  for (const tag of ["en-GB", "en-US"]) {
    const asides = (ownTexts[tag] as unknown as Record<string, Asides>)["asides"] ?? {};
    const all = Object.values(asides).flatMap(({ facts = {}, parts = {}, ...one }) => [
      ...Object.values(one),
      ...Object.values(facts),
      ...Object.values(parts),
    ]);
    expect(all.filter((text) => (text.match(/[.?!](?=\s|$|”)/g) ?? []).length > 2)).toEqual([]);
    expect(all.filter((text) => /[£$€\d]/.test(text))).toEqual([]);
  }
});

test("the same phrases make the same model, byte for byte", () => {
  const again = createWordsData(few, { asides: {}, checks: {} }, { buckets: 2 ** 12, perLabel: 60 });
  expect(JSON.stringify(again)).toBe(JSON.stringify(smallData));
});

test("a language's own lines come after those that it leans on", () => {
  expect(withOwnLines({ a: { b: "one" }, c: "x" }, { a: { b: "two", d: "y" } })).toEqual({
    a: { b: "one\ntwo", d: "y" },
    c: "x",
  });
});
