import type { Diagnosis, MoveRule, Openings } from "../advice/index.ts";
import { tablesOf } from "../diagnosis/index.ts";
import { type Flow, limitOf } from "../guide/index.ts";
import { entryGuards } from "./entry-guards.ts";
import { amongAfter, checksOf, createInput } from "./model-of.ts";
import type { OpeningWay } from "./openings.ts";
import { stakesOf } from "./stakes-of.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

/**
 * What a scenario is advised by, worked out as far as it can be before anybody has answered.
 * @param ways the ways through the opening
 * @throws Error for a check or a limit that does not exist
 */
export function diagnosisOf(flow: Flow, scenario: string, ways: OpeningWay[]): Diagnosis {
  const checks = checksOf(flow, scenario, null);
  const input = createInput(flow, scenario, checks);
  const tables = tablesOf(input);
  const findings = checks.map((id) => {
    const outcomes = Object.entries(flow.checks[id]?.outcomes ?? {});
    return [id, Object.fromEntries(outcomes.map(([name, { from }]) => [name, from]))];
  });
  const rule = flow.scenarios[scenario];
  return {
    tables,
    openings: openingsOf(flow, scenario, ways, {
      causes: input.causes.map(({ id }) => id),
      checks,
    }),
    findings: Object.fromEntries(findings),
    stakes: stakesOf(flow, scenario),
    mostTurns: limitOf(flow.limits, "most-answers"),
    leastLook: limitOf(flow.limits, "least-look"),
    earlyLook: limitOf(flow.limits, "early-look"),
    mostSecond: limitOf(flow.limits, "most-second-looks"),
    cures: Object.fromEntries(
      Object.entries(flow.causes).flatMap(([cause, { cures }]) => (cures ? [[cause, cures]] : [])),
    ),
    leastHope: limitOf(flow.limits, "least-hope"),
    naming: {
      most: limitOf(flow.limits, "named-most"),
      least: limitOf(flow.limits, "named-least"),
      trade: limitOf(flow.limits, "named-trade"),
    },
    meaning: {
      least: limitOf(flow.limits, "meaning-least"),
      most: limitOf(flow.limits, "meaning-most"),
      together: limitOf(flow.limits, "meaning-together"),
      had: limitOf(flow.limits, "meaning-had"),
      lost: limitOf(flow.limits, "meaning-lost"),
      checks: limitOf(flow.limits, "checks-a-square-bit"),
    },
    moves: (rule?.checks ?? []).map(({ check, first, before }, place): MoveRule => {
      const { once, again } = entryGuards(flow, scenario, place);
      return {
        check,
        ...(first ? { first } : {}),
        ...(before ? { before } : {}),
        ...(isWaitForIce(flow.checks[check]) ? { waits: refusalsOf(flow, check) } : {}),
        ...(flow.checks[check]?.gates?.length ? { gates: flow.checks[check].gates } : {}),
        ...(isFree(flow, check) ? { free: true } : {}),
        ...(flow.checks[check]?.access === "back-panel" ? { hidden: true } : {}),
        once,
        ...(again ? { again } : {}),
      };
    }),
    proofs: (rule?.proofs ?? []).filter((cause) => flow.causes[cause]?.proof),
  };
}

/** True for what a person sees at once: nobody fetches a jug before looking at a switch. */
function isFree({ checks, limits }: Flow, id: string): boolean {
  const { minutes = 0, tools = [], gates = [], turns = {} } = checks[id] ?? {};
  const waits = Object.values(turns).some(({ kind }) => kind === "wait");
  return !tools.length && !gates.length && !waits && minutes <= limitOf(limits, "free-look-minutes");
}

/** The answers at a wait that go on without it, as turn and answer. */
function refusalsOf({ checks }: Flow, id: string): string[] {
  const waits = Object.entries(checks[id]?.turns ?? {}).filter(([, { kind }]) => kind === "wait");
  return waits.flatMap(([turn, { answers = {}, cannot }]) => [
    ...Object.entries(answers).flatMap(([answer, { to }]) =>
      to === "fixed" ? [] : [`${id}.${turn}.${answer}`],
    ),
    ...(cannot === false ? [] : [`${id}.${turn}.cannot`]),
  ]);
}

type Names = { causes: string[]; checks: string[] };

/** Which causes and checks each opening leaves, told apart by as few of its turns as will do. */
function openingsOf(flow: Flow, scenario: string, ways: OpeningWay[], all: Names): Openings {
  const after = ways
    .filter(({ to }) => to === scenario)
    .map(({ memory }) => {
      const answers = Object.fromEntries(
        Object.entries(memory.findings).map(([turn, { answer }]) => [turn, answer]),
      );
      const { causes, weights, checks } = amongAfter(flow, scenario, answers);
      const placesIn = (names: string[], among: string[]) => among.map((name) => names.indexOf(name));
      const model = { causes: placesIn(all.causes, causes), weights, checks: placesIn(all.checks, checks) };
      return { answers, model: JSON.stringify(model) };
    });
  const keyOf = (answers: Record<string, string>, turns: string[]) =>
    turns.map((turn) => answers[turn] ?? "").join(" ");
  const decides = (turns: string[]) => {
    const seen = new Map<string, string>();
    return after.every(({ answers, model }) => {
      const key = keyOf(answers, turns);
      const same = (seen.get(key) ?? model) === model;
      seen.set(key, model);
      return same;
    });
  };
  let turns = [...new Set(after.flatMap(({ answers }) => Object.keys(answers)))];
  for (const turn of turns) {
    const fewer = turns.filter((one) => one !== turn);
    if (decides(fewer)) turns = fewer;
  }
  const models = [...new Set(after.map(({ model }) => model))];
  const entries = after.map(({ answers, model }) => [keyOf(answers, turns), models.indexOf(model)]);
  return {
    turns,
    entries: turns.length ? Object.fromEntries(entries) : {},
    models: models.map((model) => JSON.parse(model)),
  };
}
