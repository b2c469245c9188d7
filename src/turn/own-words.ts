import { plainText } from "../catalogue/index.ts";
import type { LogEvent } from "../session/index.ts";
import type { Draft, Texts } from "./actions.ts";

/**
 * What was typed for an answer, or said for it on the phone, as one printable line; nothing where it was tapped. Markup
 * in it is text.
 */
export function wordsIn(event: LogEvent | undefined, texts: Texts): { words?: string } {
  const words = event && "words" in event && event.words ? plainText(event.words) : "";
  if (!event || !words) return {};
  return { words: "heard" in event && event.heard ? texts("thread.heard", { words }) : words };
}

/** An answer as a line of the thread has it: beside own words it is what they were taken as. */
export function lineOf(event: LogEvent, answer: string, texts: Texts): { answer: string; words?: string } {
  const { words } = wordsIn(event, texts);
  return words ? { words, answer: texts("thread.noted", { answer }) } : { answer };
}

/** Names in a draft: a sentence that has filled in entries, and these as it filled them in. */
const sentence = "own-words-filled";
const filled = (entry: string) => `${sentence} ${entry}`;

/** Puts entries that a sentence states into the form of a turn, and keeps the sentence beside them. */
export function fillIn(draft: Draft, turn: string, words: string, entries: Record<string, string>): void {
  draft.keep(turn, sentence, words);
  for (const [entry, entered] of Object.entries(entries)) {
    draft.keep(turn, entry, entered);
    draft.keep(turn, filled(entry), entered);
  }
}

/** The sentence that has filled in a form; undefined where there is none, or something else was entered since. */
export function sentenceBehind(draft: Draft, turn: string): string | undefined {
  const values = draft.read(turn);
  const isStill = Object.entries(values).every(([name, entered]) => {
    const now = values[name.slice(sentence.length + 1)];
    // A run that was taken leaves its fields empty.
    return !name.startsWith(filled("")) || !now || now === entered;
  });
  return isStill ? values[sentence] : undefined;
}
