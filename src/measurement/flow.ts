import {
  type Band,
  combine,
  type Estimate,
  guardBand,
  quotient,
  rectangular,
  type Verdict,
  verdictAgainst,
} from "./estimate.ts";
import { checkRange, type RangeProblem } from "./number.ts";
import { fromMillilitres, toMillilitres, type VolumeUnit } from "./units.ts";

/** Water caught in one go. Grams mean that it was weighed on kitchen scales, other units a measuring jug. */
export type FlowRun = { volume: number; unit: VolumeUnit; seconds: number };

/** One or more runs of the dispenser, all through the same water path. */
export type FlowReading = { kind: "flow"; runs: readonly FlowRun[] };

/** Everything that judges a flow; the numbers live with the flow data. All are above zero. */
export type FlowLimits = {
  /** least good flow, ml/s */
  minimum: number;
  /** guard band, in standard uncertainties */
  guard: number;
  /**
   * How far apart two runs may lie, in standard uncertainties of their difference. For 5 % false alarms
   * about 2 with two runs and 2.3 with three (critical range of ISO 5725-6, from memory).
   */
  agreement: number;
  /** reading a jug's marks, ± ml, rectangular */
  jugReading: number;
  /** a jug's marks being in the wrong place, ± fraction of the volume, rectangular */
  jugScale: number;
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: number;
  /** timing one run by hand, standard uncertainty in s */
  timing: number;
  /** range of a believable run, s */
  shortestSeconds: number;
  longestSeconds: number;
  /** most water that a believable run gives, ml */
  largestMillilitres: number;
};

/** `band` is the zone around the minimum that is too close to call; all in ml/s. */
export type FlowAssessment = {
  perSecond: Estimate;
  runs: Estimate[];
  agree: boolean;
  verdict: Verdict;
  band: Band;
};

/** A problem with one of the two numbers of a run, in the unit in which it was typed. */
export type FlowProblem = RangeProblem & { field: "volume" | "seconds" };

/** What cannot be right about a run. No water at all is a result, not a problem. */
export function checkFlowRun(run: FlowRun, limits: FlowLimits): FlowProblem[] {
  const most = fromMillilitres(limits.largestMillilitres, run.unit);
  const volume = checkRange(run.volume, { min: 0, max: most });
  const seconds = checkRange(run.seconds, { min: limits.shortestSeconds, max: limits.longestSeconds });
  return [
    ...(volume ? [{ ...volume, field: "volume" as const }] : []),
    ...(seconds ? [{ ...seconds, field: "seconds" as const }] : []),
  ];
}

const onScales = (run: FlowRun) => run.unit === "g";
const inJug = (run: FlowRun) => !onScales(run);

/**
 * All the water over all the time, for runs with one kind of vessel, in ml/s.
 *
 * Each run brings its own reading and timing error, so those grow with √n while the sums grow with n.
 * The jug's marks are wrong by the same fraction every time (an effect common to all runs, correlation 1
 * in JCGM 100 5.2.2), so that error stays in full however often it is repeated. Runs in millilitres and in
 * cups count as one jug: taking two jugs for one errs on the wide side. Kitchen scales have no such term.
 */
function pool(runs: readonly FlowRun[], limits: FlowLimits): Estimate {
  const volume = runs.reduce((sum, run) => sum + toMillilitres(run.volume, run.unit), 0);
  const seconds = runs.reduce((sum, run) => sum + run.seconds, 0);
  const weighed = runs.every(onScales);
  const reading = rectangular(weighed ? limits.scaleReading : limits.jugReading) * Math.sqrt(runs.length);
  const scale = weighed ? 0 : rectangular(limits.jugScale) * volume;
  return quotient(
    { value: volume, u: Math.hypot(reading, scale) },
    { value: seconds, u: limits.timing * Math.sqrt(runs.length) },
  );
}

/** Between two runs with the same jug its scale error cancels; between a jug and scales it does not. */
function doAgree(a: FlowRun, b: FlowRun, limits: FlowLimits): boolean {
  const applied = onScales(a) === onScales(b) ? { ...limits, jugScale: 0 } : limits;
  const [one, other] = [pool([a], applied), pool([b], applied)];
  return Math.abs(one.value - other.value) <= limits.agreement * Math.hypot(one.u, other.u);
}

/**
 * The flow from one or more runs and whether it reaches the minimum. Expects runs that {@link checkFlowRun}
 * finds no fault with. Never throws: without runs, or with no time at all, the verdict is 'unclear'.
 *
 * Jug runs and weighed runs share no error, so each kind is pooled alone and the two results are weighted
 * by 1/u²; one sum over both would let a rough jug spoil a good weighing. When runs disagree the water did
 * not run evenly and the pooled uncertainty is too small: a verdict then needs every run to say the same.
 */
export function assessFlow({ runs }: FlowReading, limits: FlowLimits): FlowAssessment {
  const mixed = runs.some(onScales) && runs.some(inJug);
  const perSecond = mixed
    ? combine(pool(runs.filter(onScales), limits), pool(runs.filter(inJug), limits))
    : pool(runs, limits);
  const rule = { limit: limits.minimum, better: "above", guard: limits.guard } as const;
  const verdict = verdictAgainst(perSecond, rule);
  const each = runs.map((run) => pool([run], limits));
  const agree = runs.every((a, i) => runs.slice(i + 1).every((b) => doAgree(a, b, limits)));
  const certain = agree || each.every((run) => verdictAgainst(run, rule) === verdict);
  return {
    perSecond,
    runs: each,
    agree,
    verdict: certain ? verdict : "unclear",
    band: guardBand(perSecond.u, limits.minimum, limits.guard),
  };
}
