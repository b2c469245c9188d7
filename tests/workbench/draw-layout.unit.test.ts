import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wordsOf, wrap } from "../../src/workbench/draw/condition-words.ts";
import { type Link, layersOf } from "../../src/workbench/draw/layers.ts";
import { placeTurns } from "../../src/workbench/draw/place-turns.ts";
import { escapeXml } from "../../src/workbench/draw/xml.ts";

describe("layers", () => {
  test("put each turn behind every turn that leads to it", () => {
    const links = [
      [0, 1],
      [0, 3],
      [1, 2],
      [2, 3],
    ].map(([from = 0, to = 0]) => ({ from, to }));
    expect(layersOf(4, links)).toEqual([0, 1, 2, 3]);
  });

  test("open a ring at the line that closes it", () => {
    const links = [
      [0, 1],
      [1, 2],
      [2, 0],
      [2, 2],
    ].map(([from = 0, to = 0]) => ({ from, to }));
    expect(layersOf(3, links)).toEqual([0, 1, 2]);
  });

  test("rise along every line of any chart without rings", () => {
    // Links from a lower to a higher number make no ring.
    const link = fc.tuple(fc.nat(11), fc.nat(11)).filter(([a, b]) => a !== b);
    fc.assert(
      fc.property(fc.array(link, { minLength: 1, maxLength: 30 }), (pairs) => {
        const links: Link[] = pairs.map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }));
        const layers = layersOf(12, links);
        return links.every(({ from, to }) => (layers[from] ?? 0) < (layers[to] ?? 0));
      }),
      { seed: 418 },
    );
  });
});

test("a turn that leads back to an earlier one, or to itself, gets a line around all turns", () => {
  const boxes = ["a", "b"].map((id) => ({
    id,
    title: id,
    isGate: false,
    exits: [
      { events: [`answered.${id}-on`], text: "on", to: "b" },
      { events: [`answered.${id}-back`], text: "back", to: "a" },
    ],
  }));
  const { turns, routes, height } = placeTurns(boxes);
  const bottom = Math.max(...turns.map((turn) => turn.y + turn.height));
  expect(routes).toHaveLength(4);
  const around = routes.filter(({ points }) => points.some(({ y }) => y > bottom));
  expect(around.map(({ from, to }) => `${from} ${to}`).sort()).toEqual(["a a", "b a", "b b"]);
  expect(height).toBeGreaterThan(bottom);
  expect(Math.min(...routes.flatMap(({ points }) => points.map(({ x }) => x)))).toBeGreaterThanOrEqual(0);
});

describe("a condition in words", () => {
  test.each([
    ["unwaited", "unwaited"],
    [{ answered: { turn: "a.b", is: ["x", "y"] } }, "a.b is x or y"],
    [{ all: [{ is: "cold" }, { any: [{ done: "a" }, { found: ["c"] }] }] }, "cold and (a done or found c)"],
    [{ not: { remedied: ["a", "b"] } }, "not (put right a or b)"],
    [{ verdict: { turn: "a.b", is: ["fails"] } }, "a.b fails"],
    [{ all: [] }, "always"],
    [{ any: [] }, "never"],
  ])("%j reads %s", (condition, words) => {
    expect(wordsOf(condition as never)).toBe(words);
  });

  test("breaks between words, never inside one", () => {
    expect(wrap("one two three-and-a-half four", 9)).toEqual(["one two", "three-and-a-half", "four"]);
  });
});

test("text becomes no markup", () => {
  expect(escapeXml('a < b & "c" > d')).toBe("a &lt; b &amp; &quot;c&quot; &gt; d");
});
