/** A directed graph: the successors of each node. */
export type Successors = Map<string, string[]>;

/**
 * The immediate dominator of every node that `start` reaches: the last node that every way from the start to it
 * passes. The iterative algorithm of Cooper, Harvey and Kennedy, "A Simple, Fast Dominance Algorithm" (2001),
 * figure 3.
 */
export function immediateDominators(graph: Successors, start: string): Map<string, string> {
  const order = reversePostorder(graph, start);
  const rank = new Map(order.map((node, at) => [node, at]));
  const before = new Map<string, string[]>();
  for (const node of order)
    for (const next of graph.get(node) ?? []) before.set(next, [...(before.get(next) ?? []), node]);
  const idom = new Map([[start, start]]);
  const intersect = (a: string, b: string): string => {
    let [one, other] = [a, b];
    while (one !== other) {
      if ((rank.get(one) ?? 0) > (rank.get(other) ?? 0)) one = idom.get(one) ?? start;
      else other = idom.get(other) ?? start;
    }
    return one;
  };
  for (let changed = true; changed; ) {
    changed = false;
    for (const node of order.slice(1)) {
      const known = (before.get(node) ?? []).filter((from) => idom.has(from));
      const nearest = known.reduce(intersect);
      if (idom.get(node) === nearest) continue;
      idom.set(node, nearest);
      changed = true;
    }
  }
  return idom;
}

/** Every node that all ways from the start to `node` pass, the node itself included. */
export function dominatorsOf(node: string, idom: Map<string, string>): string[] {
  const all = [node];
  for (let here = node; idom.get(here) !== undefined && idom.get(here) !== here; ) {
    here = idom.get(here) as string;
    all.push(here);
  }
  return all;
}

function reversePostorder(graph: Successors, start: string): string[] {
  const seen = new Set<string>();
  const finished: string[] = [];
  const visit = (node: string) => {
    seen.add(node);
    for (const next of graph.get(node) ?? []) if (!seen.has(next)) visit(next);
    finished.push(node);
  };
  visit(start);
  return finished.reverse();
}
