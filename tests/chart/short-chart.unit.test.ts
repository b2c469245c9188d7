import { describe, expect, test } from "vitest";
import { type ChartConfig, restoreChart, shortenChart } from "../../src/chart/index.ts";
import { compiledOnce } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";

const { start, scenarios } = compiledOnce(ownFlow);
const charts = [start.chart, ...scenarios.map(({ chart }) => chart)];

const chartWith = (note: Record<string, string>): ChartConfig => ({
  id: "small",
  initial: "door",
  states: {
    door: {
      id: "door",
      meta: { turn: "door.look", kind: "choice", check: "door" },
      on: { "answered.shut": { target: "#door", actions: [{ type: "remember", params: note }] } },
    },
  },
});

describe("a chart as it travels", () => {
  test.each(charts.map((chart) => [chart.id, chart] as const))("comes whole: %s", (_, chart) => {
    expect(restoreChart(JSON.parse(JSON.stringify(shortenChart(chart))))).toEqual(chart);
  });

  test("leaves out ids, and the turn and the answer that a note repeats", () => {
    const { door } = shortenChart(chartWith({ turn: "door.look", answer: "shut", done: "door" })).states;
    expect(door).not.toHaveProperty("id");
    expect(door?.on).toEqual({
      "answered.shut": { target: "#door", actions: [{ type: "remember", params: { done: "door" } }] },
    });
  });

  test("keeps a turn or an answer that its place does not say", () => {
    const chart = chartWith({ turn: "lid.look", answer: "open" });
    expect(restoreChart(shortenChart(chart))).toEqual(chart);
  });

  test("is refused where it could not be restored", () => {
    expect(() => shortenChart(chartWith({ done: "door" }))).toThrow(/"small"/);
    const moved = chartWith({ turn: "door.look", answer: "shut" });
    Object.assign(moved.states["door"] ?? {}, { id: "elsewhere" });
    expect(() => shortenChart(moved)).toThrow(/"small"/);
  });
});
