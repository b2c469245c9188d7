import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { monthsBetween } from "../../measuring/index.ts";
import { assessFilterAge } from "./age.ts";
import { checkFittedWhen } from "./check.ts";
import type { FittedWhen, Season } from "./reading.ts";

// A filter lasts six months: common practice, no source.
const today = "2026-03-15";
const limits = { earliest: "1990-01-01" };
const assess = (fitted: FittedWhen, on = today) => assessFilterAge({ kind: "filter-age", fitted }, on, 6);
const season = (name: Season, year: number, hemisphere?: "north" | "south"): FittedWhen => ({
  by: "season",
  season: name,
  year,
  hemisphere,
});

describe("fitted on a known day", () => {
  test("the age is a point, and it is due six months on, clamped at the month's end (W12)", () => {
    const { months, dueOn } = assess({ by: "date", date: "2025-08-31" });
    expect(months.low).toBe(months.high);
    expect(dueOn).toEqual({ earliest: "2026-02-28", latest: "2026-02-28" });
  });

  test("passes on the day before it is due and fails on the day: a known day is never unclear", () => {
    const fitted: FittedWhen = { by: "date", date: "2025-08-31" };
    expect(assess(fitted, "2026-02-27").verdict).toBe("passes");
    expect(assess(fitted, "2026-02-28").verdict).toBe("fails");
  });

  test("fitted today is no months old", () => {
    expect(assess({ by: "date", date: today }).months).toEqual({ low: 0, high: 0 });
  });
});

describe("fitted in a month", () => {
  test("the age runs from that of the month's last day to that of its first", () => {
    const { months, dueOn } = assess({ by: "month", month: "2024-02" });
    expect(months).toEqual({
      low: monthsBetween("2024-02-29", today),
      high: monthsBetween("2024-02-01", today),
    });
    expect(dueOn).toEqual({ earliest: "2024-08-01", latest: "2024-08-29" });
  });

  test("in the month in which it becomes due it is unclear, before that it passes, after that it fails", () => {
    const fitted: FittedWhen = { by: "month", month: "2025-09" };
    expect(assess(fitted, "2026-02-28").verdict).toBe("passes");
    expect(assess(fitted, "2026-03-01").verdict).toBe("unclear");
    expect(assess(fitted, "2026-03-29").verdict).toBe("unclear");
    expect(assess(fitted, "2026-03-30").verdict).toBe("fails");
  });

  test("this month is cut at today", () => {
    const { months, dueOn, verdict } = assess({ by: "month", month: "2026-03" });
    expect(months).toEqual({ low: 0, high: monthsBetween("2026-03-01", today) });
    expect(dueOn).toEqual({ earliest: "2026-09-01", latest: "2026-09-15" });
    expect(verdict).toBe("passes");
  });
});

// Meteorological seasons, whole months from March, June, September and December: national weather
// services.
describe("fitted in a season", () => {
  const dues = (fitted: FittedWhen) => assess(fitted).dueOn;

  test("summer 2025 in the north is June to August", () => {
    expect(dues(season("summer", 2025))).toEqual({ earliest: "2025-12-01", latest: "2026-02-28" });
    expect(dues(season("summer", 2025, "north"))).toEqual(dues(season("summer", 2025)));
  });

  test("winter 2024 is December 2024 to February 2025", () => {
    expect(dues(season("winter", 2024))).toEqual({ earliest: "2025-06-01", latest: "2025-08-28" });
  });

  test("in the south summer 2024 is December 2024 to February 2025 and winter 2024 June to August", () => {
    expect(dues(season("summer", 2024, "south"))).toEqual(dues(season("winter", 2024)));
    expect(dues(season("winter", 2024, "south"))).toEqual(dues(season("summer", 2024)));
    expect(dues(season("spring", 2024, "south"))).toEqual(dues(season("autumn", 2024)));
    expect(dues(season("autumn", 2024, "south"))).toEqual(dues(season("spring", 2024)));
  });

  test("a season that is still running is cut at today", () => {
    const { months, dueOn } = assess(season("spring", 2026));
    expect(months.low).toBe(0);
    expect(dueOn.latest).toBe("2026-09-15");
  });
});

describe("never changed since moving in", () => {
  const since = (month: string): FittedWhen => ({ by: "since-moving", month });

  test("it is at least that old, with no upper bound, and due no later than that", () => {
    expect(assess(since("2024-02"))).toEqual({
      months: { low: monthsBetween("2024-02-29", today), high: null },
      verdict: "fails",
      dueOn: { earliest: null, latest: "2024-08-29" },
    });
  });

  test("moved in lately: it may be old all the same, so it never passes", () => {
    expect(assess(since("2025-12")).verdict).toBe("unclear");
    expect(assess(since("2026-03")).months).toEqual({ low: 0, high: null });
    expect(assess(since("2026-03")).verdict).toBe("unclear");
  });
});

describe("any answer", () => {
  const dayIn = (year: number, month: number, day: number) =>
    Temporal.PlainDate.from({ year, month, day }).toString();
  const day = fc
    .tuple(
      fc.integer({ min: 2000, max: 2026 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 31 }),
    )
    .map(([year, month, number]) => dayIn(year, month, number));
  const pastDay = day.filter((date) => date <= today);

  /** The season of a day, worked out from its month alone. */
  const seasonOf = (date: string): FittedWhen => {
    const [year, month] = [Number(date.slice(0, 4)), Number(date.slice(5, 7))];
    const name =
      (["winter", "spring", "summer", "autumn"] as const)[Math.floor((month % 12) / 3)] ?? "winter";
    return season(name, month < 3 ? year - 1 : year);
  };

  test("an interval contains the point value of the day that it stands for", () => {
    fc.assert(
      fc.property(pastDay, (date) => {
        const point = assess({ by: "date", date });
        const month = date.slice(0, 7);
        for (const vague of [
          { by: "month", month } as const,
          seasonOf(date),
          { by: "since-moving", month } as const,
        ]) {
          const { months, dueOn, verdict } = assess(vague);
          expect(months.low).toBeLessThanOrEqual(point.months.low);
          expect(months.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(point.months.low);
          expect((dueOn.earliest ?? "") <= (point.dueOn.earliest ?? "")).toBe(true);
          expect((dueOn.latest ?? "") >= (point.dueOn.latest ?? "")).toBe(true);
          // A vague answer may be unclear, but it never contradicts the exact one.
          expect([point.verdict, "unclear"]).toContain(verdict);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test("with time a verdict only moves from passes over unclear to fails", () => {
    const rank = { passes: 0, unclear: 1, fails: 2 };
    fc.assert(
      fc.property(pastDay, day, day, (date, a, b) => {
        const [early, late] = a < b ? [a, b] : [b, a];
        fc.pre(date <= early);
        for (const fitted of [
          { by: "date", date } as const,
          { by: "month", month: date.slice(0, 7) } as const,
          seasonOf(date),
        ])
          expect(rank[assess(fitted, early).verdict]).toBeLessThanOrEqual(rank[assess(fitted, late).verdict]);
      }),
      { numRuns: 1000 },
    );
  });

  test("the verdict and the age say the same: passes is under six months, fails is six or more", () => {
    fc.assert(
      fc.property(pastDay, (date) => {
        const { months, verdict } = assess(seasonOf(date));
        const expected = months.low >= 6 ? "fails" : (months.high ?? 6) < 6 ? "passes" : "unclear";
        expect(verdict).toBe(expected);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("an answer that cannot be", () => {
  const check = (fitted: FittedWhen) => checkFittedWhen(fitted, today, limits)?.code ?? null;

  test("31 February is refused", () => {
    expect(check({ by: "date", date: "2024-02-31" })).toBe("no-such-day");
  });

  test("tomorrow, next month, next season and moving in next month are in the future", () => {
    expect(check({ by: "date", date: "2026-03-16" })).toBe("in-future");
    expect(check({ by: "month", month: "2026-04" })).toBe("in-future");
    expect(check(season("summer", 2026))).toBe("in-future");
    expect(check({ by: "since-moving", month: "2026-04" })).toBe("in-future");
  });

  test("today, this month and this season are fine", () => {
    expect(check({ by: "date", date: today })).toBeNull();
    expect(check({ by: "month", month: "2026-03" })).toBeNull();
    expect(check(season("spring", 2026))).toBeNull();
    expect(check(season("autumn", 2026, "south"))).toBeNull();
    expect(check({ by: "since-moving", month: "2026-03" })).toBeNull();
  });

  test("before 1990, the bound given here, is too long ago", () => {
    expect(check({ by: "date", date: "1989-12-31" })).toBe("too-long-ago");
    expect(check(season("summer", 1989))).toBe("too-long-ago");
    expect(check(season("summer", 1990))).toBeNull();
  });

  test("a year that is no year is unreadable", () => {
    for (const year of [24.5, 20244, -1, Number.NaN])
      expect(check(season("summer", year))).toBe("unreadable");
    expect(check(season("summer", 24))).toBe("too-long-ago");
  });

  test("it is judged as if nothing were known, and never throws", () => {
    const nothing = {
      months: { low: 0, high: null },
      verdict: "unclear",
      dueOn: { earliest: null, latest: null },
    };
    expect(assess({ by: "date", date: "2026-03-16" })).toEqual(nothing);
    expect(assess(season("summer", 2026))).toEqual(nothing);
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(assess({ by: "date", date: text })).toEqual(nothing);
        expect(assess({ by: "month", month: text })).toEqual(nothing);
        expect(assess({ by: "since-moving", month: text })).toEqual(nothing);
      }),
    );
  });
});
