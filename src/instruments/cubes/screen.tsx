import { fromGrams } from "../../measuring/index.ts";
import type { ScreenProps } from "../../panel/frame/index.ts";
import {
  Bar,
  MeasureForm,
  Result,
  showNumber,
  useEntries,
  useUnits,
} from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { assessCubes } from "./assess.ts";
import { checkCubes } from "./check.ts";
import type { CubesReading } from "./reading.ts";
import { pieceUnit } from "./unit.ts";

/** A few pieces on kitchen scales: what one weighs, and how full the tray was. */
export function Screen({ need: { limits, region }, ...props }: ScreenProps & { need: NeedOf<"cubes"> }) {
  const { texts } = props;
  const { accepted, accept, edit, read, refuseRange, field } = useEntries<"pieces" | "mass", CubesReading>(
    "pieces",
    props,
  );
  const { unit, unitName, unitChoices } = useUnits(region.units.mass, props, edit);

  function check() {
    const typed = read("pieces", "mass");
    if (!typed) return;
    const reading: CubesReading = { kind: "cubes", ...typed, unit };
    const problem = checkCubes(reading, limits);
    if (problem) refuseRange(problem, problem.field, { unit: problem.field === "mass" ? unitName : "" });
    else accept(reading);
  }

  function resultOf(reading: CubesReading) {
    const { grams, range, fill, verdict } = assessCubes(reading, limits);
    const each = pieceUnit[reading.unit];
    const show = (value: number) => showNumber(texts, fromGrams(value, each), 2);
    const shown = {
      unit: texts(`measure.unit-${each}`),
      value: show(grams.value),
      doubt: show(range.high - grams.value),
      limit: show(limits.leastGrams),
    };
    return (
      <Result
        {...props}
        {...range}
        name="cubes"
        reading={reading}
        verdict={verdict}
        shown={shown}
        limit={limits.leastGrams}
        better="above"
      >
        <p>{texts("measure.cubes-fill", { percent: showNumber(texts, fill * 100, 0) })}</p>
        <Bar
          low={fill}
          high={fill}
          start={texts("measure.fill-empty")}
          end={texts("measure.fill-full", { ...shown, value: show(limits.nominalGrams) })}
        />
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      {field("pieces", { label: texts("measure.pieces-label"), keys: "numeric" })}
      {field("mass", { label: texts("measure.mass-label"), unit: unitName })}
      {unitChoices}
    </MeasureForm>
  );
}
