import { fromMillilitres, type JugUnit, toMillilitres } from "../../measuring/index.ts";
import type { FlowLimits } from "./limits.ts";
import type { FlowReading } from "./reading.ts";

/** A flow as the person reads it off their jug. */
export type InUnit = {
  /** That of the latest run. */
  unit: JugUnit;
  /** ml/s as what comes in the time of one run, in that unit. */
  shown(perSecond: number): number;
  /** As many as say about a millilitre. */
  decimals: number;
};

/** How the flow of a reading is put into words: in the unit that was typed. */
export function inUnitOf({ runs }: FlowReading, { aimSeconds }: FlowLimits): InUnit {
  const unit = runs.at(-1)?.unit ?? "ml";
  return {
    unit,
    shown: (perSecond) => fromMillilitres(perSecond * aimSeconds, unit),
    decimals: Math.floor(Math.log10(toMillilitres(1, unit))),
  };
}
