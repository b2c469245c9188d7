import {
  type Band,
  type Estimate,
  estimateOf,
  halfWidthOf,
  quotient,
  rangeOf,
  toGrams,
} from "../../measuring/index.ts";
import type { IceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";

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
 * less than the least that is possible in this cold, passes when it surely makes what one in good cold makes (a warm
 * freezer excuses little ice, it makes none of it enough), and is 'demand' when it does and people surely want more. Expects a reading that {@link checkIce} finds no fault with. Never throws.
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
    verdict: range.high < possible.low ? "fails" : range.low >= limits.enoughPerDay ? enough : "unclear",
  };
}
