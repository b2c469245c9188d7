import type { Transition } from "../chart/index.ts";
import { all, any, type Guard, not } from "../condition/index.ts";
import type { Check, Flow, Scenario } from "../guide/index.ts";

/** The ways that lead to an ending as fixed, in the order they are tried, in place of the one given. */
export type FixedWays = (way: Transition) => Transition[];

export const straightToFixed: FixedWays = (way) => [way];

/** What the chart asks before it says that all is well, as the data has it (`confirms`). */
export function waysToFixed(flow: Flow, scenario: Scenario): FixedWays {
  const check = confirmerOf(flow, scenario);
  if (!check) return straightToFixed;
  return (way) => [
    { ...joined(way, doubtful(check)), target: `#${scenario.id}/${check.id}` },
    joined(way, not(doubtful(check))),
  ];
}

/** A way to an ending as fixed that is open only where nothing has to be confirmed first. */
export function withoutDoubt(flow: Flow, way: Transition): Transition {
  const check = Object.values(flow.checks).find(({ confirms }) => confirms);
  return check ? joined(way, not(doubtful(check))) : way;
}

const doubtful = ({ confirms }: Check): Guard => ({
  type: "last-read",
  params: { place: confirms?.place, is: confirms?.unless },
});

const joined = (way: Transition, guard: Guard): Transition => ({
  ...way,
  guard: way.guard ? all(way.guard, guard) : guard,
});

/** The check that confirms an ending as fixed, in a scenario where that can be in doubt; else null. */
export function confirmerOf(flow: Flow, { checks }: Scenario): Check | null {
  const reads = (place: string) =>
    checks.some(({ check }) =>
      Object.values(flow.checks[check]?.turns ?? {}).some(
        (turn) => turn.instrument === "temperature" && (turn.place ?? "freezer") === place,
      ),
    );
  const known = Object.values(flow.checks).find(({ confirms }) => confirms && reads(confirms.place));
  return known ?? null;
}

/** The check has confirmed it. The choice ends the session then, for a tap of ours may have to be opened first. */
export function confirmedBy({ id, turns }: Check): Guard {
  const confirming = Object.entries(turns).map(([turn, { verdicts = {} }]): Guard => {
    const is = Object.entries(verdicts).flatMap(([verdict, { to }]) => (to === "fixed" ? [verdict] : []));
    return { type: "verdict", params: { turn: `${id}.${turn}`, is } };
  });
  return any(...confirming);
}
