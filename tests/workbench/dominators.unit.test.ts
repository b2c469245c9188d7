import fc from "fast-check";
import { expect, test } from "vitest";
import { dominatorsOf, immediateDominators, type Successors } from "./dominators.ts";

test("finds the join of two branches, as in every textbook: the fork dominates it, neither branch does", () => {
  const diamond: Successors = new Map([
    ["start", ["fork"]],
    ["fork", ["left", "right"]],
    ["left", ["join"]],
    ["right", ["join"]],
  ]);
  expect(dominatorsOf("join", immediateDominators(diamond, "start"))).toEqual(["join", "fork", "start"]);
});

test("agrees with the definition on any graph: a node dominates what cannot be reached without it", () => {
  const size = 7;
  const anyGraph = fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 20 });
  fc.assert(
    fc.property(anyGraph, (pairs) => {
      const graph: Successors = new Map();
      for (const [from, to] of pairs) graph.set(`${from}`, [...(graph.get(`${from}`) ?? []), `${to}`]);
      const idom = immediateDominators(graph, "0");
      const reached = reachable(graph, "0", null);
      expect(new Set(idom.keys())).toEqual(reached);
      for (const node of reached) {
        const byDefinition = [...reached].filter(
          (one) => one === node || !reachable(graph, "0", one).has(node),
        );
        expect(dominatorsOf(node, idom).sort()).toEqual(byDefinition.sort());
      }
    }),
    { seed: 2001, numRuns: 300 },
  );
});

function reachable(graph: Successors, start: string, without: string | null): Set<string> {
  const seen = new Set<string>();
  const open = start === without ? [] : [start];
  while (open.length) {
    const node = open.pop() as string;
    if (seen.has(node)) continue;
    seen.add(node);
    open.push(...(graph.get(node) ?? []).filter((next) => next !== without));
  }
  return seen;
}
