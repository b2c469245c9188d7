import { halfWidthOf } from "./coverage.ts";
import { type Band, type Estimate, estimateOf, quotient, rangeOf } from "./estimate.ts";
import { checkRange, type RangeProblem } from "./number.ts";
import { fromGrams, type MassUnit, toGrams } from "./units.ts";

/**
 * The ice made in some hours: pieces counted roughly, ice weighed, or batches seen to fall. `pieceGrams` is one piece
 * as the person weighed it. `celsius` and `perSecond` (ml/s) are the freezer and the flow as measured before.
 */
export type IceReading = {
  kind: "ice";
  by: "pieces" | "weight" | "batches";
  amount: number;
  /** of a weight; grams unless said */
  unit?: MassUnit | undefined;
  hours: number;
  pieceGrams?: number | undefined;
  wanted: "little" | "some" | "much" | null;
  celsius?: { value: number; u: number } | undefined;
  perSecond?: { value: number; u: number } | undefined;
};

/** Everything that judges a day's ice; the numbers live with the flow data. */
export type IceLimits = {
  /** probability with which the true yield lies in the stated range, 0 to 1 */
  coverage: number;
  /** what a piece and a batch may weigh, g, anything between alike */
  pieceGrams: Band;
  batchGrams: Band;
  /** a rough count, ± fraction of it, rectangular */
  countError: number;
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: number;
  /** since when the ice was gathered, ± h, rectangular */
  hoursError: number;
  /** what a sound machine makes in 24 h at `targetC` and with `flowMinimum`, kg */
  perDay: Band;
  /** °C, below 0 */
  targetC: number;
  /** ml/s */
  flowMinimum: number;
  /** what people mean by an amount of use, kg in 24 h */
  wanted: Record<"little" | "some" | "much", Band>;
  /** range of a believable wait, h */
  shortestHours: number;
  longestHours: number;
  /** most ice that is believed, kg */
  mostKilograms: number;
};

/** All in kg per 24 h. */
export type IceAssessment = {
  perDay: Estimate;
  /** where the true yield lies, with the stated probability */
  range: Band;
  /** what a sound machine makes in the cold and with the water that were measured */
  possible: Band;
  wanted: Band | null;
  verdict: "passes" | "fails" | "demand" | "unclear";
};

/** The first thing that cannot be right about a yield, or null. No ice at all is a result, not a problem. */
export function checkIce(
  { by, amount, unit = "g", hours, pieceGrams }: IceReading,
  limits: IceLimits,
): (RangeProblem & { field: "amount" | "hours" | "pieceGrams" }) | null {
  const grams = limits.mostKilograms * 1000;
  const most = {
    pieces: grams / limits.pieceGrams.low,
    weight: fromGrams(grams, unit),
    batches: grams / limits.batchGrams.low,
  };
  const ice = checkRange(amount, { min: 0, max: most[by] });
  if (ice) return { ...ice, field: "amount" };
  const time = checkRange(hours, { min: limits.shortestHours, max: limits.longestHours });
  if (time) return { ...time, field: "hours" };
  if (by !== "pieces" || pieceGrams === undefined) return null;
  // Scales tell nothing lighter, and no piece weighs more than all of its batch.
  const piece = checkRange(pieceGrams, { min: limits.scaleReading, max: limits.batchGrams.high });
  return piece && { ...piece, field: "pieceGrams" };
}

const between = ({ low, high }: Band): Estimate =>
  estimateOf((low + high) / 2, { evenly: [(high - low) / 2] });

/** So many times a weight each, in kg; `errors` are the even ones of the number. */
function massOf(amount: number, errors: readonly number[], each: Estimate): Estimate {
  const kilograms = (grams: number) => grams / 1000;
  const evenly = [
    ...errors.map((error) => error * each.value),
    ...(each.evenly ?? []).map((e) => e * amount),
  ];
  return estimateOf(kilograms(amount * each.value), { evenly: evenly.map(kilograms) });
}

function kilogramsOf({ by, amount, unit = "g", pieceGrams }: IceReading, limits: IceLimits): Estimate {
  const scales = limits.scaleReading;
  // The full bin less the empty one: two readings.
  if (by === "weight") return massOf(toGrams(amount, unit), [scales, scales], estimateOf(1, {}));
  // A batch may just have fallen or be about to, when the time begins and when it ends: half a one at each end.
  if (by === "batches") return massOf(amount, [0.5, 0.5], between(limits.batchGrams));
  const weighed = pieceGrams !== undefined && estimateOf(pieceGrams, { evenly: [scales] });
  return massOf(amount, [limits.countError * amount], weighed || between(limits.pieceGrams));
}

/**
 * The range of a mass over a time. The time is known so roughly that the range of the quotient is not symmetric, so each
 * end is the rate at which the mass and what the rate would make in that time just differ by as much as both may err
 * (Fieller's theorem, 1954). The end stands on both sides of that equation and is found by trying it again.
 */
function rangeOfRate(mass: Estimate, days: Estimate, coverage: number): Band {
  const end = (side: number) => {
    let rate = mass.value / days.value;
    for (let step = 0; step < 12; step += 1) {
      const errors = [...(mass.evenly ?? []), ...(days.evenly ?? []).map((error) => error * rate)];
      const half = halfWidthOf(estimateOf(0, { evenly: errors }), coverage);
      rate = Math.max(0, (mass.value + side * half) / days.value);
    }
    return rate;
  };
  return { low: end(-1), high: end(1) };
}

const part = (share: number) => Math.min(1, Math.max(0, share));

/** What a sound machine makes: less the warmer it is (Plank: the time to freeze goes with 1/(0 °C − T)) and the less water runs. */
function possibleOf({ celsius, perSecond }: IceReading, limits: IceLimits): Band {
  const { perDay, targetC, flowMinimum, coverage } = limits;
  // Both as a log keeps them, without the shape of their errors, so that a replay says the same.
  const cold = celsius
    ? rangeOf({ value: celsius.value, u: celsius.u }, coverage)
    : { low: targetC, high: targetC };
  const flow = perSecond
    ? rangeOf({ value: perSecond.value, u: perSecond.u }, coverage)
    : { low: flowMinimum, high: flowMinimum };
  return {
    low: perDay.low * part(cold.high / targetC) * part(flow.low / flowMinimum),
    high: perDay.high * part(cold.low / targetC) * part(flow.high / flowMinimum),
  };
}

/**
 * The ice made in 24 hours, against what a sound machine can make and what is wanted. It fails when it surely makes
 * less than the least that is possible, passes when it surely makes that, and is 'demand' when it does and people
 * surely want more. Expects a reading that {@link checkIce} finds no fault with. Never throws.
 */
export function assessIce(reading: IceReading, limits: IceLimits): IceAssessment {
  const mass = kilogramsOf(reading, limits);
  const days = estimateOf(reading.hours / 24, { evenly: [limits.hoursError / 24] });
  const range = rangeOfRate(mass, days, limits.coverage);
  const possible = possibleOf(reading, limits);
  const wanted = (reading.wanted && limits.wanted[reading.wanted]) ?? null;
  const enough = wanted && wanted.low > range.high ? "demand" : "passes";
  return {
    perDay: quotient(mass, days),
    range,
    possible,
    wanted,
    verdict: range.high < possible.low ? "fails" : range.low >= possible.low ? enough : "unclear",
  };
}
