import { phrasesOf } from "../../../src/training/index.ts";
import { type Context, wordsOf } from "../../../src/understanding/index.ts";
import { readFlow } from "../../../src/workbench/build/flows-folder.ts";
import { readLocales, readPhrases } from "../../../src/workbench/build/locales-folder.ts";
import type { Method } from "./methods.ts";
import { readUnseen } from "./unseen.ts";

const language = "en-GB";
const texts = readLocales()[language] ?? {};
const { regions } = readFlow();

/** What a turn of our own knows when a sentence is typed there. */
export function contextOf(turn: string): Context {
  const [check = "", name = ""] = turn.split(".");
  const wordings = (
    texts as Record<string, Record<string, Record<string, { answers?: Record<string, string> }>>>
  )["checks"]?.[check]?.[name]?.answers;
  const standing = { "not-sure": "I'm not sure", cannot: "I can't do this" };
  const region = regions["GB"];
  if (!region) throw new Error("There is no region GB");
  return {
    turn,
    answers: Object.entries({ ...standing, ...wordings }).map(([id, text]) => ({ id, text })),
    instrument: null,
    region,
    today: "2026-11-27",
  };
}

const phrases = phrasesOf({ ...texts, phrases: readPhrases()[language] ?? {} });
const trained = new Set(phrases.map(({ text }) => wordsOf(text).join(" ")));

/** Whether a sentence is a training phrase, word for word. */
export const isTrained = (sentence: string) => trained.has(wordsOf(sentence).join(" "));

/**
 * The share of sentences written apart whose answer a method puts first among those of the turn, without any rule or
 * threshold: what the method itself gives. It learns all our phrases at once.
 */
export async function judgeOwnData(method: Method, names: readonly string[]): Promise<number> {
  const scores = await method.train(
    phrases.map(({ text, label }) => ({ text, label: label.startsWith("other ") ? null : label })),
  );
  let right = 0;
  let all = 0;
  for (const { answers } of readUnseen(names))
    for (const [turn, each] of Object.entries(answers))
      for (const [answer, text] of Object.entries(each))
        for (const sentence of text.split("\n")) {
          if (isTrained(sentence)) continue;
          const found = [...(await scores(sentence))]
            .filter(([label]) => label.startsWith(`answer ${turn}.`))
            .sort(([, a], [, b]) => b - a);
          all++;
          if (found[0]?.[0] === `answer ${turn}.${answer}`) right++;
        }
  return right / all;
}
