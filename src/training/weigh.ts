import { type Index, type Labelled, likenessTo } from "./likeness.ts";

/** What a label is about: how its sentences are told from others'. */
export type Kind = "answer" | "shared" | "question" | "asked" | "ask" | "thing" | "danger" | "other";

/** As alike as two ways of putting the same thing: neither is then an example of what the other is not. */
const SAME = 0.72;
/** Negative examples: as many of the likest, and of the others one in so many. They are nearly all that counts. */
const LIKEST = 500;
const ONE_IN = 6;
/** A label has a dozen sentences among thousands; found on an outside data set's validation part. */
const BELONGS = 4;
/** All that has nothing to do with the subject is few sentences beside those of the subject. */
const UNRELATED = 2;

export const kindOf = (label: string) => label.slice(0, label.indexOf(" ")) as Kind;
const nameOf = (label: string) => label.slice(label.indexOf(" ") + 1);
/** `opening.symptom` of `answer opening.symptom.no-ice`. */
export const turnOf = (label: string) => nameOf(label).slice(0, nameOf(label).lastIndexOf("."));

/** What weighing needs to know. `shared` and `sharedAt`: by what is said alike, the answers that
 * it gives and their turns. */
export type About = {
  sharedAt: Record<string, Set<string>>;
  shared: Record<string, Set<string>>;
  facts: Set<string>;
  /** By turn, the answer that whatever is said there says as well. */
  within: Record<string, string>;
  index: Index;
};

const isToldAnyTime = (label: string, facts: Set<string>) =>
  label.startsWith("answer opening.") || (kindOf(label) === "answer" && facts.has(turnOf(label)));

/** Whether an answer is one that something said alike gives. */
const givenBy = (answer: string, shared: string, all: About["shared"]) =>
  kindOf(shared) === "shared" &&
  kindOf(answer) === "answer" &&
  (all[nameOf(shared)]?.has(nameOf(answer)) ?? false);

/** Turns of the opening that speak of a danger themselves. */
const ofDanger = /^answer opening\.(danger|hiss|leak|leak-power)\./;

/**
 * How much each sentence counts for or against a label. An answer of a check is told from the other answers of its turn
 * and from what is no answer at all, not from those of turns where the same words mean something else; what may be said
 * at any turn is told from all.
 */
export function weightsFor(label: string, all: readonly Labelled[], about: About): number[] {
  const { facts, index, shared } = about;
  const kind = kindOf(label);
  const isLocal = kind === "shared" || (kind === "answer" && !isToldAnyTime(label, facts));
  const isAny = label === "danger any" || kind === "other" || kind === "ask";
  // Of what thousands of sentences are examples, all others count.
  const likest = isAny ? new Float32Array(all.length) : likenessTo(label, all, index);
  const weights = all.map((other, at) => {
    if (other.label === label) {
      if (label === "other unrelated") return UNRELATED;
      return isAny ? 1 : BELONGS;
    }
    if (givenBy(label, other.label, shared) || givenBy(other.label, label, shared)) return 0;
    const against = -weightAgainst(label, kind, isLocal, other.label, about);
    const isSibling =
      kind === "answer" && turnOf(other.label) === turnOf(label) && kindOf(other.label) === kind;
    return !isSibling && (likest[at] as number) > SAME ? 0 : against;
  });
  const negatives = [...all.keys()].filter((at) => (weights[at] as number) < 0);
  const ascending = Float32Array.from(negatives, (at) => likest[at] as number).sort();
  const least = ascending[ascending.length - LIKEST] ?? -1;
  for (const [rank, at] of negatives.entries())
    if (!isAny && (likest[at] as number) < least && rank % ONE_IN) weights[at] = 0;
  return weights;
}

function weightAgainst(
  label: string,
  kind: Kind,
  isLocal: boolean,
  other: string,
  { sharedAt, facts, within }: About,
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
  if (otherKind === "shared" && isLocal)
    return meet(
      kind === "shared" ? sharedAt[nameOf(label)] : new Set([turnOf(label)]),
      sharedAt[nameOf(other)],
    );
  // The taste of ice and odd ice: one says more of the other.
  if (within[turnOf(other)] === nameOf(label) || within[turnOf(label)] === nameOf(other)) return 0;
  // What sounds like a danger and is none may be anything else.
  if (other === "other harmless" && kind === "answer") return 0.3;
  // Two things that are told at any time may both be so: a filter was changed, and there is no ice.
  if (!isLocal && kind === "answer" && isToldAnyTime(other, facts)) return 0.2;
  if (isLocal && otherKind === "answer") return isToldAnyTime(other, facts) && kind === "answer" ? 0.3 : 0;
  return 1;
}

/** Whether one turn has both, and they have to be told apart. */
const meet = (some = new Set<string>(), others = new Set<string>()) =>
  some.has("*") || others.has("*") || [...some].some((turn) => others.has(turn)) ? 1 : 0;
