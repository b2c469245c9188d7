import { useState } from "preact/hooks";
import {
  assessTemperature,
  checkTemperature,
  freezingTimeRatio,
  fromCelsius,
  type TemperatureReading,
  type TemperatureUnit,
} from "../../../measurement/index.ts";
import type { ReadingNeed } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Choices } from "./choices.tsx";
import { MeasureForm, Units, useEntries } from "./entries.tsx";
import { showNumber } from "./format.ts";
import { FreezingTime } from "./freezing-time.tsx";
import { Result } from "./result.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "temperature" }> };

const MINUTES_PER_HOUR = 60;

/** A temperature, off the machine's own display or off a thermometer, with the verdict before it is used. */
export function Temperature({ need: { limits, place, targetC }, turn, actions, texts, busy }: Props) {
  const units = texts("measure.temperature-units").split(" ") as TemperatureUnit[];
  const [unit, setUnit] = useState(units[0] ?? "C");
  const [by, setBy] = useState<TemperatureReading["with"]>("display");
  const { accepted, accept, edit, read, isEmpty, refuseRange, field } = useEntries<
    "temperature" | "stood",
    TemperatureReading
  >("temperature", texts);
  const degrees = (value: number) => texts(`measure.degrees-${unit}`, { value: showNumber(texts, value) });
  // A glass of water takes hours, packs take minutes.
  const minutesPer = place === "fridge" ? MINUTES_PER_HOUR : 1;

  function check() {
    const value = read("temperature");
    if (value === null) return;
    const reading: TemperatureReading = { kind: "temperature", value, unit, with: by };
    if (place === "fridge") reading.place = place;
    const problem = checkTemperature(reading, limits);
    if (problem)
      return refuseRange(problem, "temperature", { unit: texts(`measure.unit-${unit}`), own: true });
    if (by === "thermometer" && !isEmpty("stood")) {
      const stood = read("stood");
      if (stood === null) return;
      if (stood < 0)
        return refuseRange({ code: "negative", value: stood, min: 0, max: 0 }, "stood", { own: true });
      reading.stood = stood * minutesPer;
    }
    accept(reading);
  }

  function resultOf(reading: TemperatureReading) {
    const { celsius, verdict, range, limit, settled, minutesNeeded } = assessTemperature(reading, limits);
    const doubt = range.high - celsius.value;
    const shown = {
      value: degrees(reading.value),
      limit: degrees(fromCelsius(limit, unit)),
      doubt: showNumber(texts, fromCelsius(doubt, unit) - fromCelsius(0, unit)),
    };
    return (
      <Result
        instrument={place === "fridge" ? "fridge" : "temperature"}
        verdict={verdict}
        said={texts("measure.temperature-said", shown)}
        limit={limit}
        better="below"
        {...range}
        limitText={shown.limit}
        valueText={shown.value}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, reading)}
      >
        {!settled && (
          <p>{texts(`measure.unsettled-${place}`, { count: Math.ceil(minutesNeeded / minutesPer) })}</p>
        )}
        {place === "freezer" && (
          <FreezingTime
            ratio={freezingTimeRatio(celsius, targetC, limits.coverage)}
            target={degrees(fromCelsius(targetC, unit))}
            texts={texts}
          />
        )}
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      <Choices
        legend={texts("measure.read-off")}
        options={(["display", "thermometer"] as const).map((each) => [
          each,
          texts(`measure.with-${each}-${place}`),
        ])}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
      />
      {by === "thermometer" && <p class="small">{texts(`measure.thermometer-${place}`)}</p>}
      <div class="row">
        {/* Plain keys: a minus may be typed, and iPhone number keypads have none. */}
        {field("temperature", { label: texts("measure.temperature-label"), keys: "text" })}
        <Units units={units} chosen={unit} onChosen={(chosen) => edit(() => setUnit(chosen))} texts={texts} />
      </div>
      {by === "thermometer" &&
        field("stood", { label: texts("measure.stood-label"), unit: texts(`measure.stood-${place}`) })}
    </MeasureForm>
  );
}
