import type { Features } from "../../understanding/index.ts";

/** What a label is about: how its sentences are told from others'. */
export type Kind = "answer" | "shared" | "question" | "ask" | "thing" | "danger" | "other";
export type Labelled = { label: string; features: Features };

/** As alike as two ways of putting the same thing: neither is then an example of what the other is not. */
const SAME = 0.72;
/** Negative examples: as many of the likest, and of the others one in so many. They are nearly all that counts. */
const LIKEST = 500;
const ONE_IN = 6;
/** A label has a dozen sentences among thousands; found on an outside data set's validation part. */
const BELONGS = 4;

export const kindOf = (label: string) => label.slice(0, label.indexOf(" ")) as Kind;
const nameOf = (label: string) => label.slice(label.indexOf(" ") + 1);
/** `opening.symptom` of `answer opening.symptom.no-ice`. */
export const turnOf = (label: string) => nameOf(label).slice(0, nameOf(label).lastIndexOf("."));

/** What weighing needs to know. `sharedAt`: by shared meaning, the turns where it is an answer. */
export type About = { sharedAt: Record<string, Set<string>>; facts: Set<string>; buckets: number };

const isToldAnyTime = (label: string, facts: Set<string>) =>
  label.startsWith("answer opening.") || (kindOf(label) === "answer" && facts.has(turnOf(label)));

/** Turns of the opening that speak of a danger themselves. */
const ofDanger = /^answer opening\.(danger|hiss|leak|leak-power)\./;

/**
 * How much each sentence counts for or against a label. An answer of a check is told from the other answers of its turn
 * and from what is no answer at all, not from those of turns where the same words mean something else; what may be said
 * at any turn is told from all.
 */
export function weightsFor(
  label: string,
  all: readonly Labelled[],
  { sharedAt, facts, buckets }: About,
): number[] {
  const own = all.filter((one) => one.label === label).map(({ features }) => denseOf(features, buckets));
  const kind = kindOf(label);
  const isLocal = kind === "shared" || (kind === "answer" && !isToldAnyTime(label, facts));
  const likest = all.map((other) =>
    other.label === label ? 2 : Math.max(...own.map((dense) => likeness(dense, other.features))),
  );
  const isAny = label === "danger any" || kind === "other" || kind === "ask";
  const weights = all.map((other, at) => {
    if (other.label === label) return isAny ? 1 : BELONGS;
    const against = -weightAgainst(label, kind, isLocal, other.label, { sharedAt, facts, buckets });
    const isSibling = kind === "answer" && turnOf(other.label) === turnOf(label) && kindOf(other.label) === kind;
    return !isSibling && (likest[at] as number) > SAME ? 0 : against;
  });
  const negatives = [...all.keys()].filter((at) => (weights[at] as number) < 0);
  negatives.sort((a, b) => (likest[b] as number) - (likest[a] as number) || a - b);
  for (const [rank, at] of negatives.entries()) if (!isAny && rank >= LIKEST && rank % ONE_IN) weights[at] = 0;
  return weights;
}

function weightAgainst(
  label: string,
  kind: Kind,
  isLocal: boolean,
  other: string,
  { sharedAt, facts }: About,
): number {
  const otherKind = kindOf(other);
  if (kind === "danger" || otherKind === "danger") {
    if (ofDanger.test(label) || ofDanger.test(other)) return 0;
    if (kind === otherKind) return label === "danger any" || other === "danger any" ? 0 : 1;
  }
  // A thing is asked for in questions and spoken of in answers: only other questions say which thing it is.
  if (kind === "thing") return otherKind === "thing" || otherKind === "question" ? 1 : 0;
  // Each question with a thing is there twice, once for its way of asking; once is enough against anything else.
  if (otherKind === "thing") return 0;
  if (kind === "danger" && other === "other harmless") return 3;
  if (otherKind === "answer" && kind === "answer" && turnOf(other) === turnOf(label)) return 3;
  if (otherKind === "shared")
    return isLocal && kind === "answer"
      ? sharedAt[nameOf(other)]?.has(turnOf(label)) || sharedAt[nameOf(other)]?.has("*") ? 1 : 0
      : 1;
  if (isLocal && otherKind === "answer") return isToldAnyTime(other, facts) && kind === "answer" ? 0.3 : 0;
  return 1;
}

/** A sentence as one number a bucket, so that many others can be held against it. */
function denseOf({ ids, weights }: Features, buckets: number): Float64Array {
  const dense = new Float64Array(buckets);
  for (const [at, id] of ids.entries()) dense[id] = weights[at] as number;
  return dense;
}

/** The cosine of two sentences. */
function likeness(dense: Float64Array, { ids, weights }: Features): number {
  let sum = 0;
  for (let at = 0; at < ids.length; at++) sum += (dense[ids[at] as number] as number) * (weights[at] as number);
  return sum;
}
