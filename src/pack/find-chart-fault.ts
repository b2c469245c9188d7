import type { ChartConfig, FlowSlice, StateConfig } from "../chart/index.ts";
import { waysIn, waysOf } from "./find-open-hazard.ts";

const endings = ["fixed", "professional", "stopped", "part"];

/**
 * The first thing that keeps a chart of the right shape from being run, as half a sentence; null where it can be run.
 * @param place the opening or a scenario: what the chart has beside the endings
 * @param stubs the states beside those, which lead on to another chart
 * @param dangers what must be taken everywhere
 */
export function findChartFault(
  { initial, states }: ChartConfig,
  place: string,
  stubs: readonly string[],
  slice: FlowSlice,
  dangers: readonly string[],
): string | null {
  const all = [place, ...stubs, ...endings];
  const strange =
    Object.keys(states).find((name) => !all.includes(name)) ?? all.find((name) => !states[name]);
  if (strange) return `names "${strange}" in the chart of ${place}, which it does not have`;
  if (initial !== place) return `begins "${place}" somewhere else`;
  const known = new Map<string, StateConfig>();
  const odd = misnamed(states, "", known);
  if (odd) return `names "${odd}" in the chart of ${place}, which it does not have`;
  for (const { source, event, way } of waysIn(states)) {
    if (!known.has(way.target.slice(1)))
      return `names "${way.target.slice(1)}" at ${source}, which it does not have`;
    // A state that took a report of its own would keep it from where all are taken.
    if (event.startsWith("danger-reported.") && source.includes("/"))
      return `takes a danger at ${source} by itself`;
  }
  for (const [id, state] of known) {
    const fault = metaFault(id, state, place);
    if (fault) return fault;
  }
  for (const name of [place, "fixed", "professional", "part"])
    for (const danger of [...dangers, "not-sure"]) {
      const ways = waysOf(states[name] as StateConfig).filter(
        ([event]) => event === `danger-reported.${danger}`,
      );
      const stops = ways.length === 1 && ways[0]?.[1].target === "#stopped" && !ways[0][1].guard;
      if (!stops) return `does not stop everywhere for the danger "${danger}"`;
    }
  if (waysOf(states.stopped as StateConfig).length) return "leads on from a danger";
  return strayName(states, slice);
}

/** A state whose id is not its path, or whose first state it does not have. */
function misnamed(
  states: Record<string, StateConfig>,
  within: string,
  known: Map<string, StateConfig>,
): string | null {
  for (const [name, state] of Object.entries(states)) {
    known.set(state.id, state);
    if (state.id !== `${within}${name}`) return state.id;
    if (!state.states) continue;
    if (!Object.hasOwn(state.states, state.initial ?? "")) return `${state.id}/${state.initial}`;
    const odd = misnamed(state.states, `${state.id}/`, known);
    if (odd) return odd;
  }
  return null;
}

/** A turn stands where its own name says: the texts of a hazardous one can be asked nowhere else. */
function metaFault(id: string, { meta, states, always }: StateConfig, place: string): string | null {
  const [first, second, third] = id.split("/");
  if (!meta) {
    const isTransient = Boolean(states || always) || !id.includes("/");
    return isTransient ? null : `asks nothing at ${id}`;
  }
  const isCheck = first === place && third !== undefined;
  // Turns of a check behind a gate of their own stand in a state that is named after both.
  const own = meta.check && second?.startsWith(`${meta.check}-`) ? meta.check : second;
  const name = meta.short ? third?.replace(/^short-/, "gate-") : third;
  const ending = id === `${place}/later` && meta.kind === "ending" ? "later.end" : `${first}.end`;
  const turn = isCheck ? `${own}.${name}` : second && ending !== "later.end" ? `${first}.${second}` : ending;
  const check = isCheck ? own : null;
  return meta.turn === turn && meta.check === check && !states ? null : `asks "${meta.turn}" at ${id}`;
}

/** A cause, station or gate that a chart names and the flow does not have. */
function strayName(states: Record<string, StateConfig>, slice: FlowSlice): string | null {
  const { causes, gates, hazards, stations } = slice;
  const say = (name: string, where: string) => `names "${name}" at ${where}, which it does not have`;
  for (const { source, way } of waysIn(states))
    for (const { params } of way.actions ?? []) {
      const { finds, remedies, cause, clears = [], suspects = [], causeStation } = params;
      for (const one of [finds, remedies, cause])
        if (one && !Object.hasOwn(causes, one)) return say(one, source);
      for (const one of [...clears, ...suspects, causeStation ?? []].flat())
        if (!stations.order.includes(one)) return say(one, source);
    }
  for (const { id, meta } of leavesOf(states)) {
    if (meta?.station && !stations.order.includes(meta.station)) return say(meta.station, id);
    if (meta?.gate && !Object.hasOwn(gates, meta.gate)) return say(meta.gate, id);
    const hazard = meta?.hazards?.find((one) => !Object.hasOwn(hazards, one));
    if (hazard) return say(hazard, id);
  }
  return null;
}

/** Every state that has none inside. */
export function* leavesOf(states: Record<string, StateConfig>): Generator<StateConfig> {
  for (const state of Object.values(states)) {
    if (state.states) yield* leavesOf(state.states);
    else yield state;
  }
}
