import { useState } from "preact/hooks";
import { fromCelsius } from "../../measuring/index.ts";
import { Ask, type ScreenProps } from "../../panel/frame/index.ts";
import {
  MeasureChoices,
  MeasureForm,
  Result,
  showNumber,
  useEntries,
  useKept,
  useUnits,
} from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { assessTemperature } from "./assess.ts";
import { checkTemperature, mayLackMinus } from "./check.ts";
import { freezingTimeRatio } from "./freezing.ts";
import { FreezingTime } from "./freezing-time.tsx";
import type { TemperatureReading } from "./reading.ts";

const MINUTES_PER_HOUR = 60;

const ways: TemperatureReading["with"][] = ["display", "thermometer"];

/** A temperature, off the machine's own display or off a thermometer, with the verdict before it is used. */
export function Screen({ need, ...props }: ScreenProps & { need: NeedOf<"temperature"> }) {
  const { texts } = props;
  const { limits, region, place, targetC } = need;
  const hasDisplay = place !== "ice-maker";
  const [by, setBy] = useKept<TemperatureReading["with"]>(
    props,
    "with",
    hasDisplay ? "display" : "thermometer",
    hasDisplay ? ways : ["thermometer"],
  );
  const { accepted, accept, edit, type, read, isEmpty, refuseRange, field } = useEntries<
    "temperature" | "stood",
    TemperatureReading
  >("temperature", props);
  /** A reading above zero that is meant so. */
  const [sure, setSure] = useState<TemperatureReading | null>(null);
  const { unit, unitName, unitChoices } = useUnits(region.units.temperature, props, edit);
  const degrees = (value: number) => texts(`measure.degrees-${unit}`, { value: showNumber(texts, value) });
  // A glass of water takes hours, packs take minutes.
  const minutesPer = place === "fridge" ? MINUTES_PER_HOUR : 1;
  const stand = place === "fridge" ? "fridge" : "freezer";

  function check() {
    const typed = read("temperature");
    if (!typed) return;
    const reading: TemperatureReading = { kind: "temperature", value: typed.temperature, unit, with: by };
    if (place !== "freezer") reading.place = place;
    const problem = checkTemperature(reading, limits);
    if (problem) return refuseRange(problem, "temperature", { unit: unitName, own: true });
    if (by === "thermometer" && !isEmpty("stood")) {
      const { stood } = read("stood") ?? {};
      if (stood === undefined) return;
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
        {...props}
        {...range}
        name={place === "fridge" ? "fridge" : "temperature"}
        reading={reading}
        verdict={verdict}
        shown={shown}
        said={texts("measure.temperature-said", shown)}
        limit={limit}
        better="below"
        limitText={shown.limit}
        valueText={shown.value}
      >
        {!settled && (
          <p>{texts(`measure.unsettled-${stand}`, { count: Math.ceil(minutesNeeded / minutesPer) })}</p>
        )}
        {place !== "fridge" && (
          <FreezingTime
            ratio={freezingTimeRatio(celsius, targetC, limits.coverage)}
            target={degrees(fromCelsius(targetC, unit))}
            texts={texts}
          />
        )}
      </Result>
    );
  }

  function askMinus(reading: TemperatureReading) {
    const value = -reading.value;
    const [below, above] = [degrees(value), degrees(reading.value)];
    return (
      <Ask text={texts("measure.minus-ask", { below })}>
        <div class="answers">
          <button
            type="button"
            class="main"
            onClick={() => {
              type("temperature", `${value}`);
              accept({ ...reading, value });
            }}
          >
            {texts("measure.minus-yes", { below })}
          </button>
          <button type="button" onClick={() => setSure(reading)}>
            {texts("measure.minus-no", { above })}
          </button>
        </div>
      </Ask>
    );
  }

  const isAsked = accepted && accepted !== sure && mayLackMinus(accepted);
  const result = accepted && (isAsked ? askMinus(accepted) : resultOf(accepted));

  return (
    <MeasureForm onSent={check} result={result} texts={texts}>
      {hasDisplay && (
        <MeasureChoices
          legend="read-off"
          values={ways}
          named={(each) => `with-${each}-${place}`}
          chosen={by}
          onChosen={(chosen) => edit(() => setBy(chosen))}
          texts={texts}
        />
      )}
      <div class="row">
        {/* Plain keys: a minus may be typed, and iPhone number keypads have none. */}
        {field("temperature", { label: texts("measure.temperature-label"), keys: "text" })}
        {unitChoices}
      </div>
      {by === "thermometer" &&
        field("stood", { label: texts("measure.stood-label"), unit: texts(`measure.stood-${stand}`) })}
    </MeasureForm>
  );
}
