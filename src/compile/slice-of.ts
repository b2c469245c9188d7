import type { FlowSlice } from "../chart/index.ts";
import { all, any, type Guard, guardOf, not } from "../condition/index.ts";
import { type Check, dangersOf, type Flow, type Opening, regionIn } from "../guide/index.ts";
import { hazardsOf } from "./hazards.ts";
import { gatesOf, outcomesOf, partsOfCheck } from "./parts-of-check.ts";
import { causesOf } from "./shares.ts";

/** What belongs to one scenario of the slice; all else is shared with the opening. */
export type ScenarioSlice = Pick<
  FlowSlice,
  "hazards" | "gates" | "causes" | "parts" | "searches" | "lasting"
>;

/** What is read of flows/ in the opening, and in every scenario besides its own. */
export function startSlice(flow: Flow): FlowSlice {
  const limits = Object.entries(flow.limits).map(([id, { value, unit }]) => [id, { value, unit }]);
  const scenarios = Object.values(flow.scenarios);
  const guards = scenarios.map(({ when }) => guardOf(when, flow.conditions));
  // The first whose condition holds is the one that would be led to.
  const searches = scenarios.flatMap(({ keeps }, place) =>
    keeps ? [all(...guards.slice(0, place).map(not), guards[place] as Guard)] : [],
  );
  return {
    version: flow.version,
    limits: Object.fromEntries(limits),
    region: regionIn(flow.regions, "en"),
    stations: { order: flow.stations.order, above: flow.stations.above },
    ...(flow.opening.greets ? { greets: `${flow.opening.id}.${flow.opening.greets}` } : {}),
    dangers: dangersOf(flow),
    lasting: [flow.opening.id],
    ...partsOf(flow, [flow.opening], []),
    searches: any(...searches),
  };
}

/** What is read of flows/ in a scenario alone. @param checks every check that it can ask */
export function scenarioSlice(flow: Flow, scenario: string, checks: Check[]): ScenarioSlice {
  const rule = flow.scenarios[scenario];
  const causes = [...causesOf(flow, scenario), ...(rule?.proofs ?? [])];
  return {
    ...partsOf(flow, checks, causes),
    lasting: checks.filter(isLasting).flatMap(lastingIn),
    searches: rule?.keeps ? all() : any(),
  };
}

/** False for what has to be asked again: what lies behind a gate, the tap, a wait and what came of it. */
function isLasting({ gates, restores, confirms, repeats, turns }: Check): boolean {
  return (
    !gates?.length &&
    !restores &&
    !confirms &&
    !repeats &&
    !Object.values(turns).some(({ kind }) => kind === "wait")
  );
}

/** A check, or where some of its turns lie behind a gate those that do not. */
function lastingIn(check: Check): string[] {
  const [first, ...behind] = partsOfCheck(check);
  return behind.length ? Object.keys(first?.turns ?? {}).map((turn) => `${check.id}.${turn}`) : [check.id];
}

function partsOf(
  flow: Flow,
  checks: (Check | Opening)[],
  causes: string[],
): Omit<ScenarioSlice, "searches" | "lasting"> {
  const told = checks.flatMap((check) =>
    outcomesOf(check).flatMap(({ finds, remedies }) => [finds ?? [], remedies ?? []].flat()),
  );
  const causeIds = Object.keys(flow.causes).filter((id) => causes.includes(id) || told.includes(id));
  const kinds = new Set(causeIds.flatMap((id) => flow.causes[id]?.part ?? []));
  const gateIds = new Set(checks.flatMap((check) => ("access" in check ? gatesOf(check) : [])));
  const parts = pick(flow.parts, kinds, ({ minutes, tools, access, consumable, picture }) => ({
    minutes,
    tools,
    hazards: flow.access[access] ?? [],
    ...(consumable ? { consumable } : {}),
    ...(picture ? { picture } : {}),
  }));
  const gates = pick(flow.gates, gateIds, ({ signal, covers, items, facts }) => ({
    signal,
    covers,
    items,
    facts,
  }));
  const hazards = new Set([
    ...checks.flatMap((check) => ("access" in check ? hazardsOf(flow, check) : [])),
    ...Object.values(parts).flatMap((part) => part.hazards),
    ...Object.values(gates).flatMap(({ covers }) => covers),
  ]);
  return {
    hazards: pick(flow.hazards, hazards, ({ signal }) => ({ signal })),
    gates,
    causes: pick(flow.causes, new Set(causeIds), ({ station, part, who, claim, proof, keeps }) => ({
      station,
      ...(part ? { part } : {}),
      ...tradeOf(who ?? flow.parts[part ?? ""]?.who),
      ...(claim ? { claim } : {}),
      ...(proof ? { proof: guardOf(proof, flow.conditions) } : {}),
      ...(keeps ? { keeps: true } : {}),
    })),
    parts,
  };
}

function pick<From, To>(
  all: Record<string, From>,
  ids: Set<string>,
  to: (one: From) => To,
): Record<string, To> {
  return Object.fromEntries(Object.entries(all).flatMap(([id, one]) => (ids.has(id) ? [[id, to(one)]] : [])));
}

const tradeOf = (who: string | undefined) => (who ? { who } : {});
