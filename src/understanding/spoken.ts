import type { Features } from "./features.ts";
import { featuresFor, type Model } from "./model.ts";
import type { Context } from "./understood.ts";
import { wordsOf } from "./words.ts";

/** How much likelier it is that somebody answers what was asked than that they speak of anything else. */
export const ANSWERING = 0.8;
/** What is told besides comes after what was asked, where both may be meant. */
export const BESIDE = 0.25;

const dangerTurn = "opening.danger";

/** A sentence or a statement of it: its words, and how much they speak for each label. */
export type Spoken = { words: readonly string[]; scores: Float32Array };

export const at = (model: Model, scores: Float32Array, label: string) =>
  scores[model.places[label] ?? -1] ?? -1;

export const labelsOf = (model: Model, beginning: string) =>
  model.labels.filter((label) => label.startsWith(beginning));

/** How much a sentence speaks for each answer of the turn, in their order. */
export function answerScores(model: Model, { words, scores }: Spoken, { turn, answers }: Context): number[] {
  const typed = featuresFor(model, words);
  return answers.map(({ id, text }) => {
    const own = Math.max(
      at(model, scores, `answer ${turn}.${id}`),
      // The answers of the question about dangers are the dangers.
      turn === dangerTurn ? at(model, scores, `danger ${id}`) : -1,
    );
    const shared = [`${turn}.${id}`, `*.${id}`].flatMap((key) =>
      (model.sharedBy.get(key) ?? []).map((place) => scores[place] ?? -1),
    );
    // An answer without phrases is known by its wording alone.
    const wording = alikeness(typed, featuresFor(model, wordsOf(text, model.same))) * 2 - 1;
    return Math.max(own, ...shared, wording);
  });
}

/** The cosine of two sentences. */
function alikeness(a: Features, b: Features): number {
  const weights = new Map(a.ids.map((id, place) => [id, a.weights[place] ?? 0]));
  return b.ids.reduce((sum, id, place) => sum + (weights.get(id) ?? 0) * (b.weights[place] ?? 0), 0);
}
