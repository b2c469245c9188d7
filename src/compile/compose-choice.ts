import type { Note, Transition } from "../chart/index.ts";
import { all, type Guard, guardOf, not } from "../condition/index.ts";
import { everyPreparation, type Flow, type Preparation, type Scenario } from "../guide/index.ts";
import { waitNote } from "./compose-check.ts";
import { entryGuards } from "./entry-guards.ts";
import { confirmedBy, confirmerOf } from "./fixed.ts";
import { anyOurs, mayGoOn, mustPutBack, needsBack, restorersOf } from "./preparations.ts";
import { waitOf } from "./wait-for-ice.ts";

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
  const restorers = restorersOf(flow, scenario);
  const goTo = (id: string) => `#${scenario.id}/${id}`;
  /** The same way, before it what puts back all that must be: who comes back from there comes to the same choice. */
  const withThingsBack = (way: Transition, must: readonly Preparation[]): Transition[] => {
    const guards = way.guard ? [way.guard] : [];
    const steps = restorers.flatMap(({ id, restores }) => {
      const own = restores.filter((one) => must.includes(one));
      return own.length ? [{ id, own }] : [];
    });
    if (!steps.length) return [way];
    const every = steps.flatMap(({ own }) => own);
    return [
      ...steps.map(({ id, own }) => ({ target: goTo(id), guard: all(mustPutBack(flow, own), ...guards) })),
      { ...way, guard: all(mayGoOn(flow, every), ...guards) },
    ];
  };
  /** Nothing of ours is left behind at an ending, but the tap where a leak that is not mended keeps it closed. */
  const leaving = (way: Transition, cause: string | null): Transition[] => {
    const keeps = scenario.keeps || flow.causes[cause ?? ""]?.keeps;
    return withThingsBack(
      way,
      everyPreparation.filter((one) => one !== "water" || !keeps),
    );
  };
  const isPart = (cause: string) => flow.causes[cause]?.remedy === "part";
  /** A part that was fitted without help is not named again, whatever else it would put right. */
  const isNew = (cause: string): Guard => {
    const part = flow.causes[cause]?.part;
    return not({
      type: "fitted",
      params: { causes: scenario.proofs.filter((one) => flow.causes[one]?.part === part) },
    });
  };
  const isFault = (cause: string) => Object.hasOwn(flow.machine.causes, cause);
  const rivals = scenario.proofs.filter((cause) => !isPart(cause) && isFault(cause));
  // No cause of the complaint, but the end of what a householder can do: a tap that will not shut.
  const halts = scenario.proofs.filter((cause) => !isPart(cause) && !isFault(cause));
  const entries = scenario.checks.map(({ check, first }, place) => {
    const { once, again } = entryGuards(flow, scenario.id, place);
    const may = first ? [] : [advised("advised", { check })];
    const target = `#${scenario.id}/${check}`;
    const found = Object.values(flow.checks[check]?.turns ?? {}).flatMap(({ answers, verdicts }) =>
      Object.values({ ...answers, ...verdicts }).flatMap(({ finds }) => finds ?? []),
    );
    const actions = startOfWait(flow, check);
    const ways: Transition[] = [{ target, guard: all(once, ...may), ...(actions ? { actions } : {}) }];
    const second: Transition[] = again
      ? [
          {
            target,
            guard: all(again, advised("advised", { check })),
            actions: note({ again: { check, found } }),
          },
        ]
      : [];
    const needed = flow.checks[check] ? needsBack(flow, flow.checks[check]) : [];
    // Joints are looked at with the tap open before the machine hides them again.
    const must: Preparation[] = needed.length && !scenario.keeps ? ["water", ...needed] : needed;
    const back = (some: Transition[]) => some.flatMap((way) => withThingsBack(way, must));
    return first
      ? { first: back(ways), advised: back(second) }
      : { first: [], advised: back([...ways, ...second]) };
  });
  const otherwise = {
    target: `#${scenario.otherwise.to}`,
    actions: note({ cause: null, who: scenario.otherwise.who, calls: "by-belief" }),
  };
  const confirmer = confirmerOf(flow, scenario);
  const fixed = { target: "#fixed", actions: note({ creditsLastFix: true }) };
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
  const asked = (to: string): Guard => ({ type: "led", params: { to } });
  return [
    ...restorers.map(({ id, restores }) => ({ target: goTo(id), guard: all(anyOurs(restores), asked(id)) })),
    ...(confirmer ? leaving({ ...fixed, guard: confirmedBy(confirmer) }, null) : []),
    ...halts.flatMap((cause) => leaving(ending(cause), cause)),
    ...entries.flatMap(({ first }) => first),
    ...scenario.proofs
      .filter(isPart)
      .flatMap((cause) => leaving(ending(cause, advised("part-advised", { cause }), isNew(cause)), cause)),
    ...entries.flatMap(({ advised }) => advised),
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
