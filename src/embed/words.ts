import { wordsAddress } from "virtual:words";
import type { Words } from "../turn/index.ts";
import { type Asides, asideOf, type ModelData, readModel, understand } from "../understanding/index.ts";

/** Fetches the model of a language and makes it ready; what is typed never leaves the device. @throws where it cannot be */
export async function openWords(language: string): Promise<Words> {
  const answer = await fetch(wordsAddress(language));
  if (!answer.ok) throw new Error(`The words of ${language} are missing: ${answer.status}`);
  const { model: data, asides } = (await answer.json()) as { model: ModelData; asides: Asides };
  const model = readModel(data);
  return {
    understand: (sentence, context) => understand(model, sentence, context),
    aside: (entry, about) => asideOf(asides, entry, about),
  };
}
