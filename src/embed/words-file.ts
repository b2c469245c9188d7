import type { Services } from "../turn/index.ts";
import { createFile } from "./later-file.ts";

const getWords = createFile<typeof import("./words.ts")>(
  "words",
  () => import("./words.ts"),
  (file) => Boolean(file.openWords),
);

type Words = ReturnType<Services["words"]>;

/** By language; what did not come is asked for again. */
const opened = new Map<string, Words>();

/** Brings what understands sentences of a language. Rejects where it does not come. */
export function bringWords(language: string): Words {
  const words = opened.get(language) ?? getWords().then((file) => file.openWords(language));
  opened.set(language, words);
  words.catch(() => opened.delete(language));
  return words;
}
