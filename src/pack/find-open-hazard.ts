import type { ChartConfig, FlowSlice, StateConfig, Transition } from "../chart/index.ts";
import type { KnownDangers } from "./shapes.ts";

/** Where the hands of each check go. */
export type Places = Record<string, { station: string; access: string }>;

/**
 * Proves of one chart that no turn of a check with hazards can be come to but through its gates: half a sentence about
 * the first fault, or null. What is dangerous where is judged by the built-in guide.
 * @param scenario whose checks the chart asks; its `choosing` is the one state beside them
 */
export function findOpenHazard(
  { states }: ChartConfig,
  scenario: string,
  slice: Pick<FlowSlice, "gates" | "lasting">,
  places: Places,
  known: KnownDangers,
): string | null {
  const checks = Object.entries(states[scenario]?.states ?? {}).filter(([name]) => name !== "choosing");
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
    if (gates.length && slice.lasting.includes(id))
      return `has hazards without a gate (${id} keeps answers that were given behind it)`;
    const fault = gates.length ? findWayRound(state, gates) : null;
    if (fault) return `has hazards without a gate (${fault} passes the gate of ${id})`;
  }
  for (const { source, way } of waysIn(states)) {
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
  const there = [known.stations[place.station] ?? "", place.access].flatMap((one) => known.access[one] ?? []);
  return [...new Set([...there, ...told])];
}

/** The first state of a gated check from which a way leads round its gates; null where none does. */
function findWayRound({ id, initial, states = {}, on, always }: StateConfig, gates: string[]): string | null {
  if (on || always || initial !== `gate-${gates[0]}`) return id;
  const home = `#${id}/`;
  const first = `${home}gate-${gates[0]}`;
  for (const [name, state] of Object.entries(states)) {
    const place = gates.indexOf(state.meta?.gate ?? "");
    const isGate = state.meta?.kind === "gate" || state.meta?.gate !== undefined || name.startsWith("gate-");
    if (isGate && name !== `gate-${gates[place]}`) return state.id;
    const next = `${home}${place + 1 < gates.length ? `gate-${gates[place + 1]}` : "entering"}`;
    const isInside = (target: string) => target.startsWith(home) || target === `#${id}`;
    for (const [event, { target }] of waysOf(state)) {
      if (!isInside(target) || target === first) continue;
      if (isGate ? event !== "answered.ready" || target !== next : /\/(?:gate-[^/]+|entering)$/.test(target))
        return state.id;
    }
    // Coming back after an interruption asks from the first gate on.
    const back = waysOf(state).filter(([event]) => event === "session-resumed");
    const asks =
      place === 0 ||
      name === "entering" ||
      (back.length > 0 && back.every(([, { target }]) => target === first));
    if (!asks) return state.id;
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
