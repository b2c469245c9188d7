import { describe, expect, test } from "vitest";
import { createDraws, shareOf } from "../../../tests/measuring/coverage-draws.ts";
import { assessIce } from "./assess.ts";
import { iceLimits } from "./example-limits.ts";
import type { IceReading } from "./reading.ts";

/*
 * JCGM 101:2008: draw each quantity from what its reading says of it, push it through the model, and count how often
 * the result lies in the range that is claimed. The seed is fixed.
 */
const trials = 20_000;
type Case = Pick<IceReading, "by" | "amount" | "hours" | "pieceGrams">;

/** How often the true yield, as far as the reading tells, lies in the range. */
function simulate({ by, amount, hours, pieceGrams }: Case, coverage: number) {
  const limits = { ...iceLimits, coverage };
  const { range } = assessIce({ kind: "ice", by, amount, hours, pieceGrams, wanted: null }, limits);
  const { even } = createDraws(20_080_101);
  const within = ({ low, high }: { low: number; high: number }) => (low + high) / 2 + even((high - low) / 2);
  const scales = limits.scaleReading;
  const grams = {
    weight: () => amount + even(scales) + even(scales),
    pieces: () =>
      amount *
      (1 + even(limits.countError)) *
      (pieceGrams === undefined ? within(limits.pieceGrams) : pieceGrams + even(scales)),
    batches: () => (amount + even(0.5) + even(0.5)) * within(limits.batchGrams),
  };
  const truth = () => (grams[by]() / 1000 / (hours + even(limits.hoursError))) * 24;
  return shareOf(trials, () => {
    const perDay = truth();
    return range.low <= perDay && perDay <= range.high;
  });
}

describe.each<[string, Case]>([
  ["weighed after a day", { by: "weight", amount: 1200, hours: 24 }],
  ["weighed after three hours", { by: "weight", amount: 150, hours: 3 }],
  ["a little, weighed after six hours", { by: "weight", amount: 20, hours: 6 }],
  ["pieces of unknown weight after a day", { by: "pieces", amount: 70, hours: 24 }],
  ["pieces of unknown weight after four hours", { by: "pieces", amount: 12, hours: 4 }],
  ["pieces, one of which was weighed", { by: "pieces", amount: 70, hours: 24, pieceGrams: 17.5 }],
  ["pieces, one weighed, after three hours", { by: "pieces", amount: 9, hours: 3, pieceGrams: 12 }],
  ["many batches in a day", { by: "batches", amount: 12, hours: 24 }],
  ["three batches in five hours", { by: "batches", amount: 3, hours: 5 }],
])("%s", (_, reading) => {
  test.each([0.9, 0.95, 0.98])(
    "the range holds the true yield with the probability %d, to 1 %",
    (coverage) => {
      expect(Math.abs(simulate(reading, coverage) - coverage)).toBeLessThan(0.01);
    },
  );
});

test("a batch that falls now and then, watched from any moment on, is counted within ±1 of what the time makes", () => {
  // The count of something periodic in a window differs from the mean count by a triangle of half-width 1.
  const { even } = createDraws(20_080_101);
  const limits = { ...iceLimits, batchGrams: { low: 140, high: 140 }, hoursError: 1e-9 };
  const rangeFor = (amount: number) =>
    assessIce({ kind: "ice", by: "batches", amount, hours: 12, wanted: null }, limits).range;
  const ranges = Array.from({ length: 10 }, (_, amount) => rangeFor(amount));
  const covered = shareOf(trials, () => {
    const mean = 6 + even(2);
    const range = ranges[Math.floor(mean + 0.5 + even(0.5))] ?? { low: 0, high: 0 };
    const truth = (mean * 0.14 * 24) / 12;
    return range.low <= truth && truth <= range.high;
  });
  expect(Math.abs(covered - 0.98)).toBeLessThan(0.01);
});
