import {
  type Band,
  combine,
  type Estimate,
  estimateOf,
  fromMillilitres,
  guardBand,
  quotient,
  rangeOf,
  rectangular,
  toMillilitres,
  type Verdict,
  verdictOutside,
} from "../../measuring/index.ts";
import type { FlowLimits } from "./limits.ts";
import type { FlowReading, FlowRun } from "./reading.ts";

/** What the runs come to, in ml/s. */
export type FlowAssessment = {
  perSecond: Estimate;
  /** where the true flow lies, with the stated probability */
  range: Band;
  runs: Estimate[];
  agree: boolean;
  /** the one run without which all others agree, from 0; null when there is none, or when it could be another */
  odd: number | null;
  /** each of three runs or more gave less than the one before: a throttled supply does that, a slip of the jug does not */
  falling: boolean;
  verdict: Verdict;
  /** the zone around the minimum in which such runs are too close to call */
  band: Band;
};

/** Whether the water was weighed. */
export const onScales = (run: FlowRun) => run.unit === "g";
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
  const reading = weighed ? limits.scaleReading : limits.jugReading;
  const scale = weighed ? [] : [limits.jugScale * volume];
  // The sum of several reading errors is close to normal; that of one run is even.
  const alone = runs.length === 1;
  const errors = alone
    ? { evenly: [reading, ...scale] }
    : { evenly: scale, normal: [rectangular(reading) * Math.sqrt(runs.length)] };
  return quotient(
    estimateOf(volume, errors),
    estimateOf(seconds, { normal: [limits.timing * Math.sqrt(runs.length)] }),
  );
}

/**
 * The flow that all runs come to together, in ml/s. Jug runs and weighed runs share no error, so each kind is pooled
 * alone and the two are weighted by 1/u²; one sum over both would let a rough jug spoil a good weighing.
 */
export function flowOf(runs: readonly FlowRun[], limits: FlowLimits): Estimate {
  const [weighed, poured] = [runs.filter(onScales), runs.filter(inJug)];
  if (!weighed.length || !poured.length) return pool(runs, limits);
  return combine(pool(weighed, limits), pool(poured, limits));
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
 * When runs disagree the water did not run evenly and the pooled uncertainty is too small: a verdict then needs every
 * run to say the same.
 */
export function assessFlow({ runs }: FlowReading, limits: FlowLimits): FlowAssessment {
  const { minimum, coverage } = limits;
  // A jug errs by a fraction of what it holds. Judged by the errors of a low reading, which are small ones, a flow
  // on the limit would fail too often: so by those that the runs would have on the limit.
  const onLimit = ({ unit, seconds }: FlowRun) => {
    return { volume: fromMillilitres(minimum * seconds, unit), unit, seconds };
  };
  const bandOf = (some: readonly FlowRun[]) =>
    guardBand(flowOf(some.map(onLimit), limits), minimum, coverage);
  const perSecond = flowOf(runs, limits);
  const each = runs.map((run) => pool([run], limits));
  const band = bandOf(runs);
  const verdict = verdictOutside(perSecond.value, band, "above");
  const doAll = (some: readonly FlowRun[]) =>
    some.every((a, i) => some.slice(i + 1).every((b) => doAgree(a, b, limits)));
  const agree = doAll(runs);
  const [odd = null, another] =
    agree || runs.length < 3 ? [] : [...runs.keys()].filter((i) => doAll(runs.filter((_, j) => j !== i)));
  const [first, last] = [runs[0], runs.at(-1)];
  const falls = each.every(({ value }, i) => value < (each[i - 1]?.value ?? Number.POSITIVE_INFINITY));
  const certain =
    agree || runs.every((run, i) => verdictOutside(each[i]?.value ?? 0, bandOf([run]), "above") === verdict);
  return {
    perSecond,
    range: rangeOf(perSecond, coverage),
    runs: each,
    agree,
    odd: another === undefined ? odd : null,
    falling: runs.length > 2 && falls && !!first && !!last && !doAgree(first, last, limits),
    verdict: certain ? verdict : "unclear",
    band,
  };
}
