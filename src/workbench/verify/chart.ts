import { composeChart } from "../../compile/index.ts";
import type { Flow, Path } from "../../guide/index.ts";
import { findKeptOpen, findUndeclared, findUngated } from "./gates.ts";
import { type Graph, graphOf, reach, withWaysBack } from "./graph.ts";
import type { Report } from "./report.ts";
import { findWaterForgotten } from "./water.ts";
import { emergency, findLostWays, findTrapped } from "./ways.ts";

/** Judges the whole composed chart, every way back included, and says each fault where the files have it. */
export function findChartFaults(flow: Flow, report: Report): void {
  const graph = graphOf(composeChart(flow));
  const lost = findLostWays(graph);
  for (const { code, state } of lost) {
    const { file, path, name } = placeIn(flow, state);
    if (code === "unreachable") report(code, file, path, `Nothing leads to ${name}.`, "key");
  }
  const stuck = lost.filter(({ code }) => code === "dead-end").map(({ state }) => state);
  reportStuck(flow, graph, stuck, report);
  if (findTrapped(graph).some(({ message }) => message.endsWith("danger.")))
    report(
      "no-way-out",
      "opening.yaml",
      ["turns"],
      "No answer of the opening is marked as a danger, so none can be reported later.",
      "key",
    );
  reportUngated(flow, graph, report);
  for (const { code, state, message } of findWaterForgotten(flow, graph)) {
    const isCheck = state in flow.checks;
    const { file, path } = isCheck
      ? { file: `checks/${state}.yaml`, path: ["restores"] }
      : placeIn(flow, state);
    report(code, file, path, message, "key");
  }
  for (const [check, hazards] of group(findUndeclared(flow), ({ state, message }) => [
    state,
    quoted(message)[2] ?? "",
  ]))
    report(
      "undeclared-hazard",
      `checks/${check}.yaml`,
      ["access"],
      `Check "${check}" works where a person is exposed to ${list(hazards)}, but does not say so.`,
    );
}

/** Turns that lead nowhere, and rings of turns that lead only to each other. What leads only there is no fault itself. */
function reportStuck(flow: Flow, graph: Graph, stuck: string[], report: Report): void {
  const edges = graph.edges.filter(
    ({ from, to, event }) => stuck.includes(from) && stuck.includes(to) && !emergency.test(event),
  );
  const ring = (leaf: string) => {
    const onward = edges.filter(({ from }) => from === leaf).map(({ to }) => to);
    const reached = reach({ ...graph, edges }, onward, "forward");
    return onward.length && reached.has(leaf) ? [...reached] : null;
  };
  const told = new Set<string>();
  for (const leaf of stuck) {
    const { file, path, name } = placeIn(flow, leaf);
    const round = ring(leaf);
    const back = round?.every((one) => ring(one)?.includes(leaf));
    if (!edges.some(({ from }) => from === leaf))
      report("dead-end", file, path, `From ${name} no answer leads on.`, "key");
    else if (round && back && !told.has(leaf)) {
      for (const one of round) told.add(one);
      const names = round.map((one) => placeIn(flow, one).turn).sort();
      report(
        "loop-without-exit",
        file,
        path,
        `The turns ${list(names)} of ${file} lead only to each other: no answer leads out.`,
        "key",
      );
    }
  }
}

/** Hazards of a check that some way meets without their gate, together. */
function reportUngated(flow: Flow, graph: Graph, report: Report): void {
  const faults = [...findUngated(flow, withWaysBack(graph)), ...findKeptOpen(graph)].map(
    ({ code, state, message }) => ({
      ...placeIn(flow, state),
      hazard: code === "ungated-hazard" ? quoted(message)[1] : undefined,
    }),
  );
  for (const [file, hazards] of group(faults, ({ file, hazard }) => [file, hazard ?? "a hazard"])) {
    const turns = [...new Set(faults.filter((one) => one.file === file).map(({ turn }) => turn))];
    const part = flow.checks[file.replace(/^checks\/|\.yaml$/g, "")]?.gates ? ["gates"] : ["access"];
    report(
      "ungated-hazard",
      file,
      part,
      `A person can come to ${list(turns)} and meet ${list(hazards)} without having confirmed a gate that covers it.`,
      "key",
    );
  }
}

type Spot = { file: string; path: Path; turn: string; name: string };

/** Where the files have a state of the chart. */
function placeIn(flow: Flow, state: string): Spot {
  const [first = "", second = "", third = ""] = state.split("/");
  const [check, turn] = first === "opening" ? [first, second] : [second, third];
  if (first in flow.scenarios && !(second in flow.checks))
    return { file: `scenarios/${first}.yaml`, path: ["id"], turn: first, name: `scenario "${first}"` };
  const file = check === "opening" ? "opening.yaml" : `checks/${check}.yaml`;
  const gates = flow.checks[check]?.gates ?? [];
  const path = turn.startsWith("gate-") ? ["gates", gates.indexOf(turn.slice(5))] : ["turns", turn];
  return {
    file,
    path,
    turn,
    name: `turn "${turn}" of ${check === "opening" ? "the opening" : `check "${check}"`}`,
  };
}

const quoted = (text: string) => [...text.matchAll(/"(.*?)"/g)].map(([, word = ""]) => word);
const list = (words: string[]) => words.map((word) => `"${word}"`).join(", ");

function group<T>(items: T[], pairOf: (item: T) => [string, string]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [key, value] of items.map(pairOf))
    groups.set(key, [...new Set([...(groups.get(key) ?? []), value])]);
  return groups;
}
