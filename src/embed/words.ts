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
import type { HelpHours } from "./help-hours.ts";
import { sayFacts } from "./said-facts.ts";
import type { ShopFacts } from "./shop-facts.ts";

/** Side answers as a shop has them, and what they quote of it. */
export type OwnAnswers = {
  asides: (ours: Asides) => Asides;
  facts: ShopFacts;
  /** When its people can be asked: what it says of its hours wins. */
  helpHours: HelpHours | null;
  helpZone: string | null;
};

type WordsFile = { model: ModelData; asides: Asides; said: Said; tank: string };

/** `answered` has what was answered so far, each as `turn.answer`; `now` is milliseconds since 1970. */
export type OpenedWords = Omit<Words, "aside"> & {
  aside(
    entry: string,
    about: AsideAbout | undefined,
    answered: ReadonlySet<string>,
    own: OwnAnswers,
    now: number,
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
    aside(entry, about, answered, own, now) {
      const answers = own.asides(asides);
      const hours = own.facts.hours ?? own.helpHours;
      const zone = own.facts.zone ?? own.helpZone;
      const given = { ...own.facts, ...(hours && { hours }), ...(zone && { zone }) };
      const parts = (Object.hasOwn(answers, entry) && answers[entry]?.parts) || {};
      const facts = sayFacts(given, parts, language, now);
      return asideOf(answers, entry, { ...about, hasTank: answered.has(tank), facts });
    },
    said: ({ turn, answer }) => {
      const { title = "", answers = {} } = said[turn] ?? {};
      const text = answers[answer];
      return text ? { title, answer: text } : null;
    },
  };
}
