import type { ChartConfig, StateConfig, Transition, TurnMeta } from "../../chart/index.ts";

/**
 * One way out of a state. Guards are not looked at on purpose: what a guard forbids today, an edit may allow. Only the
 * proof about the water reads them, in `way`, for what they say of the water.
 */
export type Edge = { from: string; to: string; event: string; way?: Transition };

/** The composed chart as a plain graph over its leaf states. */
export type Graph = {
  start: string;
  leaves: Map<string, { meta: TurnMeta | null; ancestors: string[] }>;
  edges: Edge[];
  /** Targets that no state has. */
  broken: Edge[];
};

/** Draws every edge a leaf has, those it inherits included. */
export function graphOf(config: ChartConfig): Graph {
  const states = new Map<string, StateConfig>();
  const leaves: Graph["leaves"] = new Map();
  const ways: { from: string; event: string; way: Transition }[] = [];
  const visit = (state: StateConfig, ancestors: StateConfig[]) => {
    states.set(state.id, state);
    if (state.states) {
      for (const child of Object.values(state.states)) visit(child, [...ancestors, state]);
      return;
    }
    leaves.set(state.id, { meta: state.meta ?? null, ancestors: ancestors.map((one) => one.id) });
    for (const one of [state, ...ancestors])
      for (const [event, way] of waysOf(one)) ways.push({ from: state.id, event, way });
  };
  for (const state of Object.values(config.states)) visit(state, []);
  const edges: Edge[] = [];
  const broken: Edge[] = [];
  for (const { from, event, way } of ways) {
    const target = way.target.replace(/^#/, "");
    const leaf = leafOf(states.get(target), states);
    (leaf ? edges : broken).push({ from, to: leaf ?? target, event, way });
  }
  const first = leafOf(config.states[config.initial], states);
  return { start: first ?? config.initial, leaves, edges, broken };
}

function waysOf(state: StateConfig): [event: string, way: Transition][] {
  const all: [string, Transition[]][] = [
    ["", state.always ?? []],
    ...Object.entries(state.on ?? {}).map(([event, way]): [string, Transition[]] => [event, [way].flat()]),
  ];
  return all.flatMap(([event, ways]) => ways.map((way): [string, Transition] => [event, way]));
}

function leafOf(state: StateConfig | undefined, states: Map<string, StateConfig>): string | null {
  if (!state) return null;
  if (!state.states) return state.id;
  const first = state.initial ? state.states[state.initial] : undefined;
  return leafOf(first, states);
}

/** Every leaf that can be reached from `starts` along edges, forwards or backwards. */
export function reach(graph: Graph, starts: string[], direction: "forward" | "back"): Set<string> {
  const next = new Map<string, string[]>();
  for (const { from, to } of graph.edges) {
    const [source, target] = direction === "forward" ? [from, to] : [to, from];
    next.set(source, [...(next.get(source) ?? []), target]);
  }
  const seen = new Set(starts);
  const open = [...starts];
  while (open.length) {
    for (const target of next.get(open.pop() as string) ?? []) {
      if (seen.has(target)) continue;
      seen.add(target);
      open.push(target);
    }
  }
  return seen;
}

/**
 * The graph with every way back: who takes an answer back stands again at the turn before, as after an interruption,
 * so at its gate where it asks one.
 */
export function withWaysBack(graph: Graph): Graph {
  const landing = new Map<string, string>();
  for (const { from, to, event } of graph.edges) if (event === "session-resumed") landing.set(from, to);
  const back = graph.edges
    .filter(({ from, to }) => from !== to && graph.leaves.get(from)?.meta)
    .map(({ from, to }) => ({ from: to, to: landing.get(from) ?? from, event: "answer-taken-back" }));
  return { ...graph, edges: [...graph.edges, ...back] };
}
