import { choose, dateField, showAge } from "./instruments.ts";
import { expect, test } from "./panel-test.ts";

test.describe("the age of the water filter", () => {
  test.beforeEach(({ panel }) => panel.openWhere("filter-age.fitted"));

  test("a day that cannot be is told at the date, stays typed, and is not kept", async ({ panel }) => {
    const kept = await panel.storedText();
    const unreadable = (typed: string) => panel.text("measure.unreadable-date", { typed });
    await choose(panel, "measure.by-date");
    for (const [day, month, year, said] of [
      ["", "", "", panel.text("measure.date-empty")],
      ["31", "2", "2025", panel.text("measure.date-no-such-day")],
      ["0", "5", "2025", panel.text("measure.date-no-such-day")],
      ["3", "3", "2026", panel.text("measure.date-in-future", { today: "2 March 2026" })],
      ["31", "12", "1989", panel.text("measure.date-too-long-ago", { year: 1990 })],
      ["12abc", "5", "2025", unreadable("12abc")],
      ["-1", "5", "2025", unreadable("-1")],
      ["1,5", "5", "2025", unreadable("1,5")],
      ["1", "5", "20255", unreadable("20255")],
    ] as const) {
      await dateField(panel, "day").fill(day);
      await dateField(panel, "month").fill(month);
      await dateField(panel, "year").fill(year);
      await showAge(panel);
      await expect(panel.host.getByText(said)).toBeVisible();
      await expect(dateField(panel, "day")).toHaveValue(day);
      await expect(dateField(panel, "year")).toHaveValue(year);
    }
    await panel.seesTurn();
    expect(await panel.storedText()).toBe(kept);
  });

  test("a month without a year, and a season to come, are asked for again", async ({ panel }) => {
    await showAge(panel);
    await expect(panel.host.getByText(panel.text("measure.month-empty"))).toBeVisible();
    await choose(panel, "measure.by-season");
    await choose(panel, "measure.autumn");
    await dateField(panel, "year").fill("2026");
    await showAge(panel);
    await expect(
      panel.host.getByText(panel.text("measure.date-in-future", { today: "2 March 2026" })),
    ).toBeVisible();
    await panel.seesTurn();
  });

  // Six calendar months back from 2 March 2026 is 2 September 2025.
  for (const [date, verdict] of [
    ["2025-09-02", "fails"],
    ["2025-09-03", "passes"],
  ] as const) {
    test(`a filter fitted on ${date} ${verdict} on 2 March 2026`, async ({ panel }) => {
      await panel.measure({ kind: "filter-age", fitted: { by: "date", date } });
      const kept = await panel.storedEvents();
      expect(kept).toContainEqual(expect.objectContaining({ turn: "filter-age.fitted" }));
      await panel.seesLine("filter-age.fitted", verdict);
    });
  }

  for (const fitted of [
    { by: "month", month: "2025-02" },
    { by: "season", season: "summer", year: 2025 },
    { by: "since-moving", month: "2024-11" },
  ] as const) {
    test(`it can be said as roughly as by ${fitted.by}`, async ({ panel }) => {
      await panel.measure({ kind: "filter-age", fitted });
      expect(await panel.storedEvents()).toContainEqual(
        expect.objectContaining({ turn: "filter-age.fitted", reading: { kind: "filter-age", fitted } }),
      );
    });
  }
});
