import { useState } from "preact/hooks";
import {
  assessTemperature,
  checkTemperature,
  fromCelsius,
  readNumber,
  type TemperatureReading,
  type TemperatureUnit,
} from "../../measurement/index.ts";
import type { ReadingNeed } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import { Field, type Refusal } from "./field.tsx";
import { showNumber } from "./format.ts";
import { Result } from "./result.tsx";
import { spanAround } from "./scale.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "temperature" }> };

/** A freezer temperature, off its own display or off a thermometer, with the verdict before it is used. */
export function Temperature({ need: { limits }, turn, actions, texts, busy }: Props) {
  const units = texts("measure.temperature-units").split(" ") as TemperatureUnit[];
  const [unit, setUnit] = useState<TemperatureUnit>(units[0] ?? "C");
  const [by, setBy] = useState<TemperatureReading["with"]>("display");
  const [typed, setTyped] = useState("");
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [reading, setReading] = useState<TemperatureReading | null>(null);

  /** Whatever is changed, an earlier verdict no longer holds. */
  function edit(change: () => void) {
    change();
    setRefusal(null);
    setReading(null);
  }

  const degrees = (value: number) => texts(`measure.degrees-${unit}`, { value: showNumber(texts, value) });

  function check() {
    const read = readNumber(typed);
    if (read.kind === "empty") return setRefusal({ text: texts("measure.temperature-empty") });
    if (read.kind === "unreadable") {
      return setRefusal({ text: texts("measure.unreadable", { typed: read.typed }) });
    }
    const next: TemperatureReading = { kind: "temperature", value: read.value, unit, with: by };
    const problem = checkTemperature(next, limits);
    if (!problem) return setReading(next);
    const { value, min, max } = problem;
    const shown = { value: degrees(value), min: degrees(min), max: degrees(max) };
    setRefusal({ text: texts(`measure.temperature-${value < min ? "too-small" : "too-large"}`, shown) });
  }

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        check();
      }}
    >
      <Choices
        legend={texts("measure.read-off")}
        options={(["display", "thermometer"] as const).map((each) => [each, texts(`measure.with-${each}`)])}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
      />
      {by === "thermometer" && <p class="small">{texts("measure.thermometer-how")}</p>}
      <div class="row">
        <Field
          label={texts("measure.temperature-label")}
          typed={typed}
          onTyped={(text) => edit(() => setTyped(text))}
          refusal={refusal}
          short
        />
        <Choices
          legend={texts("measure.measured-in")}
          options={units.map((each) => [each, texts(`measure.unit-${each}`)] as const)}
          chosen={unit}
          onChosen={(chosen) => edit(() => setUnit(chosen))}
        />
      </div>
      {!reading && (
        <button type="submit" class="main">
          {texts("measure.show-result")}
        </button>
      )}
      {reading && (
        <TemperatureResult reading={reading} limits={limits} degrees={degrees} texts={texts}>
          <button
            type="button"
            class="main"
            aria-disabled={busy}
            onClick={() => actions.measure(turn.turn, reading)}
          >
            {texts("measure.use")}
          </button>
        </TemperatureResult>
      )}
    </form>
  );
}

type ResultProps = Pick<ScreenProps, "texts"> & {
  reading: TemperatureReading;
  limits: Props["need"]["limits"];
  degrees(value: number): string;
  children: preact.ComponentChildren;
};

function TemperatureResult({ reading, limits, degrees, texts, children }: ResultProps) {
  const { celsius, verdict, band } = assessTemperature(reading, limits);
  const { limitC } = limits;
  const doubtC = band.high - limitC;
  const inUnit = (value: number) => fromCelsius(value, reading.unit);
  const shown = {
    value: degrees(reading.value),
    limit: degrees(inUnit(limitC)),
    doubt: showNumber(texts, inUnit(doubtC) - inUnit(0)),
  };
  return (
    <Result
      instrument="temperature"
      verdict={verdict}
      said={texts("measure.temperature-said", shown)}
      scale={{
        ...spanAround(limitC, celsius.value, doubtC),
        limit: limitC,
        better: "below",
        low: celsius.value - doubtC,
        high: celsius.value + doubtC,
        value: celsius.value,
        limitText: texts("measure.temperature-limit", shown),
        valueText: shown.value,
      }}
      texts={texts}
    >
      {children}
    </Result>
  );
}
