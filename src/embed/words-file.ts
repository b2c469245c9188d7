import { type Journal, standingOf } from "../session/index.ts";
import type { Words } from "../turn/index.ts";
import { createFile } from "./later-file.ts";
import type { OpenedWords, OwnAnswers } from "./words.ts";

const getWords = createFile<typeof import("./words.ts")>(
  "words",
  () => import("./words.ts"),
  (file) => Boolean(file.openWords),
);

/** By language; what did not come is asked for again. */
const opened = new Map<string, Promise<OpenedWords>>();

/**
 * Brings what understands sentences of a language. Rejects where it does not come.
 * @param own what a shop says in its own words, and of itself
 */
export async function bringWords(language: string, journal: () => Journal, own: OwnAnswers): Promise<Words> {
  const coming = opened.get(language) ?? getWords().then((file) => file.openWords(language));
  opened.set(language, coming);
  coming.catch(() => opened.delete(language));
  const words = await coming;
  return {
    ...words,
    aside: (entry, about) => words.aside(entry, about, answeredIn(journal()), own, Date.now()),
  };
}

function answeredIn(journal: Journal): Set<string> {
  const { events } = standingOf(journal).log;
  return new Set(
    events.flatMap((event) => (event.type === "answered" ? `${event.turn}.${event.answer}` : [])),
  );
}
