import { type Advice, type Call, type ChartContext, changedIn } from "../chart/index.ts";
import {
  type Belief,
  type Choice,
  choosing,
  type Explanation,
  explain,
  finish,
  type Model,
  mostTelling,
  probabilities,
  type Steps,
} from "../diagnosis/index.ts";
import { callOf } from "./call-of.ts";
import { learntFrom } from "./learnt-from.ts";
import { modelAfter } from "./model-after.ts";
import { type Move, movesAt, provedAt } from "./moves.ts";
import type { Diagnosis, Meaning, Subject } from "./subject.ts";

/** Advises in a scenario, whose chart decides what is allowed. Pure: asked twice about the same it says the same. */
export type Adviser = {
  advise: (memory: ChartContext) => Advice;
  /** The same in steps. */
  advising: (memory: ChartContext) => Steps<Advice>;
  /** What to tell a professional who is called now. */
  call: (memory: ChartContext) => Call;
  /** When something is said of what is believed. */
  meaning: Meaning;
  /** How likely each cause is; none where no belief stands behind the advice. */
  chances: (memory: ChartContext) => { cause: string; chance: number }[];
  /** Why a check is worth asking, by what was known before it; null where no belief stands behind it. */
  explain: (memory: ChartContext, check: string) => Explanation | null;
};

/** Makes the adviser of a scenario, for a session whose opening is in the memory given. */
export type Advisers = (subject: Subject, opening: ChartContext) => Adviser;

const nothing: Call = { likely: [], who: null };

/** The trade's order: the first check that is allowed, until a cause is proved. */
export const createListAdviser: Advisers = (subject) => {
  function* advising(memory: ChartContext): Steps<Advice> {
    const [ending] = provedAt(subject, memory);
    if (ending) return { check: null, part: subject.flow.causes[ending.cause]?.part ? ending.cause : null };
    const next = movesAt(subject, memory).find(({ isAgain }) => !isAgain);
    return { check: next?.check ?? null, part: null };
  }
  return {
    advising,
    advise: (memory) => finish(advising(memory)),
    call: () => nothing,
    meaning: subject.diagnosis.meaning,
    chances: () => [],
    explain: () => null,
  };
};

/** Advice by the diagnosis: the least expected cost to the right ending. */
export const createAdviser: Advisers = (subject, opening) => {
  const { diagnosis, flow } = subject;
  const { stakes, mostTurns } = diagnosis;
  const model = modelAfter(diagnosis, opening);
  return {
    advise(memory) {
      return finish(this.advising(memory));
    },
    *advising(memory) {
      // Nobody answers for ever: from then on only what was put right is waited for.
      const isOver = memory.turns >= mostTurns;
      const { belief, fixed } = learntFrom(diagnosis, model, memory);
      const mayLookAgain = memory.again.length < diagnosis.mostSecond;
      const allowed = movesAt(subject, memory).filter(({ waits }) => waits || !isOver);
      // Who was not sure at first is asked once more; who answered only where second looks are left.
      const moves = allowed.filter(({ isAgain, check }) => !isAgain || !belief.shown[check] || mayLookAgain);
      const endings = provedAt(subject, memory).map((one) => ({
        ...one,
        rival: rivalOf(model, one.cause, flow.causes[one.cause]?.part),
      }));
      const rivals = (due: boolean) =>
        endings.flatMap(({ rival, due: isDue }) => (rival !== null && isDue === due ? [rival] : []));
      // What lies behind a gate that can't be confirmed is as good as done.
      const shut = diagnosis.moves.flatMap(({ check, gates = [] }) =>
        gates.some((gate) => memory.refused.includes(gate)) ? [check] : [],
      );
      const done = [...memory.done, ...shut];
      const held = changedIn(memory);
      const state = { done, proven: rivals(false), due: rivals(true), fixed, held };
      const hope = hopeIn(model, belief, fixed);
      const mayPause = hope >= diagnosis.leastHope && (isOver || refusesToWait(diagnosis, memory));
      yield;
      const choose = (some: Move[]): Steps<Choice> => {
        const allowed = some.flatMap(({ check, waits }) => (waits ? [] : [check]));
        const mayWait = mayPause || some.some(({ waits }) => waits);
        return choosing(model, belief, allowed, { ...state, mayWait }, stakes);
      };
      const advice = yield* adviceBy(moves, choose, (choice) => {
        const same = endings.find(({ rival, due }) => rival === choice.cause && due === choice.due);
        return same?.cause ?? null;
      });
      const chosen = moves.find(({ check }) => check === advice.check);
      if (advice.part || chosen?.free || (chosen?.first && !chosen.isAgain) || chosen?.waits) return advice;
      // Before a tool is fetched, and before somebody is called, what costs no more than a look.
      const looks = moves.filter(({ free, isAgain }) => free && !isAgain);
      const least = advice.check ? diagnosis.earlyLook : diagnosis.leastLook;
      const telling = mostTelling(
        model,
        belief,
        looks.map(({ check }) => check),
        least,
      );
      const owed = looks.find(({ before }) => before === "tools" || (before === "call" && !advice.check));
      const check = telling ?? owed?.check ?? advice.check;
      if (check) return { check, part: null };
      return advice.later ? advice : { ...advice, call: this.call(memory) };
    },
    call(memory) {
      const { belief, fixed } = learntFrom(diagnosis, model, memory);
      return callOf(model, belief, flow.causes, fixed, diagnosis.naming);
    },
    meaning: diagnosis.meaning,
    chances(memory) {
      const chances = probabilities(model, learntFrom(diagnosis, model, memory).belief);
      return model.causes.map(({ id }, place) => ({ cause: id, chance: chances[place] as number }));
    },
    explain(memory, check) {
      if (!model.checkAt.has(check)) return null;
      return explain(model, learntFrom(diagnosis, model, memory).belief, check);
    },
  };
};

/** The cause of the model that an ending stands for: itself, or one that the same part puts right. */
function rivalOf(model: Model, cause: string, part: string | undefined): string | null {
  if (model.causeAt.has(cause)) return cause;
  return model.causes.find((one) => part !== undefined && one.part === part)?.id ?? null;
}

type PartChoice = Extract<Choice, { stop: "part" }>;

/**
 * What is to be done first is done first. Then whatever is not behind the back panel; what is, only where nothing else
 * is worth doing.
 */
function* adviceBy(
  moves: Move[],
  choose: (some: Move[]) => Steps<Choice>,
  causeOf: (choice: PartChoice) => string | null,
): Steps<Advice> {
  const first = moves.find((move) => move.first && !move.isAgain);
  if (first) return { check: first.check, part: null };
  const once = moves.filter(({ isAgain }) => !isAgain);
  const open = once.filter(({ hidden }) => !hidden);
  for (const some of [open, once, moves].filter(
    (each, at, all) => !at || each.length !== all[at - 1]?.length,
  )) {
    const choice = yield* choose(some);
    if ("next" in choice) return { check: choice.next, part: null };
    if ("wait" in choice) {
      const wait = some.find(({ waits }) => waits);
      return { check: wait?.check ?? null, part: null, ...(wait ? {} : { later: true }) };
    }
    if (choice.stop === "part") return { check: null, part: causeOf(choice) };
  }
  return { check: null, part: null };
}

/** How likely it is that one of the causes put right was the one. */
function hopeIn(model: Model, belief: Belief, fixed: readonly string[]): number {
  const chances = probabilities(model, belief);
  return fixed.reduce((sum, cause) => sum + (chances[model.causeAt.get(cause) ?? -1] ?? 0), 0);
}

/** True for who was asked to wait, and can't or won't. */
function refusesToWait({ moves }: Diagnosis, { findings }: ChartContext): boolean {
  const refusals = new Set(moves.flatMap(({ waits = [] }) => waits));
  return Object.entries(findings).some(([turn, { answer }]) => refusals.has(`${turn}.${answer}`));
}
