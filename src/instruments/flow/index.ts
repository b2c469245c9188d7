import type { Instrument } from "../instrument.ts";
import { rangeText } from "../range.ts";
import { assessFlow, type FlowAssessment } from "./assess.ts";
import { checkFlow } from "./check.ts";
import { assessFilterShare } from "./filter-share.ts";
import { type FlowLimits, flowLimits } from "./limits.ts";
import type { FlowReading, FlowRun } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

export type FlowNeed = {
  limits: FlowLimits;
  /** What was found of the house supply. */
  supply: string | null;
  /** The runs with the filter in place, where this flow is measured without it. */
  before: FlowRun[] | null;
  /** The share of the pressure from which on a filter counts as clogged. */
  muchShare: number;
};

/** Water caught by the clock. */
export const flow: Instrument<FlowReading, FlowLimits, FlowAssessment, FlowNeed> = {
  verdicts: ["passes", "fails", "unclear"],
  limits: flowLimits,
  check: checkFlow,
  assess: assessFlow,
  estimate: ({ perSecond }) => perSecond,
  need: ({ of, earlier }) => ({
    limits: flowLimits(of),
    supply: earlier("supply")?.verdict ?? null,
    before: (earlier("flow")?.reading as FlowReading | undefined)?.runs ?? null,
    muchShare: of("filter-share-much"),
  }),
  words(reading, { perSecond, range }, { texts, number, half, verdict }, limits) {
    const { unit, shown, decimals } = inUnitOf(reading, limits);
    const said = texts("findings.flow", {
      value: number(shown(perSecond.value), decimals),
      error: half({ low: shown(range.low), high: shown(range.high) }, decimals),
      unit: texts(`measure.unit-${unit}`),
      seconds: number(limits.aimSeconds, 0),
      verdict,
    });
    const { before } = reading;
    const share = before && assessFilterShare({ kind: "flow", runs: before }, reading, limits);
    if (!share) return said;
    const percent = (part: number) => number(part * 100, 0);
    const { low, high } = share.range;
    return `${said}. ${texts("findings.share", { range: rangeText(texts, percent(low), percent(high)) })}`;
  },
};
