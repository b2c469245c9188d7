import { clausesOf, namesRuled, ruledDanger, statementsOf } from "./danger-rules.ts";
import type { Features } from "./features.ts";
import { featuresFor, type Model, scoresOf } from "./model.ts";
import { readingOf } from "./readings/index.ts";
import type { Context, Fact, Understood } from "./understood.ts";
import { longestSentence, wordsOf } from "./words.ts";

/** What a score has to reach, found on the phrases by leaving some out; a score of 1 is a clear case. */
const least = {
  danger: 0.05,
  /** As far as a danger has to be likelier than its look-alikes. */
  beyondHarmless: 0.3,
  /** Likewise than an answer. */
  beyondAnswer: -0.1,
  /** The words of a danger, but with a 'no' before them. */
  deniedDanger: 0.9,
  answer: -0.7,
  fact: -0.4,
  question: -0.45,
  /** Of a question that a rule hears. */
  ruled: -0.5,
};
/** How much likelier it is that somebody answers what was asked than that they speak of anything else. */
const ANSWERING = 0.55;
/** What is told besides comes after what was asked, where both may be meant. */
const BESIDE = 0.25;
/** How much likelier a sentence that begins like a question is one. */
const ASKING = 0.4;
/** What a rule that hears a question adds. */
const RULED = 0.6;
/** A thing that is named is less than one that is asked for. */
const THING = 0.2;
/** As many of a kind as are offered side by side. */
const MOST_ANSWERS = 3;

const dangerTurn = "opening.danger";

type Scored = { score: number; understood: Understood };

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
  const scored = [words, ...(statements.length > 1 ? statements.map((each) => alike(each, model)) : [])].map(
    (each) => scoresOf(model, featuresFor(model, each)),
  );
  const [whole = new Float32Array()] = scored;
  const isAsking = model.asking.has(words[0] ?? "") || text.trimEnd().endsWith("?");
  const rest: Scored[] = [
    ...answersIn(model, whole, words, context),
    ...questionsIn(model, whole, wordsOf(text)).map((one) => ({
      ...one,
      score: one.score + (isAsking ? ASKING : 0),
    })),
    ...factsIn(model, scored.length > 1 ? scored.slice(1) : scored, context),
    ...readingIn(model, text, context),
    ...modelIn(text, context),
  ].sort((a, b) => b.score - a.score);
  const other = Math.max(at(model, whole, "other unrelated"), at(model, whole, "other harmless"));
  const found = rest.filter(({ score }) => score > other).map(({ understood }) => understood);
  const [first, ...others] = [...dangerIn(model, text, scored, context.turn), ...found];
  return first
    ? [first, ...others]
    : [
        { kind: "nothing" },
        ...answersIn(model, whole, words, context, -1).map(({ understood }) => understood),
      ];
}

const folded = (text: string) => wordsOf(text).join(" ");
const alike = (words: readonly string[], model: Model) => wordsOf(words.join(" "), model.same);
const at = (model: Model, scores: Float32Array, label: string) => scores[model.places[label] ?? -1] ?? -1;

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
  const [likeliest = { label: "danger general", score: -1 }] = scored
    .flatMap((scores) =>
      kinds.map((label) => ({
        label,
        score: (at(model, scores, label) + at(model, scores, "danger any")) / 2,
      })),
    )
    .sort((a, b) => b.score - a.score);
  const isDenied = !said && ruled.length > 0;
  const [whole = new Float32Array()] = scored;
  const harmless = at(model, whole, "other harmless");
  const answered = Math.max(...answersNow(model, turn).map((label) => at(model, whole, label)), -1);
  const isHeard =
    likeliest.score >= (isDenied ? least.deniedDanger : least.danger) &&
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
    return (of === turn || model.facts.has(of)) && !/^opening\.(?:danger|hiss|leak|wet)/.test(of);
  });

const labelsOf = (model: Model, beginning: string) =>
  model.labels.filter((label) => label.startsWith(beginning));

function answersIn(
  model: Model,
  scores: Float32Array,
  words: string[],
  { turn, answers }: Context,
  lowest = least.answer,
): Scored[] {
  const typed = featuresFor(model, words);
  return answers
    .map(({ id, text }): Scored => {
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
      return {
        score: Math.max(own, ...shared, wording),
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

/** The cosine of two sentences. */
function alikeness(a: Features, b: Features): number {
  const weights = new Map(a.ids.map((id, place) => [id, a.weights[place] ?? 0]));
  return b.ids.reduce((sum, id, place) => sum + (weights.get(id) ?? 0) * (b.weights[place] ?? 0), 0);
}

/** Questions known as a whole, and those for a place or a word: known by the way of asking and by the thing. */
function questionsIn(model: Model, scores: Float32Array, said: readonly string[]): Scored[] {
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
      score: ruled.has(entry) ? Math.max(score, least.ruled) + RULED : score,
    }))
    .filter(({ score }) => score > least.question)
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_ANSWERS)
    .map(({ score, entry }) => ({ score, understood: { kind: "question", entry } }));
}

/** The likeliest answer of each other turn, out of each statement. */
function factsIn(model: Model, scored: Float32Array[], { turn, isOpen = () => true }: Context): Scored[] {
  const best = new Map<string, { score: number; fact: Fact }>();
  for (const label of labelsOf(model, "answer ")) {
    const name = label.slice("answer ".length);
    const cut = name.lastIndexOf(".");
    const fact = { turn: name.slice(0, cut), answer: name.slice(cut + 1) };
    if (fact.turn === turn || !model.facts.has(fact.turn)) continue;
    const score = Math.max(...scored.map((scores) => at(model, scores, label)));
    if (score > (best.get(fact.turn)?.score ?? least.fact) && isOpen(fact))
      best.set(fact.turn, { score, fact });
  }
  const found = [...best.values()].sort((a, b) => b.score - a.score);
  if (!found[0]) return [];
  return [
    { score: found[0].score - BESIDE, understood: { kind: "facts", facts: found.map(({ fact }) => fact) } },
  ];
}

function readingIn(model: Model, text: string, { instrument, region, today }: Context): Scored[] {
  const entries = instrument && region && readingOf(text, instrument, model.readings, region, today);
  return instrument && entries ? [{ score: 0.5, understood: { kind: "reading", instrument, entries } }] : [];
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
    return found === null ? [] : [{ score: 2, understood: { kind: "model", code: found } }];
  });
}
