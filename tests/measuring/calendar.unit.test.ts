import { Temporal } from "@js-temporal/polyfill";
import {
  addDays as addDaysToDate,
  addMonths as addMonthsToDate,
  differenceInCalendarDays,
  differenceInMonths,
  format,
} from "date-fns";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addDays,
  addMonths,
  daysBetween,
  findDateProblem,
  monthsBetween,
  wholeMonthsBetween,
} from "../../src/measuring/index.ts";

const bounds = { earliest: "1990-01-01", latest: "2026-03-15" };
const plain = Temporal.PlainDate.from;

/** Real days from 1900 to 2100, month ends and leap days well represented. */
const date = fc
  .tuple(
    fc.integer({ min: 1900, max: 2100 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 31 }),
  )
  .map(([year, month, day]) => Temporal.PlainDate.from({ year, month, day }).toString());
const inOrder = fc.tuple(date, date).map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));
const local = (text: string) => new Date(`${text}T12:00`);

describe("adding months", () => {
  test("31 January 2019 and a month is 28 February (Temporal's documentation, W12)", () => {
    expect(addMonths("2019-01-31", 1)).toBe("2019-02-28");
  });

  test("a six-month reminder from 31 August 2025 falls on 28 February 2026, not a year late (W12)", () => {
    expect(addMonths("2025-08-31", 6)).toBe("2026-02-28");
  });

  test("a month may be added over New Year or taken off", () => {
    expect(addMonths("2024-12-15", 1)).toBe("2025-01-15");
    expect(addMonths("2024-03-31", -1)).toBe("2024-02-29");
    expect(addMonths("2024-01-31", -13)).toBe("2022-12-31");
  });

  test("any date and number of months agrees with Temporal ('constrain') and with date-fns", () => {
    fc.assert(
      fc.property(date, fc.integer({ min: -600, max: 600 }), (start, months) => {
        const ours = addMonths(start, months);
        expect(ours).toBe(plain(start).add({ months }, { overflow: "constrain" }).toString());
        expect(ours).toBe(format(addMonthsToDate(local(start), months), "yyyy-MM-dd"));
      }),
      { numRuns: 1000 },
    );
  });
});

describe("adding days", () => {
  test("4543 days after 24 August 2006 is 31 January 2019 (Temporal's documentation, W12)", () => {
    expect(addDays("2006-08-24", 4543)).toBe("2019-01-31");
  });

  test("the day after 28 February is the 29th in 2000 and 2024 and 1 March in 1900 and 2100 (ISO 8601)", () => {
    for (const year of ["2000", "2024"]) expect(addDays(`${year}-02-28`, 1)).toBe(`${year}-02-29`);
    for (const year of ["1900", "2100"]) expect(addDays(`${year}-02-28`, 1)).toBe(`${year}-03-01`);
  });

  test("any date and number of days agrees with Temporal and with date-fns, and daysBetween takes it back", () => {
    fc.assert(
      fc.property(date, fc.integer({ min: -400_000, max: 400_000 }), (start, days) => {
        const ours = addDays(start, days);
        expect(ours).toBe(plain(start).add({ days }).toString());
        expect(ours).toBe(format(addDaysToDate(local(start), days), "yyyy-MM-dd"));
        expect(daysBetween(start, ours)).toBe(days);
      }),
      { numRuns: 1000 },
    );
  });

  test("the years 0000 and 9999 are the ends, however many days are added", () => {
    expect(addDays("9999-12-30", 1)).toBe("9999-12-31");
    expect(addDays("2026-03-15", Number.POSITIVE_INFINITY)).toBe("9999-12-31");
    expect(addDays("0000-01-02", -1)).toBe("0000-01-01");
    expect(addDays("2026-03-15", -1e12)).toBe("0000-01-01");
  });
});

describe("days and months between dates", () => {
  test("24 August 2006 to 31 January 2019 is 12 years 5 months (149) and 7 days, 4543 days (Temporal, W12)", () => {
    expect(wholeMonthsBetween("2006-08-24", "2019-01-31")).toBe(149);
    expect(daysBetween(addMonths("2006-08-24", 149), "2019-01-31")).toBe(7);
    expect(daysBetween("2006-08-24", "2019-01-31")).toBe(4543);
  });

  test("days agree with Temporal and with date-fns for any two dates", () => {
    fc.assert(
      fc.property(date, date, (a, b) => {
        expect(daysBetween(a, b)).toBe(plain(a).until(plain(b), { largestUnit: "day" }).days);
        expect(daysBetween(a, b)).toBe(differenceInCalendarDays(local(b), local(a)) + 0);
      }),
      { numRuns: 1000 },
    );
  });

  test("whole months agree with Temporal and with date-fns wherever no month end is in the way", () => {
    fc.assert(
      fc.property(inOrder, ([a, b]) => {
        fc.pre(Number(a.slice(8)) <= 28);
        expect(wholeMonthsBetween(a, b)).toBe(plain(a).until(plain(b), { largestUnit: "month" }).months);
        expect(wholeMonthsBetween(a, b)).toBe(differenceInMonths(local(b), local(a)));
      }),
      { numRuns: 1000 },
    );
  });

  // At month ends the references differ: from 31 August to 28 February Temporal counts 5 months, date-fns 6.
  // We count those that 'constrain' addition has completed, so that age and due date agree.
  test("whole months are those that Temporal's addition completes, for any two dates", () => {
    fc.assert(
      fc.property(inOrder, ([a, b]) => {
        const months = wholeMonthsBetween(a, b);
        expect(Temporal.PlainDate.compare(plain(a).add({ months }), b)).toBeLessThanOrEqual(0);
        expect(Temporal.PlainDate.compare(plain(a).add({ months: months + 1 }), b)).toBe(1);
      }),
      { numRuns: 1000 },
    );
    expect(wholeMonthsBetween("2025-08-31", "2026-02-28")).toBe(6);
    expect(wholeMonthsBetween("2025-08-31", "2026-02-28")).toBe(
      differenceInMonths(local("2026-02-28"), local("2025-08-31")),
    );
  });

  test("15 days into a month of 30 is half a month more", () => {
    expect(monthsBetween("2025-04-01", "2025-04-16")).toBe(0.5);
    expect(monthsBetween("2025-01-01", "2025-04-16")).toBe(3.5);
  });

  test("months with a fraction have the whole months as their whole part", () => {
    fc.assert(
      fc.property(inOrder, ([a, b]) => {
        expect(Math.floor(monthsBetween(a, b))).toBe(wholeMonthsBetween(a, b));
      }),
    );
  });

  test("a later end is never fewer months, and a later start never more", () => {
    fc.assert(
      fc.property(inOrder, fc.integer({ min: 1, max: 40 }), ([a, b], days) => {
        const later = (text: string) => plain(text).add({ days }).toString();
        expect(monthsBetween(a, later(b))).toBeGreaterThan(monthsBetween(a, b));
        expect(monthsBetween(later(a), later(b))).toBeLessThanOrEqual(monthsBetween(a, later(b)));
      }),
      { numRuns: 2000 },
    );
  });
});

describe("a day or a month that was typed", () => {
  const day = (typed: string, within = bounds) => findDateProblem(typed, "day", within);
  const month = (typed: string) => findDateProblem(typed, "month", bounds);

  test("2000 was a leap year, 1900 and 2100 are none (ISO 8601, every 400 years)", () => {
    const always = { earliest: "0000-01-01", latest: "9999-12-31" };
    expect(day("2000-02-29", always)).toBeNull();
    for (const year of ["1900", "2100"])
      expect(day(`${year}-02-29`, always)).toMatchObject({ code: "no-such-day" });
  });

  test.each([
    ["2024-02-31", "no-such-day"],
    ["2023-02-29", "no-such-day"],
    ["1900-02-29", "no-such-day"],
    ["2024-04-31", "no-such-day"],
    ["2024-13-01", "no-such-day"],
    ["2024-00-10", "no-such-day"],
    ["2024-01-00", "no-such-day"],
    ["2026-03-16", "in-future"],
    ["9999-12-31", "in-future"],
    ["1989-12-31", "too-long-ago"],
    ["0204-05-01", "too-long-ago"],
    ["31/02/2024", "unreadable"],
    ["2024-2-3", "unreadable"],
    ["2024-02", "unreadable"],
    ["", "unreadable"],
    ["last summer", "unreadable"],
    ["+002024-01-01", "unreadable"],
  ])("%s is refused as %s, with what was typed", (typed, code) => {
    expect(day(typed)).toEqual({ code, typed, ...bounds });
  });

  test("today and the first believable day are believed", () => {
    for (const each of [bounds.earliest, bounds.latest]) expect(day(each)).toBeNull();
  });

  test("the month that has begun is believed, the next one and a 13th are not", () => {
    expect(month("2024-02")).toBeNull();
    expect(month("2026-03")).toBeNull();
    expect(month("2026-04")).toMatchObject({ code: "in-future" });
    expect(month("2025-13")).toMatchObject({ code: "no-such-day" });
    expect(month("1989-12")).toMatchObject({ code: "too-long-ago" });
    expect(month("2025-01-01")).toMatchObject({ code: "unreadable" });
  });

  test("exactly the days that Temporal knows are days", () => {
    const digits = (min: number, max: number, length: number) =>
      fc.integer({ min, max }).map((value) => `${value}`.padStart(length, "0"));
    const always = { earliest: "0000-01-01", latest: "9999-12-31" };
    fc.assert(
      fc.property(digits(1890, 2110, 4), digits(0, 14, 2), digits(0, 33, 2), (year, month, day) => {
        const typed = `${year}-${month}-${day}`;
        let exists = true;
        try {
          plain(typed);
        } catch {
          exists = false;
        }
        expect(findDateProblem(typed, "day", always)?.code).toBe(exists ? undefined : "no-such-day");
      }),
      { numRuns: 2000 },
    );
  });

  test("no string whatever throws, and what is refused is kept as typed", () => {
    const anything = fc.oneof(fc.string({ unit: "binary" }), fc.stringMatching(/^[\d -]{0,12}$/));
    fc.assert(
      fc.property(anything, (typed) => {
        for (const problem of [day(typed), month(typed)]) expect(problem?.typed ?? typed).toBe(typed);
      }),
      { numRuns: 2000 },
    );
  });
});
