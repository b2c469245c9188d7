import { keepersOf, needsOf } from "../../compile/index.ts";
import {
  everyPreparation,
  type Flow,
  limitOf,
  type Preparation,
  preparations,
  stateAfter,
} from "../../guide/index.ts";
import { emergency } from "./exits.ts";
import type { Edge, Graph } from "./graph.ts";
import { outcomesOf } from "./scope.ts";
import {
  afterStep,
  atFirst,
  createStands,
  isPassable,
  type Stand,
  type Watch,
  waysFor,
  withoutTwins,
} from "./stand.ts";
import type { ChartFault } from "./words-of-chart.ts";

/**
 * Walks the product of the chart and what is prepared over every scenario: with one preparation at a time, and with each
 * gate's confirmation. A guard counts as passable unless what it says of that is false at the stand; every other word may
 * hold or not, and no log is led. Whoever is at a turn may leave and come back at any time.
 * @returns turns that can be met in another state than they need; ways that end a search with something of ours not put
 * back, although nobody was asked to; endings that can be met so and do not speak of it; gates in short for somebody who
 * has not just confirmed them in full
 */
export function findUnprepared(flow: Flow, graph: Graph): ChartFault[] {
  const keepers = keepersOf(flow);
  const walks = [
    ...everyPreparation.map((one): Watch => ({ one, gate: null, leaves: {}, keepers })),
    ...Object.entries(flow.gates).map(
      ([gate, { leaves = {} }]): Watch => ({ one: null, gate, leaves, keepers }),
    ),
  ];
  const faults = [...unsettled(flow), ...badShortGates(flow, graph)];
  const edges = withoutTwins(graph.edges);
  for (const watch of walks) faults.push(...walk(flow, { ...graph, edges }, watch));
  return [...new Map(faults.map((one) => [JSON.stringify(one), one])).values()];
}

function walk(flow: Flow, graph: Graph, watch: Watch): ChartFault[] {
  const from = waysFor(graph.edges, watch);
  const { one: of, gate, keepers } = watch;
  const faults: ChartFault[] = [];
  // A scenario has an ending of its own, and is none itself.
  const endingAt = (leaf: string) => (Object.hasOwn(flow.scenarios, topOf(leaf)) ? leaf : topOf(leaf));
  const endings = new Set(
    [...graph.leaves].flatMap(([leaf, { meta }]) => (meta?.outcome ? [endingAt(leaf)] : [])),
  );
  const restored = new Set(Object.values(flow.checks).flatMap(({ restores = [] }) => restores));
  const needed = new Map<string, Set<string>>();
  /** What a turn needs is asked of the flow too, so that a chart cannot lose it. */
  const neededAt = (leaf: string, one: Preparation) => {
    const before = needed.get(leaf);
    if (before) return before;
    const meta = graph.leaves.get(leaf)?.meta;
    const check = flow.checks[meta?.check ?? ""];
    const turn = check?.turns[meta?.turn.split(".")[1] ?? ""];
    const both = [meta?.needs?.[one], check && turn && needsOf(flow, check, turn)[one]];
    const needs = new Set(both.flatMap((is) => is ?? []));
    needed.set(leaf, needs);
    return needs;
  };
  const same = createStands();
  const open: { leaf: string; stand: Stand }[] = [{ leaf: graph.start, stand: same(atFirst) }];
  const seen = new Map<string, Set<Stand>>();
  /** Each place is looked at once in each stand. */
  const goTo = (leaf: string, reached: Stand) => {
    const top = topOf(leaf);
    const moves = top !== reached.scenario && Object.hasOwn(flow.scenarios, top);
    const stand = same(moves ? { ...reached, scenario: top } : reached);
    const stands = seen.get(leaf) ?? new Set();
    if (stands.has(stand)) return;
    seen.set(leaf, stands.add(stand));
    open.push({ leaf, stand });
  };
  for (let here = open.pop(); here; here = open.pop()) {
    const { leaf, stand } = here;
    const { state, really } = stand;
    const meta = graph.leaves.get(leaf)?.meta;
    if (of) {
      const isChanged = state === preparations[of].ours || state === preparations[of].left;
      for (const is of neededAt(leaf, of))
        if (is === preparations[of].back ? restored.has(of) && isChanged : state !== is)
          faults.push({ code: "wrong-state", state: leaf, of, is });
      if (meta?.outcome && isChanged && !meta.tells?.includes(of))
        faults.push({ code: "left-untold", state: leaf, of });
    }
    const ways = from.get(leaf) ?? [];
    if (meta && !ways.some(({ event }) => event === "session-resumed"))
      goTo(leaf, stand.really ? { ...stand, really: false } : stand);
    for (const edge of ways) {
      if (!isPassable(edge, stand, watch)) continue;
      // What leads back into a search asks the opening's answers, which are those that led into it.
      if (edge.event === "trouble-returned" && stand.scenario && stand.scenario !== topOf(edge.to)) continue;
      const inShort = gate && meta?.short && meta.gate === gate && edge.event === "answered.ready";
      if (inShort && !really && !edge.to.endsWith(`/gate-${gate}`))
        faults.push({ code: "short-too-long", state: leaf, gate });
      const next = afterStep(edge, stand, watch, meta ?? null);
      const mayForget = of && next.state === preparations[of].ours && topOf(edge.to) !== "stopped";
      const ends = mayForget && endings.has(endingAt(edge.to)) && !endings.has(endingAt(leaf));
      if (ends && !emergency.test(edge.event)) {
        // An answer may end a session at once, and the ending says what is to be put back. Only a tap is asked about first.
        const water =
          flow.scenarios[topOf(leaf)]?.keeps || next.leaks.length || keepers.includes(causeOf(edge));
        // Where no scenario takes what the opening was told, its last answer ends the session.
        const atOnce = meta || topOf(leaf) === "routing";
        if (!(of === "water" ? water : atOnce || !restored.has(of)))
          faults.push({ code: "left-changed", state: leaf, to: edge.to, of });
      }
      goTo(edge.to, next);
    }
  }
  return faults;
}

const tops = new Map<string, string>();
/** A walk asks for it at every edge. */
function topOf(leaf: string): string {
  const top = tops.get(leaf) ?? leaf.split("/")[0] ?? "";
  tops.set(leaf, top);
  return top;
}

const causeOf = ({ way }: Edge) => way?.actions?.map(({ params }) => params.cause ?? "").at(-1) ?? "";

/** Answers of a check that puts things back and do not say how they leave them: it would be asked for ever. */
function unsettled(flow: Flow): ChartFault[] {
  return Object.values(flow.checks).flatMap((check) => {
    const open = (check.restores ?? []).filter((of) =>
      outcomesOf(check).some(({ to, leaves }) => {
        const state = leaves?.[of];
        return (
          to === "done" && (!state || stateAfter(of, preparations[of].ours, state) === preparations[of].ours)
        );
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
