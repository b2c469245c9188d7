import { Temporal } from "@js-temporal/polyfill";
import { addDays as addDaysToDate, addMonths as addMonthsToDate, format, min } from "date-fns";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays } from "../../measuring/index.ts";
import { assessFilterAge } from "./age.ts";
import { assessFilterLife } from "./assess.ts";
import { filterLifeLimits as limits } from "./example-limits.ts";
import type { FilterUse, FittedWhen } from "./reading.ts";

const today = "2026-03-15";
const onDay = (date: string): FittedWhen => ({ by: "date", date });
const life = (fitted: FittedWhen, use?: FilterUse, on = today) =>
  assessFilterLife({ kind: "filter-age", fitted, use }, on, limits);
const daysAgo = (days: number) => Temporal.PlainDate.from(today).subtract({ days }).toString();

const anyUse = fc.record({
  people: fc.integer({ min: 1, max: 20 }),
  habit: fc.constantFrom("ice" as const, "glasses" as const, "all" as const),
  capacity: fc.option(fc.integer({ min: 50, max: 10_000 }), { nil: undefined }),
});
const anyPast = fc.integer({ min: 0, max: 3000 }).map(daysAgo);
const anyFitted: fc.Arbitrary<FittedWhen> = fc.oneof(
  anyPast.map(onDay),
  anyPast.map((date) => ({ by: "month" as const, month: date.slice(0, 7) })),
  anyPast.map((date) => ({ by: "since-moving" as const, month: date.slice(0, 7) })),
  fc.record({
    by: fc.constant("season" as const),
    season: fc.constantFrom("spring" as const, "summer" as const, "autumn" as const, "winter" as const),
    year: fc.integer({ min: 2018, max: 2025 }),
  }),
);

describe("months alone", () => {
  test("without a use nothing but the months counts, as in the age alone", () => {
    fc.assert(
      fc.property(anyFitted, (fitted) => {
        const { litres, used, by, ...age } = life(fitted);
        expect(age).toEqual(assessFilterAge({ kind: "filter-age", fitted }, today, 6));
        expect(litres).toBeNull();
        expect(by).toBe("months");
        expect(used.low * 6).toBeCloseTo(age.months.low, 9);
      }),
    );
  });

  test("half of its life is gone after three of six months", () => {
    expect(life(onDay("2025-12-15")).used).toEqual({ low: 0.5, high: 0.5 });
    expect(life({ by: "since-moving", month: "2024-02" }).used.high).toBeNull();
  });
});

describe("litres", () => {
  test("100 days, four people and 1 to 3 l each a day are 400 to 1200 l", () => {
    const { litres, used } = life(onDay(daysAgo(100)), { people: 4, habit: "all" });
    expect(litres).toEqual({ low: 400, high: 1200 });
    expect(used.high).toBeCloseTo(1200 / 750, 12);
  });

  test("four people who drink from it use up 750 l in 63 to 188 days, before half a year or about then", () => {
    const { dueOn, by, verdict } = life(onDay(daysAgo(100)), { people: 4, habit: "all" });
    expect(dueOn.earliest).toBe(Temporal.PlainDate.from(daysAgo(100)).add({ days: 63 }).toString());
    // 188 days, but six months are there before.
    expect(dueOn.latest).toBe(Temporal.PlainDate.from(daysAgo(100)).add({ months: 6 }).toString());
    expect(by).toBe("either");
    expect(verdict).toBe("unclear");
  });

  test("a small cartridge is used up first: 300 l and four people, 25 to 75 days", () => {
    const use: FilterUse = { people: 4, habit: "all", capacity: 300 };
    expect(life(onDay(daysAgo(24)), use)).toMatchObject({ by: "litres", verdict: "passes" });
    expect(life(onDay(daysAgo(25)), use).verdict).toBe("unclear");
    expect(life(onDay(daysAgo(74)), use).verdict).toBe("unclear");
    expect(life(onDay(daysAgo(75)), use)).toMatchObject({ by: "litres", verdict: "fails" });
  });

  test("ice for one person never uses it up before the months do", () => {
    const { by, dueOn, verdict } = life(onDay("2025-12-15"), { people: 1, habit: "ice" });
    expect(by).toBe("months");
    expect(dueOn).toEqual({ earliest: "2026-06-15", latest: "2026-06-15" });
    expect(verdict).toBe("passes");
  });

  test("which comes first is told from the day of fitting, so a vague date does not blur it", () => {
    const use: FilterUse = { people: 4, habit: "all", capacity: 600 };
    expect(life({ by: "season", season: "autumn", year: 2025 }, use).by).toBe("litres");
    expect(life({ by: "since-moving", month: "2024-02" }, use).by).toBe("litres");
  });

  test("never changed since moving in: at least so many litres, no most", () => {
    const { litres, used, dueOn } = life(
      { by: "since-moving", month: "2026-02" },
      { people: 2, habit: "all" },
    );
    expect(litres).toEqual({ low: 30, high: null });
    expect(used.high).toBeNull();
    expect(dueOn.earliest).toBeNull();
  });

  test("where hardly anything is drawn the last day by litres lies beyond all that can be written", () => {
    const dry = { ...limits, perPerson: { ...limits.perPerson, ice: { low: 0, high: 0 } } };
    const reading = {
      kind: "filter-age",
      fitted: onDay("2025-12-15"),
      use: { people: 1, habit: "ice" },
    } as const;
    expect(assessFilterLife(reading, today, dry)).toMatchObject({
      by: "months",
      dueOn: { earliest: "2026-06-15", latest: "2026-06-15" },
    });
  });
});

describe("any filter and household", () => {
  test("on a known day the due dates are the earlier of months and litres, by date-fns", () => {
    const local = (text: string) => new Date(`${text}T12:00`);
    fc.assert(
      fc.property(anyPast, anyUse, (date, use) => {
        const { low, high } = limits.perPerson[use.habit];
        const due = (perPerson: number) => {
          const days = Math.ceil((use.capacity ?? 750) / (perPerson * use.people));
          return format(
            min([addDaysToDate(local(date), days), addMonthsToDate(local(date), 6)]),
            "yyyy-MM-dd",
          );
        };
        expect(life(onDay(date), use).dueOn).toEqual({ earliest: due(high), latest: due(low) });
      }),
      { numRuns: 500 },
    );
  });

  test("the verdict, the due dates and the share of life that is gone say the same", () => {
    fc.assert(
      fc.property(anyFitted, anyUse, (fitted, use) => {
        const { verdict, dueOn, used } = life(fitted, use);
        expect(verdict === "fails").toBe(today >= (dueOn.latest ?? ""));
        expect(verdict === "passes").toBe(dueOn.earliest !== null && today < dueOn.earliest);
        if (verdict === "fails") expect(used.low).toBeGreaterThan(1 - 1e-9);
        if (verdict === "passes") expect(used.high).toBeLessThan(1 + 1e-9);
        expect(used.low).toBeLessThanOrEqual(used.high ?? Number.POSITIVE_INFINITY);
      }),
      { numRuns: 1000 },
    );
  });

  test("a vague date contains the exact one and never contradicts it", () => {
    fc.assert(
      fc.property(anyPast, anyUse, (date, use) => {
        const point = life(onDay(date), use);
        const month = date.slice(0, 7);
        for (const fitted of [{ by: "month", month } as const, { by: "since-moving", month } as const]) {
          const vague = life(fitted, use);
          expect(["unclear", point.verdict]).toContain(vague.verdict);
          expect(vague.by).toBe(point.by);
          expect(vague.litres?.low).toBeLessThanOrEqual(point.litres?.low ?? Number.NaN);
          expect(vague.litres?.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(
            point.litres?.high ?? Number.NaN,
          );
        }
      }),
      { numRuns: 500 },
    );
  });

  test("more people never make a verdict better, nor does time, nor knowing the use", () => {
    const rank = { passes: 0, unclear: 1, fails: 2 };
    fc.assert(
      fc.property(anyFitted, anyUse, fc.integer({ min: 0, max: 400 }), (fitted, use, days) => {
        const verdict = rank[life(fitted, use).verdict];
        expect(rank[life(fitted, { ...use, people: use.people + 1 }).verdict]).toBeGreaterThanOrEqual(
          use.people < 20 ? verdict : 0,
        );
        if (fitted.by !== "since-moving")
          expect(rank[life(fitted, use, addDays(today, days)).verdict]).toBeGreaterThanOrEqual(verdict);
        if (life(fitted).verdict === "fails") expect(verdict).toBe(2);
      }),
      { numRuns: 500 },
    );
  });

  test("which comes first is right for every day of fitting, a few days around the same time, by Temporal", () => {
    const even = { low: 1, high: 1 };
    const nearby = fc.integer({ min: -5, max: 5 });
    fc.assert(
      fc.property(anyPast, fc.integer({ min: 2, max: 36 }), nearby, (date, months, apart) => {
        // One litre a day, so the litres on the cartridge are days.
        const days = Math.round(months * 30.44) + apart;
        const exact = { ...limits, months, perPerson: { ice: even, glasses: even, all: even } };
        const use: FilterUse = { people: 1, habit: "all", capacity: days };
        const { by } = assessFilterLife({ kind: "filter-age", fitted: onDay(date), use }, today, exact);
        const start = Temporal.PlainDate.from(date);
        const order = Temporal.PlainDate.compare(start.add({ days }), start.add({ months }));
        if (by === "litres") expect(order).toBe(-1);
        if (by === "months") expect(order).toBe(1);
        if (Math.abs(apart) === 5) expect(by).not.toBe("either");
      }),
      { numRuns: 3000 },
    );
  });
});

describe("a use that cannot be", () => {
  test("it tells nothing, so that the months alone count", () => {
    const fitted = onDay("2025-12-15");
    for (const people of [0, -3, 21, Number.NaN])
      expect(life(fitted, { people, habit: "all" })).toEqual(life(fitted));
  });

  test("no text and no number whatever throws", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.double(), fc.double(), (text, people, capacity) => {
        const use: FilterUse = { people, habit: "all", capacity };
        expect(() => life(onDay(text), use)).not.toThrow();
        expect(() => life(onDay("2025-12-15"), use)).not.toThrow();
        expect(() =>
          life(onDay("2025-12-15"), { people: 1, habit: text as FilterUse["habit"] }),
        ).not.toThrow();
      }),
    );
  });
});
