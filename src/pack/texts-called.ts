import type { ChartConfig, FlowSlice, TurnMeta } from "../chart/index.ts";
import { leavesOf } from "./find-chart-fault.ts";
import { waysIn } from "./find-open-hazard.ts";

/** Every text that a chart and what is read beside it call for by their own ids. */
export function* textsCalled({ states }: ChartConfig, slice: FlowSlice): Generator<string> {
  for (const { meta } of leavesOf(states)) if (meta && meta.kind !== "ending") yield* calledBy(meta);
  for (const { way } of waysIn(states))
    for (const { params } of way.actions ?? [])
      if (params.who) yield* [`who.${params.who}.name`, `who.${params.who}.tell`];
  for (const [id, { items, facts }] of Object.entries(slice.gates)) {
    yield* ["name", "ask", "why", "ready", "cannot"].map((word) => `gates.${id}.${word}`);
    yield* items.map((item) => `gates.${id}.items.${item}`);
    yield* facts.map((fact) => `gates.${id}.facts.${fact}`);
  }
  yield* Object.keys(slice.hazards).map((id) => `hazards.${id}`);
  yield* Object.keys(slice.causes).map((id) => `causes.${id}.is`);
  for (const { who } of Object.values(slice.causes)) if (who) yield* [`who.${who}.name`, `who.${who}.tell`];
  for (const [id, { tools }] of Object.entries(slice.parts))
    yield* [`parts.${id}.name`, `parts.${id}.fitting`, ...tools.map((tool) => `tools.${tool}`)];
  yield* slice.stations.order.map((id) => `stations.${id}`);
  yield* Object.values(slice.region.statutes).map(({ says }) => `statutes.${says}`);
  for (const id of [...slice.dangers, "not-sure", "general"])
    yield* [`dangers.${id}.heading`, `dangers.${id}.do`];
}

function* calledBy({
  turn,
  kind,
  check,
  tools = [],
  inside = [],
  answers = [],
}: TurnMeta): Generator<string> {
  if (check) yield* [`checks.${check}.name`, `checks.${check}.why`];
  yield* tools.map((tool) => `tools.${tool}`);
  if (kind === "gate" || kind === "model") return;
  yield* [`checks.${turn}.ask`, `checks.${turn}.how`];
  yield* answers.map((answer) => `checks.${turn}.answers.${answer}`);
  yield* inside.map(({ stage }) => `inside.${stage}`);
}
