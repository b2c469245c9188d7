import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { suggest } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { ownLocales, readLocales } from "../../src/workbench/build/locales-folder.ts";
import { cases } from "../compile/scenario-paths.ts";
import { healthy } from "../session/drive.ts";
import { unseen } from "../turn/unseen-descriptions.ts";

type Described = {
  turn: string;
  "short-forms": string;
  words: Record<string, string>;
  danger: string;
  examples: Record<string, string>;
};

const flow = readFlow();
const languages = Object.keys(readLocales());
const own = (tag: string): Partial<Described> =>
  parse(readFileSync(`${ownLocales}${tag}/described.yaml`, "utf8"), { uniqueKeys: true });
const complete = own("en-GB") as Described;

/** What a phone has in this language: its own lists, and those of en-GB where it has none. */
const lexiconOf = (tag: string) => ({
  shortForms: own(tag)["short-forms"] ?? complete["short-forms"],
  words: { ...complete.words, ...own(tag).words },
});
const dangerOf = (tag: string) => own(tag).danger ?? complete.danger;
const linesOf = (text = "") => text.split("\n");

/** The answer that leads to a scenario; that it does is what the tests of the scenarios show. */
const answerTo = (scenario: string) =>
  ({ ...healthy, ...cases[scenario]?.open })["opening.symptom"] as string;

test("there are words for every answer of one turn of the flow, and for nothing else", () => {
  const [check, turn = ""] = complete.turn.split(".");
  expect(check).toBe("opening");
  const answers = Object.keys(flow.opening.turns[turn]?.answers ?? {});
  expect(answers.length).toBeGreaterThan(0);
  for (const tag of languages) expect(Object.keys(lexiconOf(tag).words).sort()).toEqual(answers.sort());
});

describe.each(languages)("the own words of %s", (tag) => {
  const lexicon = lexiconOf(tag);

  test("are entries of word beginnings and a weight, none of them twice for one answer", () => {
    for (const [answer, words] of Object.entries({ danger: dangerOf(tag), ...lexicon.words })) {
      const entries = words.split(/, |\n/);
      expect(entries.filter((entry) => !/^\p{Ll}+( \p{Ll}+)* [1-9]$/u.test(entry))).toEqual([]);
      const beginnings = entries.map((entry) => entry.slice(0, -2));
      expect(
        beginnings.filter((each, place) => beginnings.indexOf(each) !== place),
        answer,
      ).toEqual([]);
    }
  });

  test("have short forms that say what they are short for", () => {
    const lines = linesOf(lexicon.shortForms);
    expect(lines.filter((line) => !/^\p{Ll}+( \p{Ll}+)*=\p{Ll}+( \p{Ll}+)*$/u.test(line))).toEqual([]);
    const shorts = lines.map((line) => line.slice(0, line.indexOf("=")));
    // The first that fits counts: a later one that ends like an earlier one would never be read.
    for (const [place, short] of shorts.entries())
      expect(shorts.slice(0, place).filter((earlier) => short.endsWith(earlier))).toEqual([]);
  });

  test("have examples of their own for every scenario, six or more", () => {
    const { examples = {} } = own(tag);
    expect(Object.keys(examples).sort()).toEqual(Object.keys(flow.scenarios).sort());
    for (const sentences of Object.values(examples)) expect(linesOf(sentences).length).toBeGreaterThan(5);
  });

  const examples = Object.entries(own(tag).examples ?? {}).flatMap(([scenario, sentences]) =>
    linesOf(sentences).map((sentence) => [sentence, answerTo(scenario)] as const),
  );

  test.each(examples)("“%s” brings up “%s”", (sentence, answer) => {
    expect(suggest(sentence, lexicon)).toContain(answer);
  });

  test("bring it up first for 19 of 20 examples", () => {
    const first = examples.filter(([sentence, answer]) => suggest(sentence, lexicon)[0] === answer);
    // All of them when this was written; a translator may trade one for another.
    expect(first.length / examples.length).toBeGreaterThanOrEqual(0.95);
  });
});

describe.each(languages.filter((tag) => tag.startsWith("en")))(
  "sentences nobody thought of, in %s",
  (tag) => {
    const all = Object.entries(unseen).flatMap(([answer, sentences]) =>
      sentences.map((sentence) => ({ answer, found: suggest(sentence, lexiconOf(tag)) })),
    );

    test("bring up what was meant for 8 of 10, and first for 3 of 4", () => {
      // 46 and 42 of 54 when this was written.
      expect(all.filter(({ answer, found }) => found.includes(answer)).length / all.length).toBeGreaterThan(
        0.8,
      );
      expect(all.filter(({ answer, found }) => found[0] === answer).length / all.length).toBeGreaterThan(
        0.75,
      );
    });

    test("seldom bring up something else alone", () => {
      const misled = all.filter(({ answer, found }) => found.length > 0 && !found.includes(answer));
      // Two when this was written; where nothing is suggested, the list is still there.
      expect(misled.length / all.length).toBeLessThan(0.05);
    });
  },
);

describe.each(languages.filter((tag) => tag.startsWith("en")))("words of danger, in %s", (tag) => {
  const { shortForms, words } = lexiconOf(tag);
  const read = (sentence: string) =>
    suggest(sentence, { shortForms, words: { danger: dangerOf(tag), ...words } });

  // What each answer of opening.danger is about; the sentences are imagined, no source.
  test.each([
    "There is a burning smell",
    "It smells burnt",
    "Smoke comes out at the back",
    "Sparks from the plug",
    "The plug is hot",
    "A puddle near the socket",
    "Water by the outlet",
    "I smell gas",
    "It smells of gas",
    "There's a hissing noise and an oily patch",
    "I got a shock when I touched it",
    "It tingles when I touch the door",
    "The fridge smells like something is burning",
    "It keeps tripping the breaker",
  ])("“%s” is heard", (sentence) => {
    expect(read(sentence)).toContain("danger");
  });

  test("are not heard where nobody speaks of one", () => {
    const harmless = [
      ...Object.values(own(tag).examples ?? {}).flatMap(linesOf),
      ...Object.values(unseen).flat(),
    ];
    expect(harmless.filter((sentence) => read(sentence).includes("danger"))).toEqual([]);
  });
});
