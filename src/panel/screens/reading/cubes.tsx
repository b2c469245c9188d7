import { useState } from "preact/hooks";
import {
  assessCubes,
  type CubesReading,
  checkCubes,
  fromGrams,
  type MassUnit,
} from "../../../measurement/index.ts";
import type { ReadingNeed } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Bar } from "./bar.tsx";
import { MeasureForm, Units, useEntries } from "./entries.tsx";
import { showNumber } from "./format.ts";
import { Result } from "./result.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "cubes" }> };

/** A few pieces on kitchen scales: what one weighs, and how full the tray was. */
export function Cubes({ need: { limits }, turn, actions, texts, busy }: Props) {
  const units = texts("measure.mass-units").split(" ") as MassUnit[];
  const [unit, setUnit] = useState(units[0] ?? "g");
  const { accepted, accept, edit, read, refuseRange, field } = useEntries<"pieces" | "mass", CubesReading>(
    "pieces",
    texts,
  );
  const unitName = texts(`measure.unit-${unit}`);

  function check() {
    const pieces = read("pieces");
    const mass = pieces === null ? null : read("mass");
    if (pieces === null || mass === null) return;
    const reading: CubesReading = { kind: "cubes", pieces, mass, unit };
    const problem = checkCubes(reading, limits);
    if (problem) refuseRange(problem, problem.field, { unit: problem.field === "mass" ? unitName : "" });
    else accept(reading);
  }

  function resultOf(reading: CubesReading) {
    const { grams, range, fill, verdict } = assessCubes(reading, limits);
    // One piece is spoken of in the smaller unit of the country.
    const pieceUnit = texts("measure.piece-unit") as MassUnit;
    const show = (value: number) => showNumber(texts, fromGrams(value, pieceUnit), 2);
    const shown = {
      unit: texts(`measure.unit-${pieceUnit}`),
      value: show(grams.value),
      doubt: show(range.high - grams.value),
      limit: show(limits.leastGrams),
    };
    return (
      <Result
        instrument="cubes"
        verdict={verdict}
        said={texts("measure.cubes-said", shown)}
        limit={limits.leastGrams}
        better="above"
        {...range}
        limitText={texts("measure.cubes-limit", shown)}
        valueText={texts("measure.cubes-value", shown)}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, reading)}
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
      <Units units={units} chosen={unit} onChosen={(chosen) => edit(() => setUnit(chosen))} texts={texts} />
    </MeasureForm>
  );
}
