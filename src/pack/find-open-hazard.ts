import type { ChartConfig, FlowSlice, StateConfig, Transition } from "../chart/index.ts";
import type { KnownDangers } from "./shapes.ts";

/** Where the hands of each check go. */
export type Places = Record<string, { station: string; access: string }>;

/**
 * Proves of one chart that no turn of a check with hazards can be come to but through its gates: half a sentence about
 * the first fault, or null. What is dangerous where is judged by the built-in guide.
 * @param scenario whose checks the chart asks; its `choosing` and its ending for today are the states beside them
 */
export function findOpenHazard(
  { states }: ChartConfig,
  scenario: string,
  slice: Pick<FlowSlice, "gates" | "lasting">,
  places: Places,
  known: KnownDangers,
): string | null {
  const checks = Object.entries(states[scenario]?.states ?? {}).filter(
    ([name, { meta, states: inner }]) =>
      name !== "choosing" && !(name === "later" && meta?.kind === "ending" && !inner),
  );
  const homes = new Map(checks.map(([id, state]) => [id, { state, gates: gatesOf(state) }]));
  for (const [id, { state, gates }] of homes) {
    const hazards = hazardsAt(id, state, places, known);
    if (!hazards) return `does not say where the check "${id}" lies`;
    const covered = gates.flatMap((gate) =>
      slice.gates[gate]?.items.length ? slice.gates[gate].covers : [],
    );
    const open = hazards.filter(
      (hazard) => known.hazards[hazard]?.gate !== "none" && !covered.includes(hazard),
    );
    if (open.length) return `has hazards without a gate (${id}: ${open.slice(0, 5).join(", ")})`;
    const turns = Object.values(state.states ?? {}).map(({ meta }) => meta?.turn ?? "");
    if (gates.length && [id, ...turns].some((one) => slice.lasting.includes(one)))
      return `has hazards without a gate (${id} keeps answers that were given behind it)`;
    const fault = gates.length ? findWayRound(state, gates) : null;
    if (fault) return `has hazards without a gate (${fault} passes the gate of ${id})`;
  }
  const long = tooLong(states, known.gateMinutes);
  if (long) return `has hazards without a gate (${long} asks it in short for too long)`;
  for (const { source, way } of waysIn(states)) {
    const isOwn = homes.get(source.split("/")[1] ?? "")?.gates.length;
    if (!isOwn && way.actions?.some(({ params }) => params.confirms))
      return `has hazards without a gate (${source} confirms one that it does not ask)`;
    const [place, check = "", turn] = way.target.slice(1).split("/");
    const gates = place === scenario ? (homes.get(check)?.gates ?? []) : [];
    if (!gates.length || source.startsWith(`${scenario}/${check}/`)) continue;
    if (turn && turn !== `gate-${gates[0]}`)
      return `has hazards without a gate (${source} leads past it to ${turn})`;
  }
  return null;
}

/** The gates of a check, in the order in which they are asked. */
function gatesOf({ initial = "", states = {} }: StateConfig): string[] {
  const gates: string[] = [];
  for (let at = states[initial]; at?.meta?.gate && !gates.includes(at.meta.gate); ) {
    gates.push(at.meta.gate);
    const next = waysOf(at).find(([event]) => event === "answered.ready")?.[1].target ?? "";
    at = states[next.split("/").at(-1) ?? ""];
  }
  return gates;
}

function hazardsAt(id: string, { states = {} }: StateConfig, places: Places, known: KnownDangers) {
  const place = Object.hasOwn(places, id) ? places[id] : undefined;
  if (!place) return null;
  const told = Object.values(states).flatMap(({ meta }) => meta?.hazards ?? []);
  // Turns in front of a gate of the same check may lie elsewhere than its station; those behind it may not.
  const station = known.stations[place.station] ?? "";
  const there = [station, place.access].flatMap((one) => known.access[one] ?? []);
  return [...new Set([...there, ...told])];
}

/** The first state of a gated check from which a way leads round its gates; null where none does. */
function findWayRound({ id, initial, states = {}, on, always }: StateConfig, gates: string[]): string | null {
  if (on || always || initial !== `gate-${gates[0]}`) return id;
  const home = `#${id}/`;
  const first = `${home}gate-${gates[0]}`;
  for (const [name, state] of Object.entries(states)) {
    const place = gates.indexOf(state.meta?.gate ?? "");
    const gate = gates[place];
    const isGate =
      state.meta?.kind === "gate" || state.meta?.gate !== undefined || /^(gate|short)-/.test(name);
    const isShort = isGate && state.meta?.short === true;
    if (isGate && name !== `${isShort ? "short" : "gate"}-${gate}`) return state.id;
    const full = `${home}gate-${gate}`;
    const next = `${home}${place + 1 < gates.length ? `gate-${gates[place + 1]}` : "entering"}`;
    const isInside = (target: string) => target.startsWith(home) || target === `#${id}`;
    for (const [event, { target, guard, actions = [] }] of waysOf(state)) {
      const isReady = event === "answered.ready";
      // Only the full gate confirms itself, and only what it has confirmed may be asked in short.
      const confirmed = actions.flatMap(({ params }) => params.confirms ?? []);
      if (confirmed.length && !(isGate && !isShort && isReady && confirmed.every((one) => one === gate)))
        return state.id;
      if (!isInside(target) || target === first) continue;
      const isFresh = guard?.type === "fresh" && guard.params.gate === gate && gate !== undefined;
      if (isShort ? target === full || (isReady && target === next && isFresh) : false) continue;
      if (isGate && !isShort && event === "" && target === `${home}short-${gate}` && isFresh) continue;
      const leadsOn = isGate && !isShort && isReady && target === next;
      if (isGate ? !leadsOn : /\/(?:(?:gate|short)-[^/]+|entering)$/.test(target)) return state.id;
    }
    // Coming back after an interruption asks from the first gate on, in full.
    const back = waysOf(state).filter(([event]) => event === "session-resumed");
    const isVoid = ({ actions = [] }: Transition) => actions.some(({ params }) => params.returns);
    const asks =
      (place === 0 && !isShort) ||
      name === "entering" ||
      (back.length > 0 && back.every(([, way]) => way.target === first && isVoid(way)));
    if (!asks) return state.id;
  }
  return null;
}

/** Longest for which any gate may be asked in short, in minutes: what the built-in guide has. */
function tooLong(states: Record<string, StateConfig>, most: number): string | null {
  for (const { source, way } of waysIn(states)) {
    const { type, params = {} } = way.guard ?? {};
    if (type === "fresh" && !((params.minutes as number) <= most)) return source;
  }
  return null;
}

/** The ways out of a state, each with its event; those that need none have an empty one. */
export function waysOf({ on = {}, always = [] }: StateConfig): [event: string, way: Transition][] {
  const told = Object.entries(on).flatMap(([event, ways]) =>
    [ways].flat().map((way): [string, Transition] => [event, way]),
  );
  return [...always.map((way): [string, Transition] => ["", way]), ...told];
}

/** Every way of a chart, with the state that it starts from. */
export function* waysIn(
  states: Record<string, StateConfig>,
): Generator<{ source: string; event: string; way: Transition }> {
  for (const state of Object.values(states)) {
    for (const [event, way] of waysOf(state)) yield { source: state.id, event, way };
    yield* waysIn(state.states ?? {});
  }
}
