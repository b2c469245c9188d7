import { composeChart, partsOfCheck } from "../../compile/index.ts";
import type { Check, Flow, Path } from "../../guide/index.ts";
import { emergency, findLostWays, findTrapped } from "./exits.ts";
import { nameOf } from "./folder.ts";
import { findKeptOpen, findUndeclared, findUngated, findUngatedCare } from "./gates.ts";
import { type Graph, graphOf, reach, withWaysBack } from "./graph.ts";
import { findUnprepared } from "./preparations.ts";
import type { Report } from "./report.ts";
import type { Fault } from "./words.ts";

/** Judges the whole composed chart, every way back included, and says each fault where the files have it. */
export function findChartFaults(flow: Flow, report: Report): void {
  const graph = graphOf(composeChart(flow));
  const lost = findLostWays(graph);
  for (const { code, state } of lost) {
    const { file, path, turn } = placeIn(flow, state);
    if (code === "unreachable") report({ code, file, path, at: "key", turn });
  }
  const stuck = lost.filter(({ code }) => code === "dead-end").map(({ state }) => state);
  reportStuck(flow, graph, stuck, report);
  if (findTrapped(graph).some((one) => one.code === "no-way-out" && one.lacks === "danger"))
    report({ code: "no-way-out", file: "opening.yaml", path: ["turns"], at: "key" });
  const ungated = reportUngated(flow, graph, report);
  const told = new Set<string>();
  for (const fault of findUnprepared(flow, graph)) {
    const { state } = fault;
    const of = "of" in fault ? fault.of : "";
    const key = `${fault.code} ${placeIn(flow, state).file} ${of}`;
    // A turn whose gate is gone is met in any state: that is said already. Of several turns of a check one is enough.
    if ((fault.code === "wrong-state" && ungated.has(state)) || told.has(key)) continue;
    told.add(key);
    const file = `checks/${state}.yaml`;
    const { turn, ...spot } =
      state in flow.checks ? { file, path: ["restores"], turn: "" } : placeIn(flow, state);
    report({ ...fault, ...spot, at: "key" } as Fault);
  }
  for (const fault of findUngatedCare(flow))
    if (fault.code === "ungated-care")
      report({ ...fault, file: "care.yaml", path: [fault.time, fault.place, "access"], at: "key" });
  const undeclared = findUndeclared(flow).flatMap((one) => ("hazard" in one ? [one] : []));
  for (const [check, hazards] of group(undeclared, ({ state, hazard }) => [state, hazard]))
    report({ code: "undeclared-hazard", file: `checks/${check}.yaml`, path: ["access"], hazards });
}

/** Turns that lead nowhere, and rings of turns that lead only to each other. What leads only there is no fault itself. */
function reportStuck(flow: Flow, graph: Graph, stuck: string[], report: Report): void {
  const edges = graph.edges.filter(
    ({ from, to, event }) =>
      stuck.includes(from) && stuck.includes(to) && !emergency.test(event) && event !== "session-resumed",
  );
  const ring = (leaf: string) => {
    const onward = edges.filter(({ from }) => from === leaf).map(({ to }) => to);
    const reached = reach({ ...graph, edges }, onward, "forward");
    return onward.length && reached.has(leaf) ? [...reached] : null;
  };
  const told = new Set<string>();
  for (const leaf of stuck) {
    const { file, path, turn } = placeIn(flow, leaf);
    const round = ring(leaf);
    const back = round?.every((one) => ring(one)?.includes(leaf));
    if (!edges.some(({ from }) => from === leaf)) report({ code: "dead-end", file, path, at: "key", turn });
    else if (round && back && !told.has(leaf)) {
      for (const one of round) told.add(one);
      const turns = round.map((one) => placeIn(flow, one).turn).sort();
      report({ code: "loop-without-exit", file, path, at: "key", turns });
    }
  }
}

/** Hazards of a check that some way meets without their gate, together. @returns the states that are met so */
function reportUngated(flow: Flow, graph: Graph, report: Report): Set<string> {
  const found = [...findUngated(flow, withWaysBack(graph)), ...findKeptOpen(graph)];
  const faults = found.map((one) => ({
    ...placeIn(flow, one.state),
    hazards: "hazard" in one ? [one.hazard] : [],
  }));
  for (const file of new Set(faults.map((one) => one.file))) {
    const own = faults.filter((one) => one.file === file);
    const turns = [...new Set(own.map(({ turn }) => turn))];
    const hazards = [...new Set(own.flatMap((one) => one.hazards))];
    const path = flow.checks[nameOf(file)]?.gates ? ["gates"] : ["access"];
    report({ code: "ungated-hazard", file, path, at: "key", turns, hazards });
  }
  return new Set(found.map(({ state }) => state));
}

/** The check whose turns behind a gate, or in front of it, a compound state has. */
function checkOfPart(flow: Flow, part: string): string {
  const isOwn = (check: Check) => partsOfCheck(check).some(({ id }) => id === part);
  return Object.values(flow.checks).find(isOwn)?.id ?? part;
}

/** Where the files have a state of the chart. */
function placeIn(flow: Flow, state: string): { file: string; path: Path; turn: string } {
  const [first = "", second = "", third = ""] = state.split("/");
  const [part, turn] = first === "opening" ? [first, second] : [second, third];
  const check = checkOfPart(flow, part);
  if (first in flow.scenarios && !(check in flow.checks))
    return { file: `scenarios/${first}.yaml`, path: ["id"], turn: first };
  const file = check === "opening" ? "opening.yaml" : `checks/${check}.yaml`;
  const gates = flow.checks[check]?.gates ?? [];
  const gate = gates.indexOf(turn.replace(/^(gate|short)-/, ""));
  const path = gate >= 0 ? ["gates", gate] : ["turns", turn];
  return { file, path, turn };
}

function group<T>(items: T[], pairOf: (item: T) => [string, string]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [key, value] of items.map(pairOf))
    groups.set(key, [...new Set([...(groups.get(key) ?? []), value])]);
  return groups;
}
