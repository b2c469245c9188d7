import { jugUnits } from "../../measuring/index.ts";
import { readingBounds } from "../bounds.ts";
import { checkFlowRun } from "./check.ts";
import type { FlowLimits } from "./limits.ts";
import type { FlowRun } from "./reading.ts";

/** Runs as one text. */
export const writeRuns = (runs: readonly FlowRun[]) =>
  runs.map(({ volume, unit, seconds }) => `${volume} ${unit} ${seconds}`).join(";");

/** The runs of such a text that can be right, as many as a reading takes. Never throws, whatever the text. */
export function readRuns(text: string, limits: FlowLimits): FlowRun[] {
  const runs = text.split(";").flatMap((part) => {
    const [volume, named, seconds] = part.split(" ");
    const unit = jugUnits.find((each) => each === named);
    const run = unit && { volume: Number(volume), unit, seconds: Number(seconds) };
    return run && !checkFlowRun(run, limits)[0] ? [run] : [];
  });
  return runs.slice(-readingBounds.runs);
}
