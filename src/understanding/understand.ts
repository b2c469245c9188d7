import { clausesOf, ruledDanger, statementsOf } from "./danger-rules.ts";
import type { Features } from "./features.ts";
import { featuresFor, type Model, scoresOf } from "./model.ts";
import { readingOf } from "./readings/index.ts";
import type { Context, Fact, Understood } from "./understood.ts";
import { longestSentence, wordsOf } from "./words.ts";

/** What a score has to reach, found on the phrases by leaving some out; a score of 1 is a clear case. */
const least = {
  danger: 0.04,
  /** As far as a danger has to be likelier than its look-alikes. */
  beyondHarmless: 0.3,
  /** The words of a danger, but with a 'no' before them. */
  deniedDanger: 0.8,
  answer: -0.7,
  fact: -0.25,
  /** A complaint of which more is told. */
  complaint: -0.6,
  /** A second fact out of one statement. */
  clearFact: 0.5,
  question: -0.45,
};
/** How much likelier it is that somebody answers what was asked than that they speak of anything else. */
const ANSWERING = 0.6;
/** What is told besides comes after what was asked, where both may be meant. */
const BESIDE = 0.25;
/** What only a part of a sentence says counts less than what the whole of it says. */
const IN_PART = 0.2;
/** How much likelier a sentence that begins like a question is one. */
const ASKING = 0.4;
/** A thing that is named is less than one that is asked for. */
const THING = 0.2;
/** As many of a kind as are offered side by side. */
const MOST_ANSWERS = 3;

const dangerTurn = "opening.danger";

type Scored = { score: number; understood: Understood };
type ScoredFact = { score: number; fact: Fact };
/** A sentence or a statement of it: its words, and how much they speak for each label. */
type Spoken = { words: readonly string[]; scores: Float32Array };

/**
 * What a sentence means, likeliest first; a danger comes before all else. Never empty, never throws: what nothing is
 * made of is 'nothing', and the answers after that are no more than nearer than the others. The first 500 characters are read.
 */
export function understand(model: Model, sentence: string, context: Context): [Understood, ...Understood[]] {
  const text = sentence.slice(0, longestSentence);
  const words = wordsOf(text, model.same);
  if (words.length === 0) return [{ kind: "nothing" }];
  const own = context.answers.find((answer) => folded(answer.text) === folded(text));
  if (own) return [{ kind: "answer", turn: context.turn, answer: own.id, sure: true }];
  const statements = statementsOf(text, model.joints);
  const scoredOf = (each: readonly string[]): Spoken => ({
    words: each,
    scores: scoresOf(model, featuresFor(model, each)),
  });
  const whole = scoredOf(words);
  const parts = statements.length > 1 ? statements.map((each) => scoredOf(alike(each, model))) : [];
  const facts = factsIn(model, [whole, ...parts], context);
  const answers = answersIn(model, [whole, ...parts], context, facts);
  const isAsking = model.asking.has(words[0] ?? "") || text.trimEnd().endsWith("?");
  const rest: Scored[] = [
    ...answers,
    ...questionsIn(model, whole.scores).map((one) => ({ ...one, score: one.score + (isAsking ? ASKING : 0) })),
    ...told(facts, answers[0]?.score),
    ...readingIn(model, text, context),
    ...modelIn(text, context),
  ].sort((a, b) => b.score - a.score);
  const other = Math.max(
    at(model, whole.scores, "other unrelated"),
    at(model, whole.scores, "other harmless"),
  );
  const found = rest.filter(({ score }) => score > other).map(({ understood }) => understood);
  const heard = [whole, ...parts].map(({ scores }) => scores);
  const [first, ...others] = [...dangerIn(model, text, heard), ...found];
  return first
    ? [first, ...others]
    : [
        { kind: "nothing" },
        ...answersIn(model, [whole], context, [], -1).map(({ understood }) => understood),
      ];
}

const folded = (text: string) => wordsOf(text).join(" ");
const alike = (words: readonly string[], model: Model) => wordsOf(words.join(" "), model.same);
const at = (model: Model, scores: Float32Array, label: string) => scores[model.places[label] ?? -1] ?? -1;

function dangerIn(model: Model, text: string, scored: Float32Array[]): Understood[] {
  const isNegator = (word: string) =>
    (model.same[word] ?? word).split(" ").some((each) => model.negators.has(each));
  const isJoint = (word: string) => model.joints.has(word);
  const ruled = clausesOf(text).flatMap((words) => ruledDanger(words, model.rules, isNegator, isJoint) ?? []);
  const said = ruled.find(({ denied }) => !denied);
  // Each kind is weighed together with whether it is any danger at all, which more sentences speak of.
  const scoreOf = (label: string) =>
    Math.max(...scored.map((scores) => (at(model, scores, label) + at(model, scores, "danger any")) / 2));
  const [likeliest = { label: "danger general", score: -1 }] = labelsOf(model, "danger ")
    .filter((label) => label !== "danger hiss" && label !== "danger any")
    .map((label) => ({ label, score: scoreOf(label) }))
    .sort((a, b) => b.score - a.score);
  const isDenied = !said && ruled.length > 0;
  const harmless = at(model, scored[0] ?? new Float32Array(), "other harmless");
  const isHeard =
    likeliest.score >= (isDenied ? least.deniedDanger : least.danger) &&
    likeliest.score > harmless + least.beyondHarmless;
  if (!said && !isHeard) return [];
  const kind = likeliest.label.slice("danger ".length);
  return [{ kind: "danger", danger: said?.danger ?? kind, sure: said !== undefined && isHeard }];
}

const labelsOf = (model: Model, beginning: string) =>
  model.labels.filter((label) => label.startsWith(beginning));

function answersIn(
  model: Model,
  spoken: readonly Spoken[],
  context: Context,
  facts: readonly ScoredFact[],
  lowest = least.answer,
): Scored[] {
  const { turn, answers } = context;
  const scores = spoken.map((each) => answerScores(model, each, context));
  return answers
    .map(({ id }, place): Scored => {
      // What is told of a later turn says its complaint as well: a taste is odd ice.
      const implied = facts.flatMap(({ fact, score }) =>
        model.within[fact.turn] === `${turn}.${id}` ? score - BESIDE : [],
      );
      const own = scores.map((each, part) => (each[place] ?? -1) - (part > 0 ? IN_PART : 0));
      return {
        score: Math.max(...own, ...implied),
        understood: { kind: "answer", turn, answer: id, sure: false },
      };
    })
    .filter(({ score }) => score > lowest)
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_ANSWERS)
    .map((one) => ({ ...one, score: one.score + (isStanding(one.understood) ? 0 : ANSWERING) }));
}

/** How much a sentence speaks for each answer of the turn, in their order. */
function answerScores(model: Model, { words, scores }: Spoken, { turn, answers }: Context): number[] {
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

/** 'Not sure' and 'can't do this' are no likelier at one turn than at another. */
const isStanding = (one: Understood) =>
  one.kind === "answer" && (one.answer === "not-sure" || one.answer === "cannot");

/** The cosine of two sentences. */
function alikeness(a: Features, b: Features): number {
  const weights = new Map(a.ids.map((id, place) => [id, a.weights[place] ?? 0]));
  return b.ids.reduce((sum, id, place) => sum + (weights.get(id) ?? 0) * (b.weights[place] ?? 0), 0);
}

/** Questions known as a whole, and those for a place or a word: known by the way of asking and by the thing. */
function questionsIn(model: Model, scores: Float32Array): Scored[] {
  const whole = labelsOf(model, "question ").map((label) => ({
    score: at(model, scores, label),
    entry: label.slice("question ".length),
  }));
  const asked = labelsOf(model, "ask ").flatMap((ask) =>
    labelsOf(model, "thing ").map((thing) => ({
      score: Math.min(at(model, scores, ask), at(model, scores, thing) + THING),
      entry: `${ask.slice("ask ".length)}-${thing.slice("thing ".length)}`,
    })),
  );
  return [...whole, ...asked.filter(({ entry }) => model.asked.has(entry))]
    .filter(({ score }) => score > least.question)
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_ANSWERS)
    .map(({ score, entry }) => ({ score, understood: { kind: "question", entry } }));
}

/**
 * Answers of other turns, one a turn at most. Of each statement the likeliest, unless the statement is rather what the
 * sentence answers here; besides it only what says more of the same complaint, or is clear. One thing said once is one
 * fact, not one for each turn that could ask for it.
 */
function factsIn(model: Model, spoken: readonly [Spoken, ...Spoken[]], context: Context): ScoredFact[] {
  const names = context.answers.map(({ id }) => `${context.turn}.${id}`);
  const scores = spoken.map((each) => answerScores(model, each, context));
  const likeliest = names[placeOfMost(names.map((_, place) => Math.max(...scores.map((each) => each[place] ?? -1))))];
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
    const isAnswer =
      names[place] === likeliest && (own[place] ?? -1) + ANSWERING > first.score + BESIDE;
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
    if (score > (best.get(fact.turn)?.score ?? least.fact) && isOpen(fact)) best.set(fact.turn, { score, fact });
  }
  return [...best.values()].sort((a, b) => b.score - a.score);
}

const nameOf = ({ turn, answer }: Fact) => `${turn}.${answer}`;

/** Facts as one meaning, which comes after a clear answer of this turn. */
const told = (facts: readonly ScoredFact[], answer = -1): Scored[] =>
  facts[0]
    ? [
        {
          score: Math.min(facts[0].score - BESIDE, answer > ANSWERING ? answer - BESIDE : Infinity),
          understood: { kind: "facts", facts: facts.map(({ fact }) => fact) },
        },
      ]
    : [];

function readingIn(model: Model, text: string, { instrument, region, today }: Context): Scored[] {
  const entries = instrument && readingOf(text, instrument, model.readings, region, today);
  return instrument && entries ? [{ score: 0.5, understood: { kind: "reading", instrument, entries } }] : [];
}

/** Words with a digit and five signs or more are looked up, three at most: codes as plates have them. */
function modelIn(text: string, { findModel }: Context): Scored[] {
  if (!findModel) return [];
  const codes = (text.match(/[\p{L}\d][\p{L}\d/.-]{4,}/gu) ?? [])
    .filter((word) => /\d/.test(word))
    .slice(0, 3);
  return codes.flatMap((code) => {
    const found = findModel(code);
    return found === null ? [] : [{ score: 2, understood: { kind: "model", code: found } }];
  });
}
