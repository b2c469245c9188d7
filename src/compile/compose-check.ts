import type { Note, StateConfig, Transition, TurnMeta } from "../chart/index.ts";
import type { Check, Flow, Opening, Outcome, TurnRule } from "../guide/index.ts";
import { hazardsOf } from "./slice-of.ts";
import { waterNote } from "./water.ts";

/**
 * One check (or the opening) as a compound state: its gates first, then `entering`, then its turns.
 * Turns are reached from outside only through the gates, because the compound's initial state is the first gate.
 * After an interruption the gates are asked again and `entering` leads back to the very turn that was left.
 */
export function composeCheck(flow: Flow, check: Check | Opening, scenario: string | null): StateConfig {
  const place: Place = { flow, check, base: scenario ? `${scenario}/${check.id}` : check.id, scenario };
  const gates = "gates" in check ? (check.gates ?? []) : [];
  const states: Record<string, StateConfig> = {};
  gates.forEach((gate, at) => {
    const state = composeGate(place, gate, gates[at + 1]);
    // Whoever left between two gates confirms the first one again: the tap may have been opened meanwhile.
    if (at) state.on = { ...state.on, "session-resumed": { target: `#${place.base}/gate-${gates[0]}` } };
    states[`gate-${gate}`] = state;
  });
  if (gates.length) states.entering = { id: `${place.base}/entering`, always: returns(place) };
  for (const [id, turn] of Object.entries(check.turns)) states[id] = composeTurn(place, id, turn, gates[0]);
  return { id: place.base, initial: gates.length ? `gate-${gates[0]}` : check.start, states };
}

type Place = { flow: Flow; check: Check | Opening; base: string; scenario: string | null };

function composeGate(place: Place, gate: string, next: string | undefined): StateConfig {
  const turn = `${place.check.id}.gate-${gate}`;
  const onward = next ? `#${place.base}/gate-${next}` : `#${place.base}/entering`;
  const ready: Note = { turn, answer: "ready", ...waterNote(place.flow.gates[gate]?.leaves) };
  const declined: Note = { turn, answer: "cannot", done: place.check.id, returnTo: null };
  return {
    id: `${place.base}/gate-${gate}`,
    meta: {
      ...metaOf(place, turn, "gate"),
      hazards: [],
      gate,
      answers: ["ready"],
      picture: place.flow.gates[gate]?.picture ?? "",
    },
    on: {
      "answered.ready": { target: onward, actions: [remember(ready)] },
      "answered.cannot": { target: exit(place), actions: [remember(declined)] },
    },
  };
}

function returns({ check, base }: Place): Transition[] {
  const back = Object.entries(check.turns).map(([turn, { needs }]) => ({
    // The gate has had the tap closed again: what needs it open begins with the turn that opens it.
    target: `#${base}/${needs ? check.start : turn}`,
    guard: { type: "returning", params: { turn: `${check.id}.${turn}` } },
    actions: [remember({ returnTo: null })],
  }));
  const first = check.turns[check.start];
  const started = first?.kind === "wait" ? [remember(waitNote(check.id, check.start, first))] : [];
  return [...back, { target: `#${base}/${check.start}`, ...(started.length ? { actions: started } : {}) }];
}

function composeTurn(place: Place, id: string, rule: TurnRule, gate: string | undefined): StateConfig {
  const turn = `${place.check.id}.${id}`;
  const on: Record<string, Transition | Transition[]> = {};
  for (const [answer, outcome] of Object.entries(rule.answers ?? {}))
    on[`answered.${answer}`] = leave(place, turn, answer, outcome);
  for (const standing of ["not-sure", "cannot"] as const) {
    const outcome = rule[standing] ?? { to: "done" };
    // Nobody is unsure whether to wait; anybody may be unable to.
    if (outcome && !(rule.kind === "wait" && standing === "not-sure"))
      on[`answered.${standing}`] = leave(place, turn, standing, outcome);
  }
  if (rule.verdicts)
    on.measured = Object.entries(rule.verdicts).map(([verdict, outcome]) => ({
      ...leave(place, turn, verdict, outcome),
      guard: { type: "reads", params: { instrument: rule.instrument, place: rule.place, is: verdict } },
    }));
  const minutes = rule.lasts ? minutesOf(place.flow, rule.lasts) : 0;
  if (rule.then)
    on["wait-ended"] = {
      ...leave(place, turn, "over", { to: rule.then }),
      guard: { type: "elapsed", params: { turn, minutes } },
    };
  // A hazardous turn that was left (page closed, answer changed, another phone) is entered again: the gate asks again.
  if (gate)
    on["session-resumed"] = {
      target: `#${place.base}/gate-${gate}`,
      actions: [remember({ returnTo: turn })],
    };
  const meta: TurnMeta = {
    ...metaOf(place, turn, rule.kind ?? "choice"),
    answers: Object.keys(rule.answers ?? {}),
  };
  if (rule.picture) meta.picture = rule.picture;
  if (rule.instrument) meta.instrument = rule.instrument;
  if (rule.place) meta.place = rule.place;
  if (rule.needs) meta.needs = rule.needs;
  if (rule.against) meta.against = rule.against;
  if (minutes) meta.lasts = minutes;
  if (rule.inside)
    meta.inside = rule.inside.map(({ stage, after }) => ({
      stage,
      after: after ? minutesOf(place.flow, after) : 0,
    }));
  return { id: `${place.base}/${id}`, meta, on };
}

function metaOf({ flow, check, scenario }: Place, turn: string, kind: TurnMeta["kind"]): TurnMeta {
  if (!scenario || !("access" in check)) return { turn, kind, check: null };
  const [gate] = check.gates ?? [];
  const opens = turn === `${check.id}.${gate ? `gate-${gate}` : check.start}`;
  const entry = flow.scenarios[scenario]?.checks.find((one) => one.check === check.id);
  return {
    turn,
    kind,
    check: check.id,
    station: check.station,
    hazards: hazardsOf(flow, check),
    minutes: check.minutes,
    tools: check.tools,
    ...(gate && kind !== "gate" ? { gated: true } : {}),
    ...(opens && kind !== "wait" && entry && !entry.first ? { chosen: true } : {}),
  };
}

function leave(place: Place, turn: string, answer: string, outcome: Outcome): Transition {
  const { flow, check, base } = place;
  const note: Note = { turn, answer, ...waterNote(outcome.leaves) };
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
    if (next.kind === "wait") Object.assign(note, waitNote(check.id, outcome.to, next));
    return { target: `#${base}/${outcome.to}`, actions: [remember(note)] };
  }
  if (endsInVain(check, turn, answer, outcome)) note.inVain = true;
  // What only puts something back is no look, and comes again whenever it has to.
  if (place.scenario && !("restores" in check)) note.done = check.id;
  if (outcome.to === "stopped") note.danger = answer;
  if (outcome.to === "fixed") note.creditsLastFix = true;
  if (outcome.to === "professional") {
    note.cause = outcome.finds ?? null;
    note.who = (outcome.finds && flow.causes[outcome.finds]?.who) || "shop";
    note.calls = "somebody";
  }
  return { target: outcome.to === "done" ? exit(place) : `#${outcome.to}`, actions: [remember(note)] };
}

/** True for an answer of a wait that means something and leads on: what was waited for stayed away. */
export function endsInVain(check: Check | Opening, turn: string, answer: string, { to }: Outcome): boolean {
  if (!("outcomes" in check) || to !== "done" || !Object.values(check.turns).some(({ waits }) => waits))
    return false;
  const finding = `${turn.slice(check.id.length + 1)}.${answer}`;
  return Object.values(check.outcomes ?? {}).some(({ from }) => from.includes(finding));
}

function exit({ scenario }: Place): string {
  return scenario ? `#${scenario}/choosing` : "#routing";
}

function remember(params: Note): { type: string; params: Note } {
  return { type: "remember", params };
}

function minutesOf(flow: Flow, limit: string): number {
  const { value, unit } = flow.limits[limit] ?? { value: 0, unit: "min" };
  return unit === "h" ? value * 60 : value;
}

/** What entering a wait notes down: when it began, and whether it counts as the wait a remedy calls for. */
export function waitNote(check: string, turn: string, rule: { waits?: boolean | undefined }) {
  return { waitStarts: `${check}.${turn}`, ...(rule.waits ? { waited: true } : {}) };
}
