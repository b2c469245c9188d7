import { wordsAddress } from "virtual:words";
import type { Words } from "../turn/index.ts";
import {
  type Aside,
  type AsideAbout,
  type Asides,
  asideOf,
  codesIn,
  type ModelData,
  readModel,
  type Said,
  understand,
} from "../understanding/index.ts";

type WordsFile = { model: ModelData; asides: Asides; said: Said; tank: string };

/** `answered` has what was answered so far, each as `turn.answer`. */
export type OpenedWords = Omit<Words, "aside"> & {
  aside(
    entry: string,
    about: AsideAbout | undefined,
    answered: ReadonlySet<string>,
    own: (ours: Asides) => Asides,
  ): Aside | null;
};

/** Fetches the model of a language and makes it ready; what is typed never leaves the device. @throws where it cannot be */
export async function openWords(language: string): Promise<OpenedWords> {
  const answer = await fetch(wordsAddress(language));
  if (!answer.ok) throw new Error(`The words of ${language} are missing: ${answer.status}`);
  const { model: data, asides, said, tank } = (await answer.json()) as WordsFile;
  const model = readModel(data);
  return {
    understand: (sentence, context) => understand(model, sentence, context),
    codesIn,
    aside: (entry, about, answered, own) =>
      asideOf(own(asides), entry, { ...about, hasTank: answered.has(tank) }),
    said: ({ turn, answer }) => {
      const { title = "", answers = {} } = said[turn] ?? {};
      const text = answers[answer];
      return text ? { title, answer: text } : null;
    },
  };
}
