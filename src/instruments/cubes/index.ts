import { fromGrams } from "../../measuring/index.ts";
import type { Instrument } from "../instrument.ts";
import { assessCubes, type CubesAssessment } from "./assess.ts";
import { checkCubes } from "./check.ts";
import { type CubesLimits, cubesLimits } from "./limits.ts";
import type { CubesReading } from "./reading.ts";
import { pieceUnit } from "./unit.ts";

/** A few pieces of ice on kitchen scales. */
export const cubes: Instrument<CubesReading, CubesLimits, CubesAssessment, { limits: CubesLimits }> = {
  verdicts: ["passes", "fails", "unclear"],
  limits: cubesLimits,
  check: checkCubes,
  assess: assessCubes,
  need: ({ of }) => ({ limits: cubesLimits(of) }),
  words(reading, { grams, range }, { texts, number, half, verdict }) {
    const unit = pieceUnit[reading.unit];
    const shown = (value: number) => fromGrams(value, unit);
    return texts("findings.cubes", {
      value: number(shown(grams.value), 2),
      error: half({ low: shown(range.low), high: shown(range.high) }, 2),
      unit,
      verdict,
    });
  },
};
