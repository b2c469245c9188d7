import type { ChartContext } from "../chart/index.ts";
import { holds, needsWater, reopenerOf, waterCanCome } from "../chart/index.ts";
import { all, type Guard, guardOf, not } from "../condition/index.ts";
import type { Flow } from "../guide/index.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

/** Something a scenario allows now. */
export type Move = {
  check: string;
  /** Comes before everything else, such as turning the water off at a leak. */
  first: boolean;
  /** The wait that a remedy calls for. */
  waits: boolean;
  /** Behind the back panel: only when all else is spoken for. */
  hidden: boolean;
  /** A second look at a check that was done. */
  again: boolean;
};

/** An ending with a cause whose proof is recorded. */
export type Proved = { cause: string; due: boolean };

/** What a scenario allows and what is proved in it, by what its chart remembers. */
export type Rules = {
  moves: (memory: ChartContext) => Move[];
  proved: (memory: ChartContext) => Proved[];
};

/**
 * The guards by which a check may be entered: once where it does not repeat, and where its condition holds. A second
 * look at it, where it can have one, has the same condition. The chart and its adviser both take them from here.
 */
export function entryGuards(
  flow: Flow,
  scenario: string,
  place: number,
): { once: Guard; again: Guard | null } {
  const rule = flow.scenarios[scenario];
  const entry = rule?.checks[place];
  const check = flow.checks[entry?.check ?? ""];
  if (!rule || !entry || !check)
    throw new Error(`Scenario "${scenario}" names the check "${entry?.check}", which does not exist`);
  const open = needsWater(check) && reopenerOf(flow, rule) ? [waterCanCome(flow)] : [];
  const when = [...open, ...(entry.when ? [guardOf(entry.when, flow.conditions)] : [])];
  const params = { check: check.id };
  const undone = check.repeats ? [] : [not({ type: "done", params })];
  // Nobody passes a gate twice for the same look, and a wait is no look.
  const repeatable = !check.repeats && !check.gates?.length && !isWaitForIce(check) && !entry.first;
  return {
    once: all(...undone, ...when),
    again: repeatable ? all({ type: "may-look-again", params }, ...when) : null,
  };
}

/** Prepares the rules of one scenario. */
export function rulesOf(flow: Flow, scenario: string): Rules {
  const rule = flow.scenarios[scenario];
  if (!rule) throw new Error(`There is no scenario "${scenario}"`);
  const entries = rule.checks.map(({ check, first = false }, place) => ({
    ...entryGuards(flow, scenario, place),
    move: {
      check,
      first,
      waits: isWaitForIce(flow.checks[check]),
      hidden: flow.checks[check]?.access === "back-panel",
      again: false,
    },
  }));
  const proofs = rule.proofs.flatMap((cause) => {
    const { proof, claim } = flow.causes[cause] ?? {};
    return proof ? [{ cause, due: claim === "due", proof: guardOf(proof, flow.conditions) }] : [];
  });
  const now = { type: "", at: "" };
  return {
    moves: (memory) =>
      entries.flatMap(({ move, once, again }) => {
        if (holds(memory, once, now)) return [move];
        return again && holds(memory, again, now) ? [{ ...move, again: true }] : [];
      }),
    proved: (memory) => proofs.filter(({ proof }) => holds(memory, proof, now)),
  };
}
