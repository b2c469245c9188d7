import { keepersOf, needsOf } from "../../compile/index.ts";
import { everyPreparation, type Flow, limitOf, preparations, stateAfter } from "../../guide/index.ts";
import { emergency } from "./exits.ts";
import type { Edge, Graph } from "./graph.ts";
import { outcomesOf } from "./scope.ts";
import { afterStep, isPassable, type Stand, type Watch, waysFor, withoutTwins } from "./stand.ts";
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
  const open: Stand[] = [
    { leaf: graph.start, scenario: null, state: null, leaks: [], confirmed: false, really: false },
  ];
  const seen = new Map<string, Set<string>>();
  /** Each stand is looked at once. */
  const goTo = (reached: Stand) => {
    const top = topOf(reached.leaf);
    const stand = Object.hasOwn(flow.scenarios, top) ? { ...reached, scenario: top } : reached;
    const key = `${stand.scenario} ${stand.state} ${stand.leaks} ${stand.confirmed} ${stand.really}`;
    const keys = seen.get(stand.leaf) ?? new Set();
    if (keys.has(key)) return;
    seen.set(stand.leaf, keys.add(key));
    open.push(stand);
  };
  for (let here = open.pop(); here; here = open.pop()) {
    const { leaf, state, really } = here;
    const meta = graph.leaves.get(leaf)?.meta;
    if (of) {
      const isChanged = state === preparations[of].ours || state === preparations[of].left;
      // What a turn needs is asked of the flow too, so that a chart cannot lose it.
      const check = flow.checks[meta?.check ?? ""];
      const turn = check?.turns[meta?.turn.split(".")[1] ?? ""];
      for (const is of [meta?.needs?.[of], check && turn && needsOf(flow, check, turn)[of]])
        if (is && (is === preparations[of].back ? restored.has(of) && isChanged : state !== is))
          faults.push({ code: "wrong-state", state: leaf, of, is });
      if (meta?.outcome && isChanged && !meta.tells?.includes(of))
        faults.push({ code: "left-untold", state: leaf, of });
    }
    const ways = from.get(leaf) ?? [];
    if (meta && !ways.some(({ event }) => event === "session-resumed")) goTo({ ...here, really: false });
    for (const edge of ways) {
      if (!isPassable(edge, here, watch)) continue;
      // What leads back into a search asks the opening's answers, which are those that led into it.
      if (edge.event === "trouble-returned" && here.scenario && here.scenario !== topOf(edge.to)) continue;
      const inShort = gate && meta?.short && meta.gate === gate && edge.event === "answered.ready";
      if (inShort && !really && !edge.to.endsWith(`/gate-${gate}`))
        faults.push({ code: "short-too-long", state: leaf, gate });
      const next = afterStep(edge, here, watch, meta ?? null);
      const ends =
        endings.has(endingAt(edge.to)) && !endings.has(endingAt(leaf)) && !emergency.test(edge.event);
      if (of && ends && topOf(edge.to) !== "stopped" && next.state === preparations[of].ours) {
        // An answer may end a session at once, and the ending says what is to be put back. Only a tap is asked about first.
        const water =
          flow.scenarios[topOf(leaf)]?.keeps || next.leaks.length || keepers.includes(causeOf(edge));
        // Where no scenario takes what the opening was told, its last answer ends the session.
        const atOnce = meta || topOf(leaf) === "routing";
        if (!(of === "water" ? water : atOnce || !restored.has(of)))
          faults.push({ code: "left-changed", state: leaf, to: edge.to, of });
      }
      goTo(next);
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
