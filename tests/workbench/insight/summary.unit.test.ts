import { describe, expect, test } from "vitest";
import { type InsightLine, insightBounds } from "../../../src/insight/index.ts";
import {
  countLine,
  createTally,
  drawSummary,
  printSummary,
  summarise,
  summaryPage,
} from "../../../src/workbench/insight/index.ts";

const ended = (minutes: number, outcome = "fixed", cause: string | null = "door-ajar") =>
  ({
    ...{ format: 1, what: "ended", scenario: "no-ice", outcome, cause },
    ...{ part: null, minutes, answers: 5 },
  }) as InsightLine;
const left = (turn: string, kind = "choice") =>
  ({
    ...{ format: 1, what: "left", scenario: "no-ice", turn, kind },
    ...{ minutes: 1, answers: 1 },
  }) as InsightLine;
const returned = (turn: string) => ({ format: 1, what: "returned", scenario: "no-ice", turn }) as InsightLine;

function summaryOf(...lines: (InsightLine | null)[]) {
  const tally = createTally();
  for (const line of lines) countLine(tally, line);
  return summarise(tally);
}

describe("a summary of outcomes", () => {
  test("says of how many it was said a day later that it works, by ending and cause", () => {
    const lasted = (works: boolean, of: { cause?: string } = {}) =>
      ({
        ...{ format: 1, what: "lasted", scenario: "no-ice", outcome: "fixed", works, days: 1, ...of },
      }) as InsightLine;
    const jammed = { cause: "ice-jammed" };
    const summary = summaryOf(
      ...[lasted(true), lasted(true), lasted(false), lasted(true, jammed), lasted(true, jammed)],
      lasted(true, jammed),
    );
    expect(summary.scenarios[0]?.lasted).toEqual([
      { id: "fixed works", count: 5 },
      { id: "fixed fails", count: 1 },
    ]);
    expect(summary.scenarios[0]?.held).toEqual([{ id: "fixed ice-jammed works", count: 3 }]);
    expect(printSummary(summary)).toContain("asked a day or more later");
  });

  test("says how searches ended, in which share, and the median of their minutes", () => {
    const { scenarios } = summaryOf(ended(2), ended(9), ended(4, "part"), ended(30, "professional", null));
    expect(scenarios).toMatchObject([
      {
        id: "no-ice",
        endings: 4,
        medianMinutes: 4,
        ended: [
          { id: "fixed", count: 2, share: 0.5 },
          { id: "part", count: 1, share: 0.25 },
          { id: "professional", count: 1, share: 0.25 },
        ],
        causes: [
          { id: "fixed door-ajar", count: 2 },
          { id: "part door-ajar", count: 1 },
        ],
      },
    ]);
  });

  test("counts as given up only who left and did not come back, wherever lines stand", () => {
    const { scenarios } = summaryOf(
      ...[returned("a.b"), left("a.b"), left("a.b"), left("a.b")],
      ...[left("c.d"), returned("c.d"), returned("e.f")],
    );
    expect(scenarios[0]?.gaveUp).toEqual([{ id: "a.b", count: 2 }]);
  });

  test("calls who is away during a wait no loss", () => {
    const { scenarios } = summaryOf(left("ice.wait", "wait"), left("a.b"));
    expect(scenarios[0]).toMatchObject({
      gaveUp: [{ id: "a.b", count: 1 }],
      waiting: [{ id: "ice.wait", count: 1 }],
    });
  });

  test("counts lines that could not be read, and says so", () => {
    const summary = summaryOf(null, { format: 1, what: "started" }, null);
    expect(summary).toMatchObject({ lines: 3, bad: 2, started: 1 });
    expect(printSummary(summary)).toContain(
      "1 search began and 0 ended. 2 of 3 lines could not be read and were left out.",
    );
  });

  test("names the codes that were not found most often first, and bounds how many it tells apart", () => {
    const missing = (code: string) =>
      ({ format: 1, what: "model-missing", scenario: null, code }) as InsightLine;
    const tally = createTally();
    for (let code = 0; code < insightBounds.counted + 50; code++) countLine(tally, missing(`ZQ${code}`));
    countLine(tally, missing("ZQ7"));
    expect(tally.missing.of.size).toBe(insightBounds.counted);
    expect(tally.missing.others).toBe(50);
    expect(summarise(tally).missing[0]).toEqual({ id: "ZQ7", count: 2 });
    expect(summarise(tally).missing.at(-1)).toEqual({ id: "others", count: insightBounds.counted + 50 - 20 });
  });
});

describe("a report", () => {
  const planted = `<img src=x onerror="alert(1)">`;
  const summary = summaryOf(ended(3), left("a.b"), { format: 1, what: "started" });
  // Whoever changes the schema need not know who trusts it.
  const hostile = {
    ...summary,
    missing: [{ id: planted, count: 1 }],
    scenarios: summary.scenarios.map((one) => ({
      ...one,
      id: planted,
      gaveUp: [{ id: planted, count: 3 }],
    })),
  };

  test.each([
    ["page", summaryPage],
    ["drawing", drawSummary],
  ])("shows whatever stands in a file as text: %s", (_, draw) => {
    const made = draw(hostile);
    expect(made).not.toContain("<img");
    expect(made).toContain("&lt;img");
    expect(made).not.toMatch(/<script|<[^>]*\s(on\w+|href|src)=/i);
  });

  test("stands alone: it fetches nothing", () => {
    expect(summaryPage(summary)).toContain("default-src 'none'");
    expect(summaryPage(summary).replace("http://www.w3.org/2000/svg", "")).not.toMatch(
      /https?:|url\(|@import/,
    );
  });

  test("has the same numbers in each of its forms", () => {
    for (const made of [printSummary(summary), summaryPage(summary), drawSummary(summary)]) {
      expect(made).toContain("1 search began and 1 ended.");
      expect(made).toContain("no-ice");
      expect(made).toContain("a.b");
      expect(made).toContain("median 3 minutes");
    }
  });

  test("of nothing says so and is whole", () => {
    expect(drawSummary(summaryOf())).toMatch(/^<svg .*0 searches began.*<\/svg>\n$/s);
  });
});
