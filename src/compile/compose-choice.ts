import type { Note, Transition } from "../chart/index.ts";
import { all, type Guard, guardOf } from "../condition/index.ts";
import type { Flow, Scenario } from "../guide/index.ts";
import { waitNote } from "./compose-check.ts";
import { entryGuards } from "./entry-guards.ts";
import { waitOf } from "./wait-for-ice.ts";
import { closedByUs, mayGoOn, mustReopen, needsWater, reopenerOf } from "./water.ts";

/**
 * What may follow a check, in the order it is tried: what must come first; an ending that leaves nothing to weigh; a
 * part that is proved and advised; the check that is allowed and advised; else a professional, with the cause where
 * one is proved. Advice chooses among what is allowed, it never allows.
 */
export function composeChoice(flow: Flow, scenario: Scenario): Transition[] {
  const advised = (type: string, params: Record<string, string>): Guard => ({ type, params });
  const ending = (cause: string, ...more: Guard[]): Transition => {
    const rule = flow.causes[cause];
    if (!rule?.proof) throw new Error(`Scenario "${scenario.id}" ends with "${cause}", which has no proof`);
    return {
      target: rule.remedy === "part" ? "#part" : "#professional",
      guard: all(guardOf(rule.proof, flow.conditions), ...more),
      actions: note({
        cause,
        ...(rule.who ? { who: rule.who } : {}),
        ...(rule.remedy === "part" ? {} : { calls: "somebody" }),
      }),
    };
  };
  const reopener = reopenerOf(flow, scenario);
  const reopen = reopener ? `#${scenario.id}/${reopener.id}` : "";
  /** The same way, before it the tap that we had closed: who comes back from there comes to the same choice. */
  const withWater = (way: Transition): Transition[] => {
    if (!reopener) return [way];
    const guards = way.guard ? [way.guard] : [];
    return [
      { target: reopen, guard: all(mustReopen(flow), ...guards) },
      { ...way, guard: all(mayGoOn(flow), ...guards) },
    ];
  };
  /** A leak that is not mended keeps the tap closed. */
  const leaving = (way: Transition, cause: string | null): Transition[] =>
    scenario.keeps || flow.causes[cause ?? ""]?.keeps ? [way] : withWater(way);
  const isPart = (cause: string) => flow.causes[cause]?.remedy === "part";
  const rivals = scenario.proofs.filter((cause) => !isPart(cause) && cause in scenario.priors);
  // No cause of the complaint, but the end of what a householder can do: a tap that will not shut.
  const halts = scenario.proofs.filter((cause) => !isPart(cause) && !(cause in scenario.priors));
  const entries = scenario.checks.map(({ check, first }, place) => {
    const { once, again } = entryGuards(flow, scenario.id, place);
    const may = first ? [] : [advised("advised", { check })];
    const target = `#${scenario.id}/${check}`;
    const found = Object.values(flow.checks[check]?.turns ?? {}).flatMap(({ answers, verdicts }) =>
      Object.values({ ...answers, ...verdicts }).flatMap(({ finds }) => finds ?? []),
    );
    const actions = startOfWait(flow, check);
    const ways: Transition[] = [{ target, guard: all(once, ...may), ...(actions ? { actions } : {}) }];
    if (again) ways.push({ target, guard: all(again, ...may), actions: note({ again: { check, found } }) });
    const needs = flow.checks[check] && needsWater(flow.checks[check]);
    return { first, ways: needs ? ways.flatMap(withWater) : ways };
  });
  const ways = (first: boolean) => entries.flatMap((one) => (Boolean(one.first) === first ? one.ways : []));
  const otherwise = {
    target: `#${scenario.otherwise.to}`,
    actions: note({ cause: null, who: scenario.otherwise.who, calls: "by-belief" }),
  };
  // An ending for today is left by whoever comes back; a leak that is watched keeps its tap as it is.
  const later: Transition[] = waitOf(flow, scenario)
    ? leaving(
        {
          target: `#${scenario.id}/later`,
          guard: all({ type: "untried", params: {} }, { type: "later-advised", params: {} }),
          actions: note({ cause: null, waitStarts: "later.end" }),
        },
        null,
      )
    : [];
  const asked = { type: "led", params: { to: reopener?.id } };
  return [
    ...(reopener ? [{ target: reopen, guard: all(closedByUs, asked) }] : []),
    ...halts.flatMap((cause) => leaving(ending(cause), cause)),
    ...ways(true),
    ...scenario.proofs
      .filter(isPart)
      .flatMap((cause) => leaving(ending(cause, advised("part-advised", { cause })), cause)),
    ...ways(false),
    ...rivals.flatMap((cause) => leaving(ending(cause), cause)),
    ...later,
    ...leaving(otherwise, null),
  ];
}

const note = (params: Note) => [{ type: "remember", params }];

/** Behind a gate the wait begins when the gate has been passed, not when it is shown. */
function startOfWait(flow: Flow, id: string): Transition["actions"] {
  const check = flow.checks[id];
  const first = check?.turns[check.start];
  return check && first?.kind === "wait" && !check.gates?.length
    ? note(waitNote(id, check.start, first))
    : undefined;
}
