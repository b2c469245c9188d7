import { causesOf } from "../../src/compile/index.ts";
import type { Condition } from "../../src/condition/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import { signs } from "../compile/scenario-paths.ts";
import {
  type Answers,
  celsius,
  fittedOn,
  flowOf,
  fridgeCelsius,
  gramsEach,
  iceCelsius,
  kilograms,
  kilopascals,
  litresPerMinute,
  runsOut,
  strips,
} from "./drive.ts";

/** The turn to come to, and where many causes end with the same turn, the cause. */
export type Aim = { turn: string; cause?: string | undefined };

/** Numbers from 0 to 1 that look like chance. */
export type Chance = () => number;

/** Readings far from any limit, by instrument and verdict. */
const readings: Record<string, Record<string, Reading>> = {
  flow: { passes: flowOf(25), fails: flowOf(5) },
  temperature: { passes: celsius(-18), fails: celsius(-5) },
  "filter-age": { passes: fittedOn("2026-02-01"), fails: fittedOn("2024-02-01") },
  supply: { passes: litresPerMinute(15), fails: litresPerMinute(3), "too-strong": kilopascals(1000) },
  ice: { passes: kilograms(1.8), fails: kilograms(0.2), demand: kilograms(1.2, "much") },
  cubes: { passes: gramsEach(18), fails: gramsEach(7) },
  seal: { passes: strips(), fails: strips(1, 5, 8), corner: strips(3), "in-the-way": strips(7) },
};

/** Readings at other places than the freezer. */
const elsewhere: Record<string, Record<string, Reading>> = {
  fridge: { passes: fridgeCelsius(3), fails: fridgeCelsius(12) },
  "ice-maker": { passes: iceCelsius(-18), fails: iceCelsius(-5) },
};

/** Readings that an instrument takes, by verdict. */
export function readingsFor({
  instrument = "",
  place,
}: {
  instrument?: string | undefined;
  place?: string | undefined;
}): Record<string, Reading> {
  return elsewhere[place ?? ""] ?? readings[instrument] ?? {};
}

/** True for a scenario that has the check of this turn, and this cause. */
export function mayLeadTo(flow: Flow, scenario: string, { turn, cause }: Aim): boolean {
  const rule = flow.scenarios[scenario];
  if (!rule) return false;
  const { checks, proofs } = rule;
  const [check = ""] = turn.split(".");
  const gated = checks.some((entry) => flow.checks[entry.check]?.gates?.length);
  const reads = checks.some((entry) => entry.check === "freezer-temperature");
  // What puts back what a gate had changed is in no scenario's list, nor is what confirms an ending.
  const own = flow.checks[check]?.restores ? gated : flow.checks[check]?.confirms && reads;
  const listed = own ?? checks.some((entry) => entry.check === check);
  if (check in flow.checks && !listed) return false;
  return !cause || causesOf(flow, scenario).includes(cause) || proofs.includes(cause);
}

/** A reading that nobody can call, where an instrument has one. */
export function tooClose({
  instrument,
  place,
}: {
  instrument?: string | undefined;
  place?: string | undefined;
}): Reading[] {
  const readings: Record<string, Reading> = {
    flow: flowOf(15),
    temperature:
      place === "fridge" ? fridgeCelsius(5) : place ? ({ ...celsius(-15), place } as Reading) : celsius(-15),
    supply: litresPerMinute(9),
    ice: kilograms(0.999),
    cubes: gramsEach(8),
    seal: { kind: "seal", door: "one", spots: ["slips"] },
  };
  const reading = readings[instrument ?? ""];
  return reading ? [reading] : [];
}

/**
 * Answers that may well lead to what is aimed at, read from the conditions of the flow; where these leave a choice,
 * chance has it.
 */
export function hintsFor(flow: Flow, aim: Aim, chance: Chance): Answers {
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(chance() * list.length)];
  const [check = ""] = aim.turn.split(".");
  const scenario = pick(Object.values(flow.scenarios).filter(({ id }) => mayLeadTo(flow, id, aim)));
  const isSearch = check in flow.checks || aim.cause !== undefined;
  const entry = pick(scenario?.checks.filter((one) => one.check === check) ?? []);
  const { proof } = flow.causes[aim.cause ?? ""] ?? {};
  return {
    ...(isSearch && scenario ? makeTrue(scenario.when) : {}),
    ...(entry?.when ? makeTrue(entry.when) : {}),
    ...signs[aim.cause ?? ""],
    ...(proof ? makeTrue(proof) : {}),
    ...wayInto(flow, aim.turn),
  };

  function makeTrue(condition: Condition, is = true): Answers {
    if (typeof condition === "string") return {};
    if ("is" in condition) return makeTrue(flow.conditions[condition.is] ?? "unwaited", is);
    if ("not" in condition) return makeTrue(condition.not, !is);
    if ("all" in condition || "any" in condition) {
      const parts = "all" in condition ? condition.all : condition.any;
      const every = "all" in condition === is;
      const some = every ? parts : [pick(parts) ?? "unwaited"];
      return Object.assign({}, ...some.map((one) => makeTrue(one, is)));
    }
    if ("verdict" in condition) {
      const { turn, is: verdicts } = condition.verdict;
      const fitting = Object.entries(readingsFor(ruleOf(flow, turn) ?? {})).filter(
        ([one]) => verdicts.includes(one) === is,
      );
      const reading = pick(fitting)?.[1];
      return reading ? { ...wayInto(flow, turn), [turn]: reading } : {};
    }
    // What must not have been answered or found is left to what a sound machine shows.
    if (!is) return {};
    if ("answered" in condition) {
      const { turn } = condition.answered;
      return { ...wayInto(flow, turn), [turn]: pick(condition.answered.is) ?? "cannot" };
    }
    const causes = "found" in condition ? condition.found : "remedied" in condition ? condition.remedied : [];
    return signs[pick(causes) ?? ""] ?? {};
  }
}

function ruleOf(flow: Flow, place: string) {
  const [check = "", turn = ""] = place.split(".");
  return (flow.checks[check] ?? flow.opening).turns[turn];
}

/** The answers that lead from the first turn of its check to this turn, by the fewest of them. */
function wayInto(flow: Flow, target: string): Answers {
  const [id = "", wanted = ""] = target.split(".");
  const rule = flow.checks[id] ?? (id === flow.opening.id ? flow.opening : undefined);
  const ways: [turn: string, answers: Answers][] = rule ? [[rule.start, {}]] : [];
  const met = new Set<string>();
  for (const [turn, before] of ways) {
    if (turn === wanted) return before;
    if (met.has(turn)) continue;
    met.add(turn);
    for (const [answer, to] of answersOf(flow, `${id}.${turn}`))
      if (to in (rule?.turns ?? {})) ways.push([to, { ...before, [`${id}.${turn}`]: answer }]);
  }
  return {};
}

/** All that can be answered at a turn, and where it leads. */
function answersOf(flow: Flow, place: string): [answer: string | Reading, to: string][] {
  const rule = ruleOf(flow, place) ?? {};
  const named = Object.entries(rule.answers ?? {}).map(([id, { to }]): [string, string] => [id, to]);
  const read = Object.entries(rule.verdicts ?? {}).flatMap(([verdict, { to }]): [Reading, string][] => {
    const reading = readingsFor(rule)[verdict];
    return reading ? [[reading, to]] : [];
  });
  const standing = (["not-sure", "cannot"] as const).flatMap((id): [string, string][] => {
    const outcome = rule[id];
    return outcome ? [[id, outcome.to]] : [];
  });
  return [...named, ...read, ...standing, ...(rule.then ? [[runsOut, rule.then] as [string, string]] : [])];
}
