import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessFlow } from "./assess.ts";
import { flowLimits as limits } from "./example-limits.ts";
import type { FlowRun } from "./reading.ts";

const jug = (volume: number, seconds = 10): FlowRun => ({ volume, unit: "ml", seconds });
const scales = (volume: number, seconds = 10): FlowRun => ({ volume, unit: "g", seconds });
const assess = (...runs: FlowRun[]) => assessFlow({ kind: "flow", runs }, limits);

describe("one run", () => {
  test("150 ml in 10 s with a jug is 15.0 ml/s, u 0.5416, too close to call (worked example W4)", () => {
    const { perSecond, runs, agree, verdict, band } = assess(jug(150));
    expect(perSecond.value).toBe(15);
    expect(perSecond.u).toBeCloseTo(0.5416, 4);
    expect(runs).toEqual([perSecond]);
    expect(agree).toBe(true);
    expect(verdict).toBe("unclear");
    expect(band.low).toBeCloseTo(14.11, 2);
    expect(band.high).toBeCloseTo(15.89, 2);
  });

  test("the grey zone of 150 ml in 10 s is about ±9 ml with a jug and ±3 ml with scales (JCGM 100 5.1.2)", () => {
    const halfWidth = (run: FlowRun) => (assess(run).band.high - limits.minimum) * run.seconds;
    expect(Math.round(halfWidth(jug(150)))).toBe(9);
    expect(Math.round(halfWidth(scales(150)))).toBe(3);
  });

  test("160 ml in 10 s passes and 140 ml fails with a jug (W4: above 15.89, below 14.11 ml/s)", () => {
    expect(assess(jug(160)).verdict).toBe("passes");
    expect(assess(jug(140)).verdict).toBe("fails");
  });

  test("the errors are those of a flow on the limit, so how much came out does not move the band", () => {
    expect(assess(jug(140)).band).toEqual(assess(jug(160)).band);
    expect(assess(jug(0)).band).toEqual(assess(jug(150)).band);
    // A longer run has narrower ones: ±5 ml are less beside 300 ml.
    expect(assess(jug(300, 20)).band.high).toBeLessThan(assess(jug(150)).band.high);
  });

  test("the range is that of the reading itself, so it is wider for more water in the same jug", () => {
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    const [less, more] = [assess(jug(140)), assess(jug(160))];
    expect(width(more.range)).toBeGreaterThan(width(less.range));
    expect((less.range.low + less.range.high) / 2).toBeCloseTo(14, 10);
    expect(width(assess(jug(150)).range)).toBeCloseTo(width(assess(jug(150)).band), 10);
  });

  test("155 g passes on scales, where 155 ml in a jug is too close to call", () => {
    expect(assess(scales(155)).verdict).toBe("passes");
    expect(assess(jug(155)).verdict).toBe("unclear");
  });

  test("2 l in 13 s is 9.23 l/min and 4.5 l in 30 s is 9.0 l/min (water-company fill tests, W2)", () => {
    expect((assess(jug(2000, 13)).perSecond.value * 60) / 1000).toBeCloseTo(9.23, 2);
    expect((assess(jug(4500, 30)).perSecond.value * 60) / 1000).toBeCloseTo(9, 10);
  });

  test("a cup and its 236.5882 ml are the same run (NIST SP 811)", () => {
    const cup = assess({ volume: 1, unit: "us-cup", seconds: 10 });
    expect(cup).toEqual(assess(jug(236.5882)));
  });

  test("nothing came out: the flow is zero, has an uncertainty, and fails", () => {
    const { perSecond, range, verdict } = assess(jug(0));
    expect(perSecond.value).toBe(0);
    expect(perSecond.u).toBeCloseTo(5 / Math.sqrt(3) / 10, 10);
    // ±5 ml evenly, so 90 % lie within ±4.5 ml.
    expect(range.high).toBeCloseTo(0.45, 10);
    expect(verdict).toBe("fails");
  });

  test("more water in the same time is never judged worse, nor the same water in less time", () => {
    const rank = { fails: 0, unclear: 1, passes: 2 };
    const volume = fc.double({ min: 0, max: 5000, noNaN: true });
    const seconds = fc.double({ min: 1, max: 120, noNaN: true });
    fc.assert(
      fc.property(volume, volume, seconds, seconds, fc.constantFrom("ml", "g"), (v, w, s, t, unit) => {
        const run = (volume: number, seconds: number) => assess({ volume, unit, seconds }).verdict;
        expect(rank[run(Math.min(v, w), s)]).toBeLessThanOrEqual(rank[run(Math.max(v, w), s)]);
        expect(rank[run(v, Math.max(s, t))]).toBeLessThanOrEqual(rank[run(v, Math.min(s, t))]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("repeated runs", () => {
  test("reading and timing shrink with √n, the jug's scale error does not (JCGM 100 5.2.2)", () => {
    const scaleOnly = (15 * 0.05) / Math.sqrt(3);
    const random = Math.sqrt(0.5416 ** 2 - scaleOnly ** 2);
    for (const n of [2, 4, 9]) {
      const { perSecond } = assess(...Array.from({ length: n }, () => jug(150)));
      expect(perSecond.value).toBeCloseTo(15, 10);
      expect(perSecond.u).toBeCloseTo(Math.hypot(scaleOnly, random / Math.sqrt(n)), 3);
    }
    expect(assess(...Array.from({ length: 1000 }, () => jug(150))).perSecond.u).toBeGreaterThan(scaleOnly);
  });

  test("weighing shrinks with √n altogether, as scales have no such error", () => {
    const one = assess(scales(150)).perSecond.u;
    const four = assess(scales(150), scales(150), scales(150), scales(150)).perSecond.u;
    expect(four).toBeCloseTo(one / 2, 10);
  });

  test("four weighings that are each too close to call may pass together", () => {
    // u of one is √((1/√3)² + (15·0.1)²)/10 = 0.16, so 1.645 u is 0.26 ml/s alone and 0.13 with four.
    const run = scales(152);
    expect(assess(run).verdict).toBe("unclear");
    expect(assess(run, run, run, run).verdict).toBe("passes");
  });

  test("all the water over all the time: 100 ml in 10 s and 200 ml in 20 s are 10 ml/s", () => {
    expect(assess(jug(100, 10), jug(200, 20)).perSecond.value).toBe(10);
  });

  test("a longer run is more certain than a short one, so measuring longer helps", () => {
    expect(assess(jug(300, 20)).perSecond.u).toBeLessThan(assess(jug(150, 10)).perSecond.u);
  });

  test("a rough jug never spoils a good weighing, and the result lies between the two", () => {
    const volume = fc.double({ min: 50, max: 500, noNaN: true });
    fc.assert(
      fc.property(volume, volume, (inJug, onScales) => {
        const [alone, both] = [assess(scales(onScales)), assess(jug(inJug), scales(onScales))];
        expect(both.perSecond.u).toBeLessThanOrEqual(alone.perSecond.u);
        expect(both.perSecond.value).toBeGreaterThanOrEqual(Math.min(inJug, onScales) / 10 - 1e-9);
        expect(both.perSecond.value).toBeLessThanOrEqual(Math.max(inJug, onScales) / 10 + 1e-9);
      }),
    );
  });

  test("the order of the runs does not matter", () => {
    const runs = [jug(140), scales(150, 12), jug(155, 9)];
    const [forth, back] = [assess(...runs), assess(...runs.toReversed())];
    expect(back.perSecond.value).toBeCloseTo(forth.perSecond.value, 10);
    expect(back.perSecond.u).toBeCloseTo(forth.perSecond.u, 10);
    expect(back.verdict).toBe(forth.verdict);
  });
});

describe("runs that disagree", () => {
  // One jug, 10 s: u of a difference is √2·√((5/√3)² + (15·0.1)²)/10 = 0.46 ml/s, so 2.3 u is 10.6 ml.
  test("148 and 152 ml agree, 140 and 160 ml do not", () => {
    expect(assess(jug(148), jug(152)).agree).toBe(true);
    expect(assess(jug(140), jug(160)).agree).toBe(false);
  });

  test("between jug and scales the jug's scale error counts too, so 140 ml and 152 g agree", () => {
    expect(assess(jug(140), jug(152)).agree).toBe(false);
    expect(assess(jug(140), scales(152)).agree).toBe(true);
  });

  test("one strong and one weak run average out well but pass nothing", () => {
    const { perSecond, agree, verdict } = assess(jug(100), jug(300));
    expect(perSecond.value).toBe(20);
    expect(agree).toBe(false);
    expect(verdict).toBe("unclear");
  });

  test("uneven runs that are each far too weak still fail", () => {
    const { agree, verdict } = assess(jug(20), jug(80));
    expect(agree).toBe(false);
    expect(verdict).toBe("fails");
  });
});

describe("the odd one out", () => {
  test("is the run without which all others agree, wherever it comes", () => {
    expect(assess(jug(100), jug(150), jug(152)).odd).toBe(0);
    expect(assess(jug(150), jug(200), jug(152)).odd).toBe(1);
    expect(assess(jug(150), jug(152), scales(151), jug(100)).odd).toBe(3);
  });

  test("is nobody while all agree", () => {
    expect(assess(jug(148), jug(150), jug(152)).odd).toBeNull();
  });

  test("is nobody of two, as either may be wrong", () => {
    expect(assess(jug(100), jug(150)).odd).toBeNull();
  });

  test("is nobody when it could be either end: 140 and 148, 148 and 156 ml agree, 140 and 156 ml do not", () => {
    const { agree, odd } = assess(jug(140), jug(148), jug(156));
    expect(agree).toBe(false);
    expect(odd).toBeNull();
  });

  test("is nobody when no two agree", () => {
    expect(assess(jug(100), jug(150), jug(200)).odd).toBeNull();
    expect(assess(jug(100), jug(101), jug(200), jug(201)).odd).toBeNull();
  });

  test("is always a run without which the rest agrees", () => {
    const run = fc.record({
      volume: fc.integer({ min: 130, max: 170 }),
      unit: fc.constantFrom("ml", "g"),
      seconds: fc.constantFrom(10, 11),
    });
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 5 }), (runs) => {
        const { odd, agree } = assess(...runs);
        if (odd === null) return;
        expect(agree).toBe(false);
        expect(assess(...runs.toSpliced(odd, 1)).agree).toBe(true);
      }),
    );
  });
});

describe("water that dwindles while it is drawn", () => {
  test("falls from run to run, by more in all than runs differ by chance", () => {
    expect(assess(jug(158), jug(150), jug(142)).falling).toBe(true);
    // 300 ml in 20 s is 15 ml/s as well, so the flow falls although the jug fills up.
    expect(assess(jug(165), jug(155), jug(280, 20)).falling).toBe(true);
  });

  test("is not seen in runs that agree, even if each is a little lower", () => {
    expect(assess(jug(152), jug(150), jug(148)).falling).toBe(false);
    expect(assess(jug(160), jug(140)).falling).toBe(false);
    expect(assess(jug(150)).falling).toBe(false);
    expect(assess().falling).toBe(false);
  });

  test("is not seen when one run rises again", () => {
    expect(assess(jug(160), jug(130), jug(140)).falling).toBe(false);
    expect(assess(jug(160), jug(140), jug(140)).falling).toBe(false);
    expect(assess(jug(140), jug(160)).falling).toBe(false);
  });
});
