import type { Advice, ChartContext } from "../chart/index.ts";
import {
  type Choice,
  chooseNext,
  type Explanation,
  explain,
  type Model,
  type Stakes,
} from "../diagnosis/index.ts";
import type { Flow } from "../guide/index.ts";
import { limitOf } from "../guide/index.ts";
import { learntFrom } from "./learnt-from.ts";
import { modelOf } from "./model-of.ts";
import { type Move, type Rules, rulesOf } from "./moves.ts";
import { stakesOf } from "./stakes-of.ts";

/** Advises a scenario's chart, which decides what is allowed. Asked twice about the same it says the same. */
export type Adviser = {
  advise: (scenario: string, memory: ChartContext) => Advice;
  /** Why a check is worth asking, by what was known before it; null where no belief stands behind it. */
  explain: (scenario: string, memory: ChartContext, check: string) => Explanation | null;
};

/** The trade's order: the first check that is allowed, until a cause is proved. */
export function createListAdviser(flow: Flow): Adviser {
  const rules = new Map(Object.keys(flow.scenarios).map((id) => [id, rulesOf(flow, id)]));
  return {
    advise(scenario, memory) {
      const { moves, proved } = rules.get(scenario) as Rules;
      const [ending] = proved(memory);
      if (ending) {
        const isPart = flow.causes[ending.cause]?.remedy === "part";
        return { check: null, part: isPart ? ending.cause : null };
      }
      const next = moves(memory).find(({ again }) => !again);
      return { check: next?.check ?? null, part: null };
    },
    explain: () => null,
  };
}

/** A scenario after one opening. */
type Stage = { id: string; rules: Rules; model: Model; stakes: Stakes };

/** Advice kept for replays, which come back to the same places; at this many the oldest are not worth the memory. */
const most = 50_000;

/** Advice by the diagnosis: the least expected cost to the right ending. */
export function createAdviser(flow: Flow): Adviser {
  const stages = new Map<string, Stage>();
  const mostTurns = limitOf(flow.limits, "most-answers");
  const byPlace = new Map<string, Advice>();
  const byMemory = new WeakMap<ChartContext, Advice>();

  const stageOf = (scenario: string, { findings }: ChartContext): Stage => {
    const answers = Object.keys(flow.opening.turns).flatMap((turn) => {
      const finding = findings[`opening.${turn}`];
      return finding ? [[`opening.${turn}`, finding.answer]] : [];
    });
    const id = JSON.stringify([scenario, answers]);
    const stage = stages.get(id) ?? {
      id,
      rules: rulesOf(flow, scenario),
      model: modelOf(flow, scenario, Object.fromEntries(answers)),
      stakes: stakesOf(flow, scenario),
    };
    stages.set(id, stage);
    return stage;
  };

  const advise = (scenario: string, memory: ChartContext): Advice => {
    const { id, rules, model, stakes } = stageOf(scenario, memory);
    // Nobody answers for ever: what is known by then goes to a professional, written down.
    const moves = memory.turns < mostTurns ? rules.moves(memory) : [];
    const proved = rules.proved(memory);
    const { belief, fixed } = learntFrom(flow, model, memory, stakes.success);
    const place = JSON.stringify([id, memory.done, belief, fixed, moves, proved]);
    const before = byPlace.get(place);
    if (before) return before;
    const endings = proved.map((one) => ({ ...one, rival: rivalOf(one.cause) }));
    const rivals = (due: boolean) =>
      endings.flatMap(({ rival, due: isDue }) => (rival !== null && isDue === due ? [rival] : []));
    const state = { done: memory.done, proven: rivals(false), due: rivals(true), fixed };
    const choose = (some: Move[]): Choice => {
      const allowed = some.flatMap(({ check, waits }) => (waits ? [] : [check]));
      const mayWait = some.some(({ waits }) => waits);
      return chooseNext(model, belief, allowed, { ...state, mayWait }, stakes);
    };
    const advice = adviceBy(moves, choose, (choice) => {
      const same = endings.find(({ rival, due }) => rival === choice.cause && due === choice.due);
      return same?.cause ?? null;
    });
    if (byPlace.size >= most) byPlace.clear();
    byPlace.set(place, advice);
    return advice;

    /** The cause of the model that an ending stands for: itself, or one that the same part puts right. */
    function rivalOf(cause: string): string | null {
      if (model.causeAt.has(cause)) return cause;
      const part = flow.causes[cause]?.part;
      return model.causes.find((one) => part !== undefined && one.part === part)?.id ?? null;
    }
  };

  return {
    advise(scenario, memory) {
      const advice = byMemory.get(memory) ?? advise(scenario, memory);
      byMemory.set(memory, advice);
      return advice;
    },
    explain(scenario, memory, check) {
      const { model, stakes } = stageOf(scenario, memory);
      if (!model.checkAt.has(check)) return null;
      return explain(model, learntFrom(flow, model, memory, stakes.success).belief, check);
    },
  };
}

type PartChoice = Extract<Choice, { stop: "part" }>;

/**
 * What is to be done first is done first. Then whatever is not behind the back panel; what is, only where nothing else
 * is worth doing; and before a professional is called, second looks.
 */
function adviceBy(
  moves: Move[],
  choose: (some: Move[]) => Choice,
  causeOf: (choice: PartChoice) => string | null,
): Advice {
  const first = moves.find((move) => move.first);
  if (first) return { check: first.check, part: null };
  const once = moves.filter(({ again }) => !again);
  const open = once.filter(({ hidden }) => !hidden);
  for (const some of [open, once, moves].filter((each, at, all) => each.length !== all[at - 1]?.length)) {
    const choice = choose(some);
    if ("next" in choice) return { check: choice.next, part: null };
    if ("wait" in choice) return { check: some.find(({ waits }) => waits)?.check ?? null, part: null };
    if (choice.stop === "part") return { check: null, part: causeOf(choice) };
  }
  return { check: null, part: null };
}
