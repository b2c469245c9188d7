import type { Note, StateConfig, Transition, TurnMeta } from "../chart/index.ts";
import { all, type Guard, not } from "../condition/index.ts";
import {
  type Check,
  type Flow,
  type Opening,
  type Outcome,
  type Preparation,
  preparations,
  statesIn,
  type TurnRule,
} from "../guide/index.ts";
import { cameBack, composeGate, exit, metaOf, type Place, remember } from "./compose-gate.ts";
import { type FixedWays, straightToFixed } from "./fixed.ts";
import { partsOfCheck } from "./parts-of-check.ts";
import { needsOf } from "./preparations.ts";

/**
 * One check (or the opening) as compound states, one for the turns behind the same gates: the gates first, then
 * `entering`, then the turns. Turns are reached from outside only through the gates, because the compound's initial
 * state is the first gate. After an interruption the gates are asked again, in full, and `entering` leads back to the
 * very turn that was left.
 */
export function composeCheck(
  flow: Flow,
  check: Check | Opening,
  scenario: string | null,
  fixedAt: FixedWays = straightToFixed,
): Record<string, StateConfig> {
  const parts = partsOfCheck(check);
  const states = parts.map((part): [string, StateConfig] => {
    const base = scenario ? `${scenario}/${part.id}` : part.id;
    return [part.id, composePart({ flow, check, part, parts, base, scenario, fixedAt })];
  });
  return Object.fromEntries(states);
}

function composePart(place: Place): StateConfig {
  const { base, part } = place;
  const { gates, turns, start } = part;
  const states: Record<string, StateConfig> = {};
  gates.forEach((gate, at) => {
    const onward = gates[at + 1] ? `#${base}/gate-${gates[at + 1]}` : `#${base}/entering`;
    Object.assign(states, composeGate(place, gate, onward));
  });
  if (gates.length) states.entering = { id: `${base}/entering`, always: returns(place) };
  for (const [id, turn] of Object.entries(turns)) states[id] = composeTurn(place, id, turn, gates[0]);
  return { id: base, initial: gates.length ? `gate-${gates[0]}` : start, states };
}

function returns({ flow, check, part, base }: Place): Transition[] {
  const left = new Map(part.gates.flatMap((gate) => statesIn(flow.gates[gate]?.leaves)));
  const back = Object.entries(part.turns).map(([turn, { needs }]) => {
    // The gate has had the tap closed again: what needs it open begins with the turn that opens it.
    const undone = statesIn(needs).some(([one, state]) => left.has(one) && left.get(one) !== state);
    return {
      target: `#${base}/${undone ? part.start : turn}`,
      guard: { type: "returning", params: { turn: `${check.id}.${turn}` } },
      actions: [remember({ returnTo: null })],
    };
  });
  const first = part.turns[part.start];
  const started = first?.kind === "wait" ? [remember(waitNote(check.id, part.start, first))] : [];
  return [...back, { target: `#${base}/${part.start}`, ...(started.length ? { actions: started } : {}) }];
}

function composeTurn(place: Place, id: string, rule: TurnRule, gate: string | undefined): StateConfig {
  const turn = `${place.check.id}.${id}`;
  const on: Record<string, Transition | Transition[]> = {};
  for (const [answer, outcome] of Object.entries(rule.answers ?? {}))
    on[`answered.${answer}`] = wayOf(leave(place, turn, answer, outcome));
  for (const standing of ["not-sure", "cannot"] as const) {
    const outcome = rule[standing] ?? { to: "done" };
    // Nobody is unsure whether to wait; anybody may be unable to.
    if (outcome && !(rule.kind === "wait" && standing === "not-sure"))
      on[`answered.${standing}`] = wayOf(leave(place, turn, standing, outcome));
  }
  if (rule.verdicts)
    on.measured = Object.entries(rule.verdicts).flatMap(([verdict, outcome]) => {
      const params = { instrument: rule.instrument, place: rule.place, is: verdict };
      return when({ type: "reads", params }, leave(place, turn, verdict, outcome));
    });
  const minutes = rule.lasts ? minutesOf(place.flow, rule.lasts) : 0;
  if (rule.then)
    on["wait-ended"] = when(
      { type: "elapsed", params: { turn, minutes } },
      leave(place, turn, "over", { to: rule.then }),
    );
  // A hazardous turn that was left (page closed, answer changed, another phone) is entered again: the gate asks again.
  if (gate)
    on["session-resumed"] = {
      target: `#${place.base}/gate-${gate}`,
      actions: [remember({ returnTo: turn, returns: true })],
    };
  else if (place.scenario) on["session-resumed"] = cameBack(`#${place.base}/${id}`);
  const meta: TurnMeta = {
    ...metaOf(place, turn, rule.kind ?? "choice", rule),
    answers: Object.keys(rule.answers ?? {}),
  };
  if (rule.picture) meta.picture = rule.picture;
  if (rule.instrument) meta.instrument = rule.instrument;
  if (rule.place) meta.place = rule.place;
  const needs = "access" in place.check && needsOf(place.flow, place.check, rule);
  if (needs && statesIn(needs).length) meta.needs = needs;
  const restored = "restores" in place.check ? tellsOf(rule) : [];
  if (restored.length) meta.tells = restored;
  if (rule.against) meta.against = rule.against;
  if (minutes) meta.lasts = minutes;
  if (rule.inside)
    meta.inside = rule.inside.map(({ stage, after }) => ({
      stage,
      after: after ? minutesOf(place.flow, after) : 0,
    }));
  return { id: `${place.base}/${id}`, meta, on };
}

/** What a turn that puts things back says: all that an answer of it puts back but the tap, which has a turn of its own. */
function tellsOf({ answers = {} }: TurnRule): Preparation[] {
  const states = Object.values(answers).flatMap(({ leaves }) => statesIn(leaves));
  const back = states.flatMap(([one, state]) => (state === preparations[one].back ? [one] : []));
  return [...new Set(back)].filter((one) => one !== "water");
}

/** Where an answer leads. A part of the check behind a gate that the person can't confirm is passed over. */
function leave(place: Place, turn: string, answer: string, outcome: Outcome): Transition[] {
  const { flow, check, base } = place;
  const note: Note = { turn, answer, ...(outcome.leaves ? { leaves: outcome.leaves } : {}) };
  const cause = outcome.remedies ?? outcome.finds;
  const station = cause ? flow.causes[cause]?.station : undefined;
  if (outcome.finds) note.finds = outcome.finds;
  if (outcome.remedies) {
    note.remedies = outcome.remedies;
    // "No ice after the wait" speaks of what was put right before that wait, not of this.
    note.forgets = Object.values(flow.checks).flatMap((one) => (one.repeats ? [one.id] : []));
  }
  if (station) note.causeStation = station;
  if (outcome.clears) note.clears = outcome.clears;
  if (outcome.suspects) note.suspects = outcome.suspects;
  const next = check.turns[outcome.to];
  if (next) {
    const part = place.parts.find(({ turns }) => outcome.to in turns);
    if (part && part !== place.part && part.gates.length) {
      const guard = { type: "refused", params: { gates: part.gates } };
      const entered = remember({ ...note, returnTo: `${check.id}.${outcome.to}` });
      return [
        { target: exit(place), guard, actions: [remember({ ...note, done: check.id })] },
        { target: `#${place.scenario}/${part.id}`, guard: not(guard), actions: [entered] },
      ];
    }
    if (next.kind === "wait") Object.assign(note, waitNote(check.id, outcome.to, next));
    const home = part && part !== place.part ? `${place.scenario}/${part.id}` : base;
    return [{ target: `#${home}/${outcome.to}`, actions: [remember(note)] }];
  }
  if (endsInVain(check, turn, answer, outcome)) note.inVain = true;
  // What only puts something back is no look, and comes again whenever it has to.
  if (place.scenario && !("restores" in check || "confirms" in check)) note.done = check.id;
  if (outcome.to === "stopped") note.danger = answer;
  if (outcome.to === "fixed") note.creditsLastFix = true;
  if (outcome.to === "professional") {
    note.cause = outcome.finds ?? null;
    note.who = (outcome.finds && flow.causes[outcome.finds]?.who) || "shop";
    note.calls = "somebody";
  }
  const way = { target: outcome.to === "done" ? exit(place) : `#${outcome.to}`, actions: [remember(note)] };
  if (outcome.to !== "fixed") return [way];
  return "confirms" in check ? [{ ...way, target: exit(place) }] : place.fixedAt(way);
}

const wayOf = (ways: Transition[]): Transition | Transition[] =>
  ways.length === 1 ? (ways[0] ?? ways) : ways;

/** The same ways, where a guard holds as well. */
function when(guard: Guard, ways: Transition[]): Transition[] {
  return ways.map((way) => ({ ...way, guard: way.guard ? all(guard, way.guard) : guard }));
}

/** True for an answer of a wait that means something and leads on: what was waited for stayed away. */
export function endsInVain(check: Check | Opening, turn: string, answer: string, { to }: Outcome): boolean {
  if (!("outcomes" in check) || to !== "done" || !Object.values(check.turns).some(({ waits }) => waits))
    return false;
  const finding = `${turn.slice(check.id.length + 1)}.${answer}`;
  return Object.values(check.outcomes ?? {}).some(({ from }) => from.includes(finding));
}

function minutesOf(flow: Flow, limit: string): number {
  const { value, unit } = flow.limits[limit] ?? { value: 0, unit: "min" };
  return unit === "h" ? value * 60 : value;
}

/** What entering a wait notes down: when it began, and whether it counts as the wait a remedy calls for. */
export function waitNote(check: string, turn: string, rule: { waits?: boolean | undefined }) {
  return { waitStarts: `${check}.${turn}`, ...(rule.waits ? { waited: true } : {}) };
}
