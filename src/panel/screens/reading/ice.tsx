import { useState } from "preact/hooks";
import {
  assessIce,
  checkIce,
  fromGrams,
  type IceReading,
  type MassUnit,
} from "../../../measurement/index.ts";
import type { ReadingNeed } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Choices } from "./choices.tsx";
import { MeasureForm, Units, useEntries } from "./entries.tsx";
import { showNumber } from "./format.ts";
import { Result } from "./result.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "ice" }> };
type Wanted = "unknown" | NonNullable<IceReading["wanted"]>;

const ways: IceReading["by"][] = ["pieces", "weight", "batches"];
const uses: Wanted[] = ["unknown", "little", "some", "much"];

/** How much ice came in some hours, as a day's ice, against what the machine can make and what is used. */
export function Ice({ need: { limits, celsius, perSecond }, turn, actions, texts, busy }: Props) {
  const units = texts("measure.mass-units").split(" ") as MassUnit[];
  const [by, setBy] = useState<IceReading["by"]>("pieces");
  const [unit, setUnit] = useState(units[0] ?? "g");
  const [wanted, setWanted] = useState<Wanted>("unknown");
  const { accepted, accept, edit, read, isEmpty, refuseRange, field } = useEntries<
    "amount" | "hours" | "pieceGrams",
    IceReading
  >("amount", texts);
  const weight = by === "weight";

  function check() {
    const amount = read("amount");
    const hours = amount === null ? null : read("hours");
    if (amount === null || hours === null) return;
    const reading: IceReading = {
      kind: "ice",
      by,
      amount,
      hours,
      wanted: wanted === "unknown" ? null : wanted,
      ...(weight ? { unit } : {}),
      ...(celsius ? { celsius: { value: celsius.value, u: celsius.u } } : {}),
      ...(perSecond ? { perSecond: { value: perSecond.value, u: perSecond.u } } : {}),
    };
    if (by === "pieces" && !isEmpty("pieceGrams")) {
      const grams = read("pieceGrams");
      if (grams === null) return;
      reading.pieceGrams = grams;
    }
    const problem = checkIce(reading, limits);
    if (problem) refuseRange(problem, problem.field);
    else accept(reading);
  }

  function resultOf(reading: IceReading) {
    const { perDay, range, possible, wanted: use, verdict } = assessIce(reading, limits);
    // A day's ice is spoken of in the larger unit of the country.
    const dayUnit = texts("measure.day-unit") as MassUnit;
    const show = (kilograms: number) => showNumber(texts, fromGrams(kilograms * 1000, dayUnit), 2);
    const shown = {
      unit: texts(`measure.unit-${dayUnit}`),
      low: show(range.low),
      high: show(range.high),
      value: show(perDay.value),
      limit: show(possible.low),
      most: show(possible.high),
    };
    return (
      <Result
        instrument="ice"
        verdict={verdict}
        said={texts("measure.ice-said", shown)}
        limit={possible.low}
        better="above"
        {...range}
        limitText={texts("measure.ice-limit", shown)}
        valueText={texts("measure.ice-value", shown)}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, reading)}
      >
        {(celsius || perSecond) && <p>{texts("measure.ice-conditions", shown)}</p>}
        {use && <p>{texts("measure.ice-wanted", { ...shown, low: show(use.low), high: show(use.high) })}</p>}
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      <Choices
        legend={texts("measure.ice-by")}
        options={ways.map((each) => [each, texts(`measure.ice-by-${each}`)])}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
      />
      {field("amount", {
        label: texts(`measure.ice-${by}`),
        keys: weight ? "decimal" : "numeric",
        unit: weight ? texts(`measure.unit-${unit}`) : "",
      })}
      {weight && (
        <Units units={units} chosen={unit} onChosen={(chosen) => edit(() => setUnit(chosen))} texts={texts} />
      )}
      {by === "pieces" &&
        field("pieceGrams", { label: texts("measure.ice-piece-grams"), unit: texts("measure.unit-g") })}
      {field("hours", { label: texts(`measure.ice-hours-${by}`), unit: texts("measure.unit-hours") })}
      <Choices
        legend={texts("measure.ice-use")}
        options={uses.map((each) => [each, texts(`measure.ice-use-${each}`)])}
        chosen={wanted}
        onChosen={(chosen) => edit(() => setWanted(chosen))}
      />
    </MeasureForm>
  );
}
