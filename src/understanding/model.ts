import { type DangerRules, readRules } from "./danger-rules.ts";
import { readDigits } from "./digits.ts";
import { type Features, featuresOf, wordMark } from "./features.ts";
import { lookupOf, type ReadingWords } from "./readings/index.ts";

/** What the build writes for one language. All its lists are of plain text, so that it packs well. */
export type ModelData = {
  format: 1;
  /** How many numbers pieces of sentences are hashed to; a power of two. */
  buckets: number;
  /** What a sentence can be found to be: `answer <turn>.<answer>`, `question <id>`, `danger <kind>` and the like. */
  labels: string[];
  /** By label, in hundredths: what is added to every score. */
  biases: number[];
  /** By label: what one step of a weight is worth, in thousandths. */
  steps: number[];
  /** By group of labels: how far each bucket that has weights lies after the one before, as digits. */
  gaps: string[];
  /** By label: the steps of its weight in each bucket of its group, with 5 added, as digits. */
  levels: string[];
  /** How far each known word's mark lies after the one before, as digits. */
  known: string;
  /** By what is said alike at many turns, the answers that it gives; `*.<answer>` at any turn. */
  shared: Record<string, string>;
  words: LanguageWords;
};

/** What a language's sentences are read by besides the weights. */
export type LanguageWords = {
  /** Lines of `word=others that are read as it`. */
  same: string;
  negators: string;
  joints: string;
  /** Turns whose answers are told at any time. */
  facts: string;
  /** `turn=answer` of turns that ask for more of a complaint, and of that complaint. */
  within: string;
  /** Turns whose answers may speak of a danger. */
  risky: string;
  /** Questions that are known by the way of asking and the thing. */
  asked: string;
  /** Words that say little. */
  small: string;
  /** Words that begin a question. */
  asking: string;
  readings: ReadingWords;
  /** By kind of danger, as locales/<tag>/phrases/danger-rules.yaml says. */
  rules: Record<string, string>;
  /** By side question, as locales/<tag>/phrases/ask-rules.yaml says. */
  asks: Record<string, string>;
};

/** A model made ready. */
export type Model = {
  buckets: number;
  labels: string[];
  places: Record<string, number>;
  /** By answer (`<turn>.<answer>`, `*.<answer>`), the places of the labels of what is said alike. */
  sharedBy: Map<string, number[]>;
  biases: number[];
  isKnown(word: string): boolean;
  isSmall(word: string): boolean;
  /** By bucket: pairs of a label's place and its weight, one after the other. */
  weights: Map<number, number[]>;
  same: Record<string, string>;
  negators: Set<string>;
  joints: Set<string>;
  facts: Set<string>;
  /** By turn, the answer that whatever is said there says as well. */
  within: Record<string, string>;
  risky: Set<string>;
  asked: Set<string>;
  asking: Set<string>;
  readings: ReturnType<typeof lookupOf>;
  rules: DangerRules;
  asks: DangerRules;
};

/** What stands for a weight of 0 in the data: weights are steps from -4 to 4. */
const middle = 5;

/** Makes a model ready; a few milliseconds. @throws Error where the data is of another format */
export function readModel(data: ModelData): Model {
  const { format, buckets, labels, biases, steps, gaps, levels, shared, words } = data;
  if (format !== 1) throw new Error(`There is no reading a model of format ${format}`);
  const weights: Model["weights"] = new Map();
  let group = -1;
  let ids: number[] = [];
  for (const [label, name] of labels.entries()) {
    if (label === 0 || groupOf(name) !== groupOf(labels[label - 1] ?? ""))
      ids = placesOf(gaps[++group] ?? "");
    for (const [at, level] of readDigits(levels[label] ?? "").entries()) {
      const bucket = ids[at];
      if (level === middle || bucket === undefined) continue;
      const list = weights.get(bucket) ?? [];
      list.push(label, ((level - middle) * (steps[label] ?? 0)) / 1000);
      weights.set(bucket, list);
    }
  }
  const marks = new Set(placesOf(data.known));
  const small = new Set(words.small.split(" "));
  const places = Object.fromEntries(labels.map((label, place) => [label, place]));
  const sharedBy = new Map<string, number[]>();
  for (const [id, answers] of Object.entries(shared))
    for (const answer of answers.split(" "))
      sharedBy.set(answer, [...(sharedBy.get(answer) ?? []), places[`shared ${id}`] ?? -1]);
  return {
    buckets,
    labels,
    places,
    sharedBy,
    biases: biases.map((bias) => bias / 100),
    isKnown: (word) => marks.has(wordMark(word)),
    isSmall: (word) => small.has(word),
    weights,
    same: sameOf(words.same),
    negators: new Set(words.negators.split(" ")),
    joints: new Set(words.joints.split(" ")),
    facts: new Set(words.facts.split(/\s+/)),
    within: withinOf(words.within),
    risky: new Set(words.risky.split(" ")),
    asked: new Set(words.asked.split(" ")),
    asking: new Set(words.asking.split(" ")),
    readings: lookupOf(words.readings),
    rules: readRules(words.rules),
    asks: readRules(words.asks),
  };
}

/** By turn that asks for more of a complaint, that complaint. */
export const withinOf = (pairs: string): Record<string, string> =>
  Object.fromEntries(pairs.split(/\s+/).map((pair) => pair.split("=") as [string, string]));

/** Labels of one group have their weights in the same buckets: the answers of a turn; any other is a group of its own. */
export const groupOf = (label: string) =>
  label.startsWith("answer ") ? label.slice(0, label.lastIndexOf(".")) : label;

/** Ascending numbers out of how far each lies after the one before. */
function placesOf(gaps: string): number[] {
  let place = -1;
  return readDigits(gaps).map((gap) => {
    place += gap + 1;
    return place;
  });
}

/** By word, what it is read as. */
export function sameOf(lines: string): Record<string, string> {
  return Object.fromEntries(
    lines.split("\n").flatMap((line) => {
      const [to = "", from = ""] = line.split("=");
      return from.split(" ").map((word) => [word, to]);
    }),
  );
}

/** How much a sentence speaks for each label, by its place: 1 and more is clear, below -0.5 is nothing. */
export function scoresOf(model: Model, features: Features): Float32Array {
  const scores = Float32Array.from(model.biases);
  for (const [place, bucket] of features.ids.entries()) {
    const list = model.weights.get(bucket);
    const amount = features.weights[place] ?? 0;
    if (list)
      for (let at = 0; at < list.length; at += 2)
        scores[list[at] as number] = (scores[list[at] as number] ?? 0) + (list[at + 1] ?? 0) * amount;
  }
  return scores;
}

/** What words are judged by, as the model was trained. */
export const featuresFor = (model: Model, words: readonly string[]) =>
  featuresOf(words, model.buckets, model);
