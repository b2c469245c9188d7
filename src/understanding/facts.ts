import type { Model } from "./model.ts";
import { answerScores, at, labelsOf, type Spoken } from "./spoken.ts";
import type { Context, Fact } from "./understood.ts";

/** What a score has to reach, found on sentences that were read while tuning. */
const least = {
  fact: -0.25,
  /** A complaint of which more is told. */
  complaint: -0.6,
  /** A second fact out of one statement. */
  clearFact: 0.5,
};

/** How much likelier it is that a statement answers what was asked than that it tells of another turn. */
const ANSWERED = 0.3;

export type ScoredFact = { score: number; fact: Fact };

/**
 * Answers of other turns, one a turn at most. Of each statement the likeliest, unless the statement is rather what the
 * sentence answers here; besides it only what says more of the same complaint, or is clear. One thing said once is one
 * fact, not one for each turn that could ask for it.
 */
export function factsIn(
  model: Model,
  spoken: readonly [Spoken, ...Spoken[]],
  context: Context,
): ScoredFact[] {
  const names = context.answers.map(({ id }) => `${context.turn}.${id}`);
  const scores = spoken.map((each) => answerScores(model, each, context));
  const likeliest =
    names[placeOfMost(names.map((_, place) => Math.max(...scores.map((each) => each[place] ?? -1))))];
  // More of a complaint is told only where the complaint may be one.
  const isLikely = ({ fact }: ScoredFact) => {
    const complaint = model.within[fact.turn];
    return (
      complaint === undefined ||
      spoken.some(({ scores: heard }) => at(model, heard, `answer ${complaint}`) > least.complaint)
    );
  };
  const best = new Map<string, ScoredFact>();
  for (const [part, { scores: heard }] of spoken.entries()) {
    const [first, ...others] = factsOf(model, heard, context).filter(isLikely);
    if (!first) continue;
    const own = scores[part] ?? [];
    const place = placeOfMost(own);
    const isAnswer = names[place] === likeliest && (own[place] ?? -1) + ANSWERED > first.score;
    const said = isAnswer ? likeliest : nameOf(first.fact);
    const isSaidSo = ({ fact, score }: ScoredFact) =>
      model.within[fact.turn] === said || (!isAnswer && score > least.clearFact);
    // A sentence of several statements as a whole says only more of the one complaint.
    const isWhole = part === 0 && spoken.length > 1;
    const told = [first, ...others].filter((one) =>
      isWhole ? model.within[one.fact.turn] === likeliest : (one === first && !isAnswer) || isSaidSo(one),
    );
    for (const one of told)
      if (one.score > (best.get(one.fact.turn)?.score ?? least.fact)) best.set(one.fact.turn, one);
  }
  return [...best.values()].sort((a, b) => b.score - a.score);
}

const placeOfMost = (scores: readonly number[]) => scores.indexOf(Math.max(...scores));

/** The likeliest answer of each other turn that is told unasked, likeliest first. */
function factsOf(model: Model, scores: Float32Array, { turn, isOpen = () => true }: Context): ScoredFact[] {
  const best = new Map<string, ScoredFact>();
  // Who is asked for more of a complaint has told the complaint.
  const complaint = model.within[turn]?.replace(/\.[^.]*$/, "");
  for (const label of labelsOf(model, "answer ")) {
    const name = label.slice("answer ".length);
    const cut = name.lastIndexOf(".");
    const fact = { turn: name.slice(0, cut), answer: name.slice(cut + 1) };
    if (fact.turn === turn || fact.turn === complaint || !model.facts.has(fact.turn)) continue;
    const score = at(model, scores, label);
    if (score > (best.get(fact.turn)?.score ?? least.fact) && isOpen(fact))
      best.set(fact.turn, { score, fact });
  }
  return [...best.values()].sort((a, b) => b.score - a.score);
}

const nameOf = ({ turn, answer }: Fact) => `${turn}.${answer}`;
