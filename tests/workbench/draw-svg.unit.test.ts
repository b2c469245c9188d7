import { describe, expect, test } from "vitest";
import { composeChart } from "../../src/compile/index.ts";
import { drawSvg } from "../../src/workbench/draw/index.ts";
import { ownFlow } from "../own-flow.ts";
import { readDrawing, waysOf } from "./drawn.ts";

const flow = ownFlow;
const config = composeChart(flow);

describe.each(Object.keys(flow.scenarios))("the drawing of %s", (scenario) => {
  const svg = drawSvg(flow, scenario);
  const { root, turns, ways, lines, hazards } = readDrawing(svg);

  test("shows every turn and gate of the scenario once", () => {
    const states = Object.values(config.states[scenario]?.states ?? {}).flatMap((check) =>
      Object.values(check.states ?? {}),
    );
    const waiting = states.filter(({ meta }) => meta).map(({ id }) => id);
    expect(turns.map(({ id }) => id).sort()).toEqual(waiting.sort());
  });

  test("shows every answer and where it leads, and nothing that is not in the chart", () => {
    expect(ways.sort()).toEqual(waysOf(config, scenario).sort());
  });

  test("keeps its turns apart and within the page", () => {
    const [, , width = 0, height = 0] = (root.getAttribute("viewBox") ?? "").split(" ").map(Number);
    for (const one of turns) {
      expect(one.x + one.width).toBeLessThan(width);
      expect(one.y + one.height).toBeLessThan(height);
    }
    const touching = turns.flatMap((a, at) =>
      turns
        .slice(at + 1)
        .filter(
          (b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height,
        ),
    );
    expect(touching).toEqual([]);
  });

  test("leads its lines level or upright, from turn to turn, and through none", () => {
    for (const { from, to, points } of lines) {
      const [first, last] = [points[0], points.at(-1)];
      const [source, target] = [turns.find(({ id }) => id === from), turns.find(({ id }) => id === to)];
      expect([first?.x, last?.x]).toEqual([(source?.x ?? 0) + (source?.width ?? 0), target?.x]);
      for (const [at, point] of points.slice(1).entries()) {
        const before = points[at] ?? point;
        expect(point.x === before.x || point.y === before.y).toBe(true);
        const [left, right] = [Math.min(point.x, before.x), Math.max(point.x, before.x)];
        const [top, bottom] = [Math.min(point.y, before.y), Math.max(point.y, before.y)];
        const crossed = turns.filter(
          (box) => left < box.x + box.width && right > box.x && top < box.y + box.height && bottom > box.y,
        );
        expect(crossed.map(({ id }) => id)).toEqual([]);
      }
    }
  });

  test("marks each check that exposes a person to a hazard, and names its hazards", () => {
    for (const { check: id } of flow.scenarios[scenario]?.checks ?? []) {
      const check = flow.checks[id];
      const all = [...(flow.access[check?.access ?? ""] ?? []), ...(check?.hazards ?? [])];
      const shown = hazards.get(id);
      expect(shown?.marked).toBe(all.length > 0);
      for (const hazard of all) expect(shown?.words).toContain(`${flow.hazards[hazard]?.signal}: ${hazard}`);
    }
  });

  test("frames the checks by their stations", () => {
    for (const group of root.querySelectorAll("[data-station]"))
      for (const check of group.querySelectorAll("[data-check]"))
        expect(flow.checks[check.getAttribute("data-check") ?? ""]?.station).toBe(
          group.getAttribute("data-station"),
        );
  });

  test("says nothing by colour, needs no font of its own and loads nothing", () => {
    const colours = [...svg.matchAll(/#[0-9a-f]{3,6}\b/gi)]
      .map(([colour]) => colour)
      .filter((one) => one !== "#head");
    expect(new Set(colours)).toEqual(new Set(["#000", "#fff"]));
    expect([...svg.matchAll(/font: \S+ (.*?);/g)].map(([, family]) => family)).toEqual(["sans-serif"]);
    expect(svg.replace("http://www.w3.org/2000/svg", "")).not.toMatch(/https?:|href|@import|<image|<script/);
    expect(root.querySelector("title")?.textContent).toBe(scenario);
  });
});

test("a scenario that does not exist is refused with the names of those that do", () => {
  expect(() => drawSvg(flow, "no-ise")).toThrow(
    /There is no scenario "no-ise"\. There are: .*no-ice-plumbed/,
  );
});
