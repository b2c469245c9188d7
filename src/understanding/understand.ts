import { clausesOf, namesRuled, ruledDanger, statementsOf } from "./danger-rules.ts";
import { factsIn, type ScoredFact } from "./facts.ts";
import { featuresFor, type Model, scoresOf } from "./model.ts";
import { readingOf } from "./readings/index.ts";
import { ANSWERING, answerScores, at, BESIDE, labelsOf, type Spoken } from "./spoken.ts";
import type { Context, Understood } from "./understood.ts";
import { longestSentence, wordsOf } from "./words.ts";

/** What a score has to reach, found on sentences read while tuning; a score of 1 is a clear case. */
const least = {
  danger: 0.05,
  /** Of a danger that is no more likely than that: it is one at all. */
  anyDanger: 0,
  clearDanger: 0.3,
  /** As far as a danger has to be likelier than its look-alikes. */
  beyondHarmless: 0.3,
  /** Likewise than an answer. */
  beyondAnswer: -0.1,
  /** The words of a danger, but with a 'no' before them. */
  deniedDanger: 0.8,
  answer: -0.7,
  question: -0.1,
  /** Of anything, in a sentence that is as likely to have nothing to do with the subject as not. */
  beyondUnrelated: 0.8,
  /** Of a question that a rule hears. */
  ruled: -0.35,
};
/** What only a part of a sentence says counts less than what the whole of it says. */
const IN_PART = 0.2;
/** How much likelier a sentence that begins like a question is one. */
const ASKING = 0.4;
/** What a rule that hears a question adds. */
const RULED = 0.6;
/** A thing that is named is less than one that is asked for. */
const THING = 0.2;
/** How much it counts that a sentence has nothing to do with the subject, beside how clear a meaning has to be. */
const UNRELATED = 0.35;
/** As many of a kind as are offered side by side. */
const MOST_ANSWERS = 3;

/** `plain`: it speaks for itself, as a measurement, a code and the words of a rule do. */
type Scored = { score: number; understood: Understood; plain?: boolean };

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
  const [first = "", second = ""] = words;
  const isAsking =
    model.asking.has(first) || model.asking.has(`${first}-${second}`) || text.trimEnd().endsWith("?");
  const rest: Scored[] = [
    ...answers,
    ...questionsIn(model, whole.scores, wordsOf(text), isAsking),
    ...told(facts, answers[0]?.score),
    ...readingIn(model, text, context),
    ...modelIn(text, context),
  ].sort((a, b) => b.score - a.score);
  const found = isAbout(model, whole, rest) ? rest.map(({ understood }) => understood) : [];
  const heard = [whole, ...parts].map(({ scores }) => scores);
  const [likeliest, ...others] = [...dangerIn(model, text, heard, context.turn), ...found];
  return likeliest
    ? [likeliest, ...others]
    : [
        { kind: "nothing" },
        ...answersIn(model, [whole], context, [], -1).map(({ understood }) => understood),
      ];
}

/**
 * Whether a sentence has to do with the subject: something it may mean is clear enough. What is told or asked besides
 * counts like what was asked.
 */
function isAbout(model: Model, { scores }: Spoken, rest: readonly Scored[]): boolean {
  const unrelated = at(model, scores, "other unrelated");
  const harmless = at(model, scores, "other harmless");
  const clear = Math.max(unrelated * UNRELATED + least.beyondUnrelated, harmless);
  return rest.some(({ score, understood: { kind }, plain }) =>
    plain ? score > Math.max(unrelated, harmless) : score + (kind === "answer" ? 0 : BESIDE) > clear,
  );
}

const folded = (text: string) => wordsOf(text).join(" ");
const alike = (words: readonly string[], model: Model) => wordsOf(words.join(" "), model.same);

function dangerIn(model: Model, text: string, scored: Float32Array[], turn: string): Understood[] {
  const isNegator = (word: string) =>
    (model.same[word] ?? word).split(" ").some((each) => model.negators.has(each));
  const isJoint = (word: string) => model.joints.has(word);
  const ruled = clausesOf(text).flatMap(
    (words) => ruledDanger(words, model.rules, { isNegator, isJoint }) ?? [],
  );
  const said = ruled.find(({ denied }) => !denied);
  // Whether it is a danger at all, and which, are weighed apart and count alike.
  const kinds = labelsOf(model, "danger ").filter((label) => !/ (?:any|hiss)$/.test(label));
  const [likeliest = { label: "danger general", any: -1, score: -1 }] = scored
    .flatMap((scores) => {
      const any = at(model, scores, "danger any");
      return kinds.map((label) => ({ label, any, score: (at(model, scores, label) + any) / 2 }));
    })
    .sort((a, b) => b.score - a.score);
  const isDenied = !said && ruled.length > 0;
  const [whole = new Float32Array()] = scored;
  const harmless = at(model, whole, "other harmless");
  const answered = Math.max(...answersNow(model, turn).map((label) => at(model, whole, label)), -1);
  const isHeard =
    likeliest.score >= (isDenied ? least.deniedDanger : least.danger) &&
    (likeliest.any >= least.anyDanger || likeliest.score >= least.clearDanger) &&
    likeliest.score > harmless + least.beyondHarmless &&
    likeliest.score > answered + least.beyondAnswer;
  if (!said && !isHeard) return [];
  const kind = likeliest.label.slice("danger ".length);
  return [{ kind: "danger", danger: said?.danger ?? kind, sure: said !== undefined && isHeard }];
}

/** Answers of this turn and what may be told at any time, but for those that speak of a danger. */
const answersNow = (model: Model, turn: string) =>
  labelsOf(model, "answer ").filter((label) => {
    const of = label.slice("answer ".length, label.lastIndexOf("."));
    return (of === turn || model.facts.has(of)) && !model.risky.has(of);
  });

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

/** 'Not sure' and 'can't do this' are no likelier at one turn than at another. */
const isStanding = (one: Understood) =>
  one.kind === "answer" && (one.answer === "not-sure" || one.answer === "cannot");

/** Questions known as a whole, and those for a place or a word: known by the way of asking and by the thing. */
function questionsIn(
  model: Model,
  scores: Float32Array,
  said: readonly string[],
  isAsking: boolean,
): Scored[] {
  const ruled = new Set(namesRuled(said, model.asks));
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
    .map(({ score, entry }) => ({
      entry,
      score: (ruled.has(entry) ? Math.max(score, least.ruled) + RULED : score) + (isAsking ? ASKING : 0),
    }))
    .filter(({ score }) => score > least.question)
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_ANSWERS)
    .map(({ score, entry }) => ({
      score,
      understood: { kind: "question", entry },
      plain: ruled.has(entry),
    }));
}

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
  const entries = instrument && region && readingOf(text, instrument, model.readings, region, today);
  return instrument && entries
    ? [{ score: 0.5, understood: { kind: "reading", instrument, entries }, plain: true }]
    : [];
}

/** What may be a code as plates have them: words with a digit, alone or after a short one; four at most. */
export function codesIn(text: string): string[] {
  const words = text.match(/[\p{L}\d][\p{L}\d/.-]*/gu) ?? [];
  const found = words.flatMap((word, at) => {
    if (!/\d/.test(word)) return [];
    const before = words[at - 1] ?? "";
    return [...(before && before.length < 5 ? [`${before} ${word}`] : []), word];
  });
  return found.filter((code) => code.length >= 5).slice(0, 4);
}

function modelIn(text: string, { findModel }: Context): Scored[] {
  if (!findModel) return [];
  return codesIn(text).flatMap((code) => {
    const found = findModel(code);
    return found === null ? [] : [{ score: 2, understood: { kind: "model", code: found }, plain: true }];
  });
}
