import {
  assessFilterAge,
  assessFlow,
  assessTemperature,
  checkFittedWhen,
  checkFlowRun,
  checkTemperature,
  type FlowLimits,
  type Reading,
  type TemperatureLimits,
  type Verdict,
} from "../measurement/index.ts";
import type { Limits } from "./flow.ts";

/** @throws Error for a limit that flows/limits.yaml does not have: a fault of ours, found by any test. */
export function limitOf(limits: Limits, id: string): number {
  const value = limits[id]?.value;
  if (value === undefined) throw new Error(`There is no limit "${id}"`);
  return value;
}

/** The limits of the flow test, gathered from flows/limits.yaml. */
export function flowLimits(limits: Limits): FlowLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    minimum: of("flow-minimum"),
    guard: of("guard-factor"),
    agreement: of("run-agreement"),
    jugReading: of("jug-reading"),
    jugScale: of("jug-scale"),
    scaleReading: of("scale-reading"),
    timing: of("stopwatch"),
    shortestSeconds: of("flow-shortest"),
    longestSeconds: of("flow-longest"),
    largestMillilitres: of("flow-most"),
  };
}

/** The limits of a freezer reading, in °C and K. */
export function temperatureLimits(limits: Limits): TemperatureLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    limitC: of("freezer-for-ice"),
    guard: of("guard-factor"),
    displayError: of("display-error"),
    thermometerError: of("thermometer-error"),
    coldestC: of("temperature-lowest"),
    warmestC: of("temperature-highest"),
  };
}

/**
 * The verdict on a reading taken at `at` (RFC 3339 with the person's own offset, whose first ten characters are
 * therefore the person's own day); null for a reading that cannot be right.
 */
export function verdictOn(reading: Reading, limits: Limits, at: string): Verdict | null {
  const today = at.slice(0, 10);
  if (reading.kind === "flow") {
    const bounds = flowLimits(limits);
    if (!reading.runs.length || reading.runs.some((run) => checkFlowRun(run, bounds).length)) return null;
    return assessFlow(reading, bounds).verdict;
  }
  if (reading.kind === "temperature") {
    const bounds = temperatureLimits(limits);
    return checkTemperature(reading, bounds) ? null : assessTemperature(reading, bounds).verdict;
  }
  const earliest = `${limitOf(limits, "earliest-year")}-01-01`;
  if (checkFittedWhen(reading.fitted, today, { earliest })) return null;
  return assessFilterAge(reading, today, limitOf(limits, "filter-months")).verdict;
}
