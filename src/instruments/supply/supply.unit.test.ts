import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { VolumeUnit } from "../../measuring/index.ts";
import { assessSupply } from "./assess.ts";
import { checkSupply } from "./check.ts";
import { supplyLimits as limits } from "./example-limits.ts";
import { fill, gauge } from "./example-readings.ts";
import type { SupplyReading } from "./reading.ts";

const assess = (reading: SupplyReading) => assessSupply(reading, limits);

describe("a vessel filled by the clock", () => {
  test("4.5 l in 30 s is 9.0 l/min and 2 l in 13 s is 9.23 l/min (water-company fill tests, W2)", () => {
    expect(assess(fill(4.5, 30)).value.value).toBeCloseTo(9, 10);
    expect(assess(fill(2, 13)).value.value).toBeCloseTo(9.23, 2);
  });

  test("both are too close to 9 l/min to call, for the vessel's marks may be 5 % out", () => {
    expect(assess(fill(4.5, 30))).toMatchObject({ limit: 4, verdict: "unclear", belowStatutory: false });
    expect(assess(fill(2, 13)).verdict).toBe("unclear");
  });

  test("the doubt is that of volume and time together (JCGM 100 5.1.6)", () => {
    const { u } = assess(fill(4.5, 30)).value;
    const volume = Math.hypot(5, 0.05 * 4500) / Math.sqrt(3) / 4500;
    expect(u / 9).toBeCloseTo(Math.hypot(volume, 0.1 / 30), 10);
  });

  // Sound kitchen taps give 5 to 8 l/min, so that 6 used to send good homes to a plumber.
  test("12 l/min passes, 6 l/min says nothing, 3 l/min fails, and so does nothing at all", () => {
    expect(assess(fill(6, 30)).verdict).toBe("passes");
    expect(assess(fill(3, 30)).verdict).toBe("unclear");
    expect(assess(fill(1.5, 30)).verdict).toBe("fails");
    expect(assess(fill(0, 30)).verdict).toBe("fails");
  });

  test("however much comes, a fill is never too strong", () => {
    expect(assess(fill(50, 30)).verdict).toBe("passes");
  });

  test.each<[number, VolumeUnit]>([
    [4500, "ml"],
    // 4.5 l in NIST SP 811 units: a US gallon is 3.785412 l, a UK gallon of eight pints 4.54609 l.
    [4.5 / 3.785412, "us-gal"],
    [(4 * 4.5) / 3.785412, "us-qt"],
    [(8 * 4.5) / 4.54609, "uk-pint"],
  ])("%d %s are the same 4.5 l", (volume, unit) => {
    expect(assess(fill(volume, 30, unit)).value.value).toBeCloseTo(9, 6);
  });
});

describe("a gauge", () => {
  test.each([
    // 0.95 of the gauge's ±20 kPa is 19, round 172 kPa (25 psi) and 552 kPa (80 psi, UPC 608.2).
    [152, 172, "fails"],
    [154, 172, "unclear"],
    [190, 172, "unclear"],
    [192, 172, "passes"],
    [532, 552, "passes"],
    [534, 552, "unclear"],
    [570, 552, "unclear"],
    [572, 552, "too-strong"],
  ] as const)("%d kPa, nearest to the limit of %d, says: %s", (value, limit, verdict) => {
    const found = assess(gauge(value));
    expect(found).toMatchObject({ limit, verdict });
    expect(found.band.low).toBeCloseTo(limit - 19, 6);
    expect(found.range.high).toBeCloseTo(value + 19, 6);
  });

  test("25 psi is 172.369 kPa and lies on the limit, 50 psi passes, 90 psi is too strong (W1)", () => {
    expect(assess(gauge(25, "psi")).value.value).toBeCloseTo(172.369, 3);
    expect(assess(gauge(25, "psi")).verdict).toBe("unclear");
    expect(assess(gauge(50, "psi")).verdict).toBe("passes");
    expect(assess(gauge(90, "psi")).verdict).toBe("too-strong");
    expect(assess(gauge(3.5, "bar")).verdict).toBe("passes");
  });

  test("a UK home on its statutory 7 m of head fails, and is surely below it only outside the gauge's error", () => {
    const head = 7 * 9.80665; // kPa per metre of water, standard gravity (CGPM 1901)
    expect(assess(gauge(head))).toMatchObject({ verdict: "fails", belowStatutory: false });
    expect(assess(gauge(45))).toMatchObject({ verdict: "fails", belowStatutory: true });
    expect(assess(gauge(51)).belowStatutory).toBe(false);
  });
});

describe("whatever is measured", () => {
  const volume = fc.double({ min: 0, max: 50, noNaN: true });
  const seconds = fc.double({ min: 3, max: 600, noNaN: true });
  const rank = { fails: 0, unclear: 1, passes: 2, "too-strong": 3 };

  test("more water in the same time, or the same in less, is never judged weaker", () => {
    fc.assert(
      fc.property(volume, volume, seconds, seconds, (v, w, s, t) => {
        const judge = (volume: number, seconds: number) => rank[assess(fill(volume, seconds)).verdict];
        expect(judge(Math.max(v, w), s)).toBeGreaterThanOrEqual(judge(Math.min(v, w), s));
        expect(judge(v, Math.min(s, t))).toBeGreaterThanOrEqual(judge(v, Math.max(s, t)));
      }),
    );
  });

  test("a higher pressure on the same side of the middle is never judged weaker", () => {
    const middle = (172 + 552) / 2;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: middle, noNaN: true }),
        fc.double({ min: 0, max: middle }),
        (p, q) => {
          const judge = (value: number) => rank[assess(gauge(value)).verdict];
          const [less, more] = [Math.min(p, q), Math.max(p, q)];
          expect(judge(more)).toBeGreaterThanOrEqual(judge(less));
          // Mirrored: above the middle only passes, unclear and too strong are left, in this order.
          const strong = ["passes", "unclear", "too-strong"];
          const above = [middle * 2 - more, middle * 2 - less].map((value) => assess(gauge(value)).verdict);
          expect(strong.indexOf(above[1] ?? "")).toBeGreaterThanOrEqual(strong.indexOf(above[0] ?? "fails"));
        },
      ),
    );
  });

  test("no number gives an error, not even what is none", () => {
    const odd = fc.oneof(fc.double(), fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1, 0));
    fc.assert(
      fc.property(odd, odd, (a, b) => {
        for (const reading of [fill(a, b), gauge(a), gauge(b, "psi")]) {
          checkSupply(reading, limits);
          expect(Object.keys(rank)).toContain(assess(reading).verdict);
        }
      }),
    );
  });

  test("what is no number, and no time at all, are unclear", () => {
    for (const reading of [gauge(Number.NaN), fill(Number.NaN, 30), fill(4.5, 0), fill(4.5, Number.NaN)])
      expect(assess(reading)).toMatchObject({ verdict: "unclear", belowStatutory: false });
  });
});

describe("a supply that cannot be", () => {
  const check = (reading: SupplyReading) => checkSupply(reading, limits);

  test("an empty vessel and a gauge at nothing are results", () => {
    expect(check(fill(0, 30))).toBeNull();
    expect(check(gauge(0))).toBeNull();
    expect(check(fill(4.5, 30))).toBeNull();
    expect(check(gauge(40, "psi"))).toBeNull();
  });

  test("only the first problem is named, the volume before the time", () => {
    expect(check(fill(-1, 0))).toMatchObject({ field: "volume", code: "negative" });
    expect(check(fill(51, 30))).toMatchObject({ field: "volume", code: "too-large" });
    expect(check(fill(4.5, 0))).toMatchObject({ field: "seconds", code: "zero" });
    expect(check(fill(4.5, 2))).toMatchObject({ field: "seconds", code: "too-small" });
    expect(check(fill(4.5, 601))).toMatchObject({ field: "seconds", code: "too-large" });
    expect(check(gauge(-1))).toMatchObject({ field: "pressure", code: "negative" });
    expect(check(gauge(1601))).toMatchObject({ field: "pressure", code: "too-large" });
    expect(check(gauge(Number.NaN))).toMatchObject({ field: "pressure", code: "too-large" });
  });

  test("the most that is believed is given in the unit that was typed", () => {
    // 50 l are 13.21 US gallons of 3.785412 l; 1600 kPa are 16 bar or 232 psi (NIST SP 811).
    expect(check(fill(20, 30, "us-gal"))?.max).toBeCloseTo(13.21, 2);
    expect(check(gauge(17, "bar"))?.max).toBeCloseTo(16, 10);
    expect(check(gauge(300, "psi"))?.max).toBeCloseTo(232, 0);
  });
});
