import {
  type Features,
  featuresOf,
  type LanguageWords,
  type ModelData,
  sameOf,
  wordMark,
  wordsOf,
  writeDigits,
} from "../understanding/index.ts";
import { indexOf, type Labelled } from "./likeness.ts";
import type { Phrase } from "./phrases.ts";
import { seeded, trainLabel } from "./train.ts";
import { kindOf, turnOf, weightsFor } from "./weigh.ts";

/** How large a model may get. */
export type Size = { buckets: number; perLabel: number };
export const usualSize: Size = { buckets: 2 ** 13, perLabel: 40 };

const SEED = 20_261_127;
/** What has many sentences gets more weights, up to so many by its kind. */
const PER_SENTENCE = 2.5;
const most: Record<string, number> = {
  "danger any": 750,
  danger: 240,
  "other harmless": 500,
  other: 300,
  ask: 160,
  thing: 44,
  question: 32,
};
const MOST = 400;
/** Steps of a weight to either side of 0. */
const STEPS = 7;

/** Trains a language's model of its phrases: the same model of the same phrases. Some seconds for thousands of them. */
export function createModel(
  phrases: readonly Phrase[],
  words: LanguageWords,
  shared: Record<string, string>,
  { buckets, perLabel }: Size = usualSize,
): ModelData {
  const same = sameOf(words.same);
  const known = knownMarks(phrases, same);
  const marks = new Set(known);
  const small = new Set(words.small.split(" "));
  const judged = {
    isKnown: (word: string) => marks.has(wordMark(word)),
    isSmall: (word: string) => small.has(word),
  };
  const all: Labelled[] = phrases.flatMap(({ text, label }) => {
    const features = featuresOf(wordsOf(text, same), buckets, judged);
    const one = { label, features };
    const name = label.slice(label.indexOf(" ") + 1);
    const cut = name.indexOf("-");
    // A hiss is asked about before it is a danger.
    if (kindOf(label) === "danger" && name !== "hiss") return [one, { label: "danger any", features }];
    if (kindOf(label) !== "asked") return [one];
    return [`ask ${name.slice(0, cut)}`, `thing ${name.slice(cut + 1)}`].map((each) => ({
      label: each,
      features,
    }));
  });
  const sharedAt = Object.fromEntries(
    Object.entries(shared).map(([id, answers]) => [
      id,
      new Set(answers.split(" ").map((answer) => turnOf(`shared ${answer}`))),
    ]),
  );
  const about = {
    sharedAt,
    shared: Object.fromEntries(
      Object.entries(shared).map(([id, answers]) => [id, new Set(answers.split(" "))]),
    ),
    facts: new Set(words.facts.split(/\s+/)),
    index: indexOf(all),
  };
  const labels = [...new Set(all.map(({ label }) => label))].sort();
  const trained = labels.map((label) => {
    const weights = weightsFor(label, all, about);
    const examples = all.flatMap(({ features }, place) =>
      weights[place] ? { features, weight: weights[place] as number } : [],
    );
    const own = examples.filter(({ weight }) => weight > 0).length;
    const wanted = Math.max(perLabel, Math.round(own * PER_SENTENCE));
    return shorten(examples, buckets, Math.min(most[label] ?? most[kindOf(label)] ?? MOST, wanted));
  });
  return {
    format: 1,
    buckets,
    labels,
    biases: trained.map(({ bias }) => Math.round(bias * 100)),
    steps: trained.map(({ step }) => Math.round(step * 10_000)),
    known: writeDigits(gapsOf(known)),
    gaps: trained.map(({ kept }) => writeDigits(gapsOf(kept.map(([bucket]) => bucket)))),
    levels: trained.map(({ kept }) => writeDigits(kept.map(([, level]) => level + STEPS + 1))),
    shared,
    words,
  };
}

const gapsOf = (ascending: readonly number[]) =>
  ascending.map((each, place) => each - 1 - (ascending[place - 1] ?? -1));

/**
 * The words of the subject, by their marks. A word of one sentence alone counts as unknown: so it is learnt what unknown
 * words mean.
 */
function knownMarks(phrases: readonly Phrase[], same: Record<string, string>): number[] {
  const counts = new Map<string, number>();
  for (const { text, label } of phrases)
    if (label !== "other unrelated")
      for (const word of new Set(wordsOf(text, same))) counts.set(word, (counts.get(word) ?? 0) + 1);
  const often = [...counts].filter(([, count]) => count > 1);
  return [...new Set(often.map(([word]) => wordMark(word)))].sort((a, b) => a - b);
}

type Shortened = { kept: [bucket: number, level: number][]; bias: number; step: number };

/** Trains, leaves out the light weights, and trains again with what is left. */
function shorten(
  examples: { features: Features; weight: number }[],
  buckets: number,
  most: number,
): Shortened {
  const first = trainLabel(examples, buckets, seeded(SEED));
  const heaviest = heaviestOf(first.weights, most);
  const isKept = new Set(heaviest);
  const fewer = examples.map(({ features: { ids, weights }, weight }) => {
    const places = ids.flatMap((id, place) => (isKept.has(id) ? place : []));
    return {
      weight,
      features: {
        ids: places.map((at) => ids[at] as number),
        weights: places.map((at) => weights[at] as number),
      },
    };
  });
  const { weights, bias } = trainLabel(fewer, buckets, seeded(SEED));
  const step = Math.max(...heaviest.map((at) => Math.abs(weights[at] as number))) / STEPS || 1;
  const kept = heaviest
    .sort((a, b) => a - b)
    .map((at): [number, number] => [at, Math.round((weights[at] as number) / step)])
    .filter(([, level]) => level !== 0);
  return { kept, bias, step };
}

function heaviestOf(weights: Float64Array, most: number): number[] {
  return [...weights.keys()]
    .filter((at) => weights[at] !== 0)
    .sort((a, b) => Math.abs(weights[b] as number) - Math.abs(weights[a] as number) || a - b)
    .slice(0, most);
}
