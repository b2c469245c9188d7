import {
  type Features,
  featuresOf,
  groupOf,
  type LanguageWords,
  type ModelData,
  sameOf,
  withinOf,
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
export const usualSize: Size = { buckets: 2 ** 11, perLabel: 36 };

const SEED = 20_261_127;
/** Rounds of training that show which weights are heavy. */
const ROUGHLY = 5;
/** What has many sentences gets more weights; fewer where the sentences are made of patterns. */
const PER_SENTENCE = 1;
const PER_PATTERN = 0.7;
const MOST = 600;
/** What has nothing to do with the subject may be in any word. */
const MOST_UNRELATED = 1300;
/** Labels of a group have so many of their buckets together, of the sum of what each would have. */
const TOGETHER = 0.9;
/** How much it counts that a piece sets the labels of a group apart. */
const APART = 0.7;
/** How much it counts that a piece is met often, from 0. */
const OFTEN = 0.15;
/** Steps of a weight to either side of 0. */
const STEPS = 4;
/** Sizes of a step that are tried, of that at which the heaviest weight is the last step. */
const SHORTER = [1, 0.9, 0.8, 0.7, 0.6, 0.5];

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
    within: withinOf(words.within),
    index: indexOf(all),
  };
  const labels = [...new Set(all.map(({ label }) => label))].sort();
  const trained = groupsOf(labels).map((group) => {
    const examples = group.map((label) => {
      const weights = weightsFor(label, all, about);
      return all.flatMap(({ features }, place) =>
        weights[place] ? { features, weight: weights[place] as number } : [],
      );
    });
    const most = group.map((label, place) => {
      if (label === "other unrelated") return MOST_UNRELATED;
      const own = (examples[place] ?? []).filter(({ weight }) => weight > 0).length;
      const isPatterned = ["danger", "ask", "thing"].includes(kindOf(label));
      return Math.min(MOST, Math.max(perLabel, Math.round(own * (isPatterned ? PER_PATTERN : PER_SENTENCE))));
    });
    const sum = most.reduce((total, each) => total + each, 0);
    return shorten(examples, buckets, Math.round(group.length > 1 ? sum * TOGETHER : sum));
  });
  const weighed = trained.flatMap(({ labels: each }) => each);
  return {
    format: 1,
    buckets,
    labels,
    biases: weighed.map(({ bias }) => Math.round(bias * 100)),
    steps: weighed.map(({ step }) => Math.round(step * 1000)),
    known: writeDigits(gapsOf(known)),
    gaps: trained.map(({ kept }) => writeDigits(gapsOf(kept))),
    levels: weighed.map(({ levels }) => writeDigits(levels.map((level) => level + STEPS + 1))),
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

/** Labels with those of their group, in their order. */
function groupsOf(labels: readonly string[]): string[][] {
  const groups: string[][] = [];
  for (const [place, label] of labels.entries())
    if (place > 0 && groupOf(label) === groupOf(labels[place - 1] as string)) groups.at(-1)?.push(label);
    else groups.push([label]);
  return groups;
}

type Example = { features: Features; weight: number };
type Shortened = { kept: number[]; labels: { levels: number[]; bias: number; step: number }[] };

/**
 * Trains the labels of a group, leaves out the buckets that are light for all of them, and trains again with what is left.
 * Answers of one turn are told apart by the same pieces, and where a bucket lies takes more room than a weight.
 */
function shorten(group: readonly Example[][], buckets: number, most: number): Shortened {
  const telling = tellingApart(
    group.map((examples) =>
      tellingOf(trainLabel(examples, buckets, seeded(SEED), ROUGHLY).weights, examples),
    ),
  );
  const kept = heaviestOf(telling, most).sort((a, b) => a - b);
  const isKept = new Uint8Array(buckets);
  for (const bucket of kept) isKept[bucket] = 1;
  const labels = group.map((examples) => {
    const fewer = examples.map(({ features, weight }) => ({ weight, features: keptOf(features, isKept) }));
    const { weights, bias } = trainLabel(fewer, buckets, seeded(SEED));
    const own = kept.map((at) => weights[at] as number);
    const step = stepOf(own);
    return { levels: own.map((weight) => levelOf(weight, step)), bias, step };
  });
  const isUsed = kept.map((_, place) => labels.some(({ levels }) => levels[place] !== 0));
  return {
    kept: kept.filter((_, place) => isUsed[place]),
    labels: labels.map((label) => ({ ...label, levels: label.levels.filter((_, place) => isUsed[place]) })),
  };
}

const levelOf = (weight: number, step: number) =>
  Math.max(-STEPS, Math.min(STEPS, Math.round(weight / step)));

/** The step that comes nearest to all weights: the few heaviest may be cut short for the many that are light. */
function stepOf(weights: readonly number[]): number {
  const largest = Math.max(...weights.map(Math.abs)) / STEPS || 1;
  const errorOf = (step: number) =>
    weights.reduce((sum, weight) => sum + (weight - step * levelOf(weight, step)) ** 2, 0);
  const steps = SHORTER.map((part) => part * largest);
  const errors = steps.map(errorOf);
  return steps[errors.indexOf(Math.min(...errors))] as number;
}

/** By bucket, how heavy it is for the labels of a group, and how far it sets them apart. */
function tellingApart(group: readonly Float64Array[]): Float64Array {
  const [first = new Float64Array()] = group;
  if (group.length === 1) return first;
  return first.map((_, bucket) => {
    const weights = group.map((each) => each[bucket] as number);
    const mean = weights.reduce((sum, weight) => sum + Math.abs(weight), 0) / weights.length;
    return mean + APART * (Math.max(...weights) - Math.min(...weights));
  });
}

function keptOf({ ids, weights }: Features, isKept: Uint8Array): Features {
  const kept: Features = { ids: [], weights: [] };
  for (let place = 0; place < ids.length; place++) {
    const id = ids[place] as number;
    if (!isKept[id]) continue;
    kept.ids.push(id);
    kept.weights.push(weights[place] as number);
  }
  return kept;
}

/** How much each weight tells, the more the oftener their piece is met: a heavy one of a single sentence helps nobody else. */
function tellingOf(weights: Float64Array, examples: readonly Example[]): Float64Array {
  const often = new Float64Array(weights.length);
  for (const { features, weight } of examples)
    for (let place = 0; place < features.ids.length; place++) {
      const id = features.ids[place] as number;
      often[id] = (often[id] as number) + Math.abs(weight) * (features.weights[place] as number) ** 2;
    }
  return weights.map((weight, bucket) => weight * (often[bucket] as number) ** OFTEN);
}

function heaviestOf(weights: Float64Array, most: number): number[] {
  return [...weights.keys()]
    .filter((at) => weights[at] !== 0)
    .sort((a, b) => Math.abs(weights[b] as number) - Math.abs(weights[a] as number) || a - b)
    .slice(0, most);
}
