import { keepersOf, needsOf } from "../../compile/index.ts";
import {
  everyPreparation,
  type Flow,
  limitOf,
  type Preparation,
  preparations,
  stateAfter,
  statesIn,
} from "../../guide/index.ts";
import { emergency } from "./exits.ts";
import type { Edge, Graph } from "./graph.ts";
import { outcomesOf } from "./scope.ts";
import { afterStep, isPassable, type Stand, type Watch, waysFor } from "./stand.ts";
import type { ChartFault } from "./words-of-chart.ts";

/**
 * Walks the product of the chart and what is prepared over every scenario: one preparation at a time, and each gate with
 * all that it leaves. A guard counts as passable unless what it says of that is false at the stand; every other word may
 * hold or not, and no log is led. Whoever is at a turn may leave and come back at any time.
 * @returns turns that can be met in another state than they need; ways that end a search with something of ours not put
 * back, although nobody was asked to; endings that can be met so and do not speak of it; gates in short for somebody who
 * has not just confirmed them in full
 */
export function findUnprepared(flow: Flow, graph: Graph): ChartFault[] {
  const gates = Object.entries(flow.gates).map(([gate, { leaves }]): Watch => {
    const things = statesIn(leaves).map(([one]) => one);
    return { things, gate, keepers: keepersOf(flow) };
  });
  const single = everyPreparation.map((one): Watch => ({ things: [one], gate: null, keepers: keepersOf(flow) }));
  const faults = [...unsettled(flow), ...badShortGates(flow, graph)];
  for (const watch of [...single, ...gates]) faults.push(...walk(flow, graph, watch));
  return [...new Map(faults.map((one) => [JSON.stringify(one), one])).values()];
}

function walk(flow: Flow, graph: Graph, watch: Watch): ChartFault[] {
  const from = waysFor(graph.edges, watch);
  const faults: ChartFault[] = [];
  const tops = [...graph.leaves].flatMap(([leaf, { meta }]) => (meta?.outcome ? [topOf(leaf)] : []));
  const endings = new Set(tops);
  const restored = new Set(Object.values(flow.checks).flatMap(({ restores = [] }) => restores));
  const open: Stand[] = [{ leaf: graph.start, prepared: {}, leaks: [], confirmed: false, really: false }];
  const seen = new Set<string>();
  for (let here = open.pop(); here; here = open.pop()) {
    const { leaf, prepared, leaks, confirmed, really } = here;
    const states = watch.things.map((one) => prepared[one]);
    const key = `${leaf} ${states} ${leaks} ${confirmed} ${really}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const meta = graph.leaves.get(leaf)?.meta;
    const isChanged = (one: Preparation) => {
      const { ours, left } = preparations[one];
      return prepared[one] === ours || prepared[one] === left;
    };
    // What a turn needs is asked of the flow too, so that a chart cannot lose it.
    const [, name = ""] = meta?.turn.split(".") ?? [];
    const check = flow.checks[meta?.check ?? ""];
    const turn = check?.turns[name];
    const needed = check && turn ? needsOf(flow, check, turn) : {};
    for (const [of, is] of [...statesIn(meta?.needs), ...statesIn(needed)]) {
      if (!watch.things.includes(of)) continue;
      const isBack = is === preparations[of].back;
      if (isBack ? restored.has(of) && isChanged(of) : prepared[of] !== is)
        faults.push({ code: "wrong-state", state: leaf, of, is });
    }
    for (const of of watch.things)
      if (meta?.outcome && isChanged(of) && !meta.tells?.includes(of))
        faults.push({ code: "left-untold", state: leaf, of });
    const ways = from.get(leaf) ?? [];
    if (meta && !ways.some(({ event }) => event === "session-resumed")) open.push({ ...here, really: false });
    for (const edge of ways) {
      if (!isPassable(edge, here, watch)) continue;
      if (meta?.short && meta.gate === watch.gate && edge.event === "answered.ready" && !really)
        if (!graph.leaves.get(edge.to)?.meta?.gate || edge.to.includes("/short-"))
          faults.push({ code: "short-too-long", state: leaf, gate: meta.gate ?? "" });
      const next = afterStep(edge, here, watch, meta ?? null);
      const ends = endings.has(topOf(edge.to)) && !endings.has(topOf(leaf)) && !emergency.test(edge.event);
      // An answer may end a session at once: then the ending says what is to be put back. Only the tap is asked about first.
      for (const of of ends && topOf(edge.to) !== "stopped" ? watch.things : []) {
        const kept =
          of === "water"
            ? flow.scenarios[topOf(leaf)]?.keeps || next.leaks.length || watch.keepers.includes(causeOf(edge))
            : meta || !restored.has(of);
        if (next.prepared[of] === preparations[of].ours && !kept)
          faults.push({ code: "left-changed", state: leaf, to: edge.to, of });
      }
      open.push(next);
    }
  }
  return faults;
}

const topOf = (leaf: string) => leaf.split("/")[0] ?? "";
const causeOf = ({ way }: Edge) => way?.actions?.map(({ params }) => params.cause ?? "").at(-1) ?? "";

/** Answers of a check that puts things back and do not say how they leave them: it would be asked for ever. */
function unsettled(flow: Flow): ChartFault[] {
  return Object.values(flow.checks).flatMap((check) => {
    const open = (check.restores ?? []).filter((of) =>
      outcomesOf(check).some(({ to, leaves }) => {
        const state = leaves?.[of];
        return to === "done" && (!state || stateAfter(of, preparations[of].ours, state) === preparations[of].ours);
      }),
    );
    return open.map((of) => ({ code: "left-unsettled" as const, state: check.id, of }));
  });
}

/** Gates in short whose way on is not bound to a full confirmation of that very gate, a short while ago. */
function badShortGates(flow: Flow, graph: Graph): ChartFault[] {
  const most = limitOf(flow.limits, "gate-short-minutes");
  return graph.edges.flatMap(({ from, to, event, way }) => {
    const { short, gate = "" } = graph.leaves.get(from)?.meta ?? {};
    if (!short || event !== "answered.ready" || to.endsWith(`/gate-${gate}`)) return [];
    const { type, params = {} } = way?.guard ?? {};
    const { leaves = {} } = flow.gates[gate] ?? {};
    const isBound =
      type === "fresh" &&
      params.gate === gate &&
      (params.minutes as number) <= most &&
      JSON.stringify(params.leaves) === JSON.stringify(leaves);
    return isBound ? [] : [{ code: "short-too-long" as const, state: from, gate }];
  });
}
