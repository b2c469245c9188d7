import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { Context, Understood } from "../../../src/understanding/index.ts";

/** Sentences written apart, as the files of tests/understanding/unseen have them. */
type Unseen = {
  answers: Record<string, Record<string, string>>;
  facts: Record<string, string>;
  questions: Record<string, string>;
  dangers: Record<string, string>;
  harmless: string;
  unrelated: string;
};

export type Understand = (sentence: string, context: Context) => readonly Understood[];

const folder = new URL("../../understanding/unseen/", import.meta.url);

export const halves = {
  one: ["one/teenager", "one/dictation", "one/worried"],
  two: ["two/elderly", "two/non-native", "two/in-a-hurry"],
  // Written apart, without a look at phrases, rules or half one. Only totals of it are ever printed.
  three: ["three/scot", "three/from-abroad", "three/one-handed", "three/angry"],
  // Written with `three`, and read while tuning after a first run of both.
  four: ["four/tradesman", "four/grandmother", "four/student", "four/texan"],
} as const;

export function readUnseen(names: readonly string[]): Unseen[] {
  return names.map((name) => parse(readFileSync(new URL(`${name}.yaml`, folder), "utf8")));
}

/** The share of some, or NaN of none. */
const share = (all: readonly boolean[]) => all.filter(Boolean).length / all.length;

export type Misses = { sentence: string; wanted: string; got: string }[];

/** How well sentences written apart are understood; a sentence that is a
 * training phrase word for word counts as neither. `misses` takes what was not understood, for whoever wants to see it. */
export function judge(
  files: readonly Unseen[],
  understand: Understand,
  contextOf: (turn: string) => Context,
  isTrained: (sentence: string) => boolean = () => false,
  misses: Misses = [],
) {
  const lines = (text: string) => text.split("\n").filter((sentence) => !isTrained(sentence));
  const note = (isRight: boolean, sentence: string, wanted: string, all: readonly Understood[]) => {
    if (!isRight) misses.push({ sentence, wanted, got: JSON.stringify(all.slice(0, 3)) });
    return isRight;
  };
  const isAnswer = (one: Understood | undefined, answer: string) =>
    one?.kind === "answer" && one.answer === answer;
  const answers = files.flatMap((file) =>
    Object.entries(file.answers).flatMap(([turn, each]) =>
      Object.entries(each).flatMap(([answer, text]) =>
        lines(text).map((sentence) => {
          const all = understand(sentence, contextOf(turn));
          const offered = all.filter(({ kind }) => kind === "answer");
          return {
            first: note(isAnswer(all[0], answer), sentence, `${turn}.${answer}`, all),
            offered: offered.slice(0, 3).some((one) => isAnswer(one, answer)),
            silent: offered.some((one) => one.kind === "answer" && one.sure && one.answer !== answer),
          };
        }),
      ),
    ),
  );
  const neutral = contextOf("door-seal.look");
  const heard = (sentence: string, turn?: string) =>
    understand(sentence, turn ? contextOf(turn) : neutral)[0]?.kind === "danger";
  const dangers = files.flatMap((file) =>
    Object.entries(file.dangers).flatMap(([danger, text]) =>
      lines(text).map((sentence) => note(heard(sentence), sentence, `danger ${danger}`, [])),
    ),
  );
  const alarms = files.flatMap((file) =>
    lines(file.harmless).map((sentence) => !note(!heard(sentence), sentence, "no danger", [])),
  );
  const everyday = files.flatMap((file) =>
    Object.entries(file.answers)
      .filter(([turn]) => !/^opening\.(hiss|leak|leak-power)$/.test(turn))
      .flatMap(([turn, each]) =>
        Object.values(each).flatMap((text) =>
          lines(text).map((sentence) => !note(!heard(sentence, turn), sentence, `no danger at ${turn}`, [])),
        ),
      ),
  );
  const questions = files.flatMap((file) =>
    Object.entries(file.questions).flatMap(([entry, sentence]) => {
      if (isTrained(sentence)) return [];
      const all = understand(sentence, neutral);
      const [first] = all;
      return note(first?.kind === "question" && first.entry === entry, sentence, `question ${entry}`, all);
    }),
  );
  const unrelated = files.flatMap((file) =>
    lines(file.unrelated).map((sentence) => {
      const all = understand(sentence, neutral);
      return note(all[0]?.kind === "nothing", sentence, "nothing", all);
    }),
  );
  const facts = files.flatMap((file) =>
    Object.entries(file.facts).flatMap(([sentence, wanted]) => {
      if (isTrained(sentence)) return [];
      const all = understand(sentence, neutral);
      const found = all.flatMap((one) => (one.kind === "facts" ? one.facts : []));
      return wanted.split(", ").map((each) =>
        note(
          found.some(({ turn, answer }) => `${turn}.${answer}` === each),
          sentence,
          `fact ${each}`,
          all,
        ),
      );
    }),
  );
  return {
    answers: answers.length,
    first: share(answers.map((one) => one.first)),
    amongThree: share(answers.map((one) => one.offered)),
    silentlyWrong: answers.filter((one) => one.silent).length,
    dangers: dangers.length,
    dangersHeard: share(dangers),
    harmless: alarms.length,
    falseAlarms: share(alarms),
    everydayAlarms: share(everyday),
    questions: share(questions),
    unrelated: share(unrelated),
    facts: share(facts),
  };
}
