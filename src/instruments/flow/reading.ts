import type { JugUnit } from "../../measuring/index.ts";

/** Water caught in one go. Grams mean that it was weighed on kitchen scales, other units a measuring jug. */
export type FlowRun = { volume: number; unit: JugUnit; seconds: number };

/**
 * One or more runs of the dispenser, all through the same water path; `before` has the runs that they are compared
 * with, made with the filter in place.
 */
export type FlowReading = {
  kind: "flow";
  runs: readonly FlowRun[];
  before?: readonly FlowRun[] | undefined;
};
