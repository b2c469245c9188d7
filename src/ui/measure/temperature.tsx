import { useState } from "preact/hooks";
import {
  assessTemperature,
  checkTemperature,
  fromCelsius,
  type TemperatureReading,
  type TemperatureUnit,
} from "../../measurement/index.ts";
import type { ReadingNeed } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import { Form, readTyped, useEntry } from "./entry.tsx";
import { Field } from "./field.tsx";
import { showNumber } from "./format.ts";
import { Result } from "./result.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "temperature" }> };

/** A freezer temperature, off its own display or off a thermometer, with the verdict before it is used. */
export function Temperature({ need: { limits }, turn, actions, texts, busy }: Props) {
  const units = texts("measure.temperature-units").split(" ") as TemperatureUnit[];
  const [unit, setUnit] = useState(units[0] ?? "C");
  const [by, setBy] = useState<TemperatureReading["with"]>("display");
  const [typed, setTyped] = useState("");
  const { refusal, refuse, accepted, accept, edit } = useEntry<TemperatureReading>();
  const degrees = (value: number) => texts(`measure.degrees-${unit}`, { value: showNumber(texts, value) });

  function check() {
    const value = readTyped(typed, texts("measure.temperature-empty"), { refuse, texts });
    if (value === null) return;
    const reading: TemperatureReading = { kind: "temperature", value, unit, with: by };
    const problem = checkTemperature(reading, limits);
    if (!problem) return accept(reading);
    const shown = { value: degrees(value), min: degrees(problem.min), max: degrees(problem.max) };
    refuse(texts(`measure.temperature-${value < problem.min ? "too-small" : "too-large"}`, shown));
  }

  function resultOf(reading: TemperatureReading) {
    const { celsius, verdict, band } = assessTemperature(reading, limits);
    const { limitC: limit } = limits;
    const doubt = band.high - limit;
    const shown = {
      value: degrees(reading.value),
      limit: degrees(fromCelsius(limit, unit)),
      doubt: showNumber(texts, fromCelsius(doubt, unit) - fromCelsius(0, unit)),
    };
    return (
      <Result
        instrument="temperature"
        verdict={verdict}
        said={texts("measure.temperature-said", shown)}
        limit={limit}
        better="below"
        low={celsius.value - doubt}
        high={celsius.value + doubt}
        limitText={shown.limit}
        valueText={shown.value}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, reading)}
      />
    );
  }

  return (
    <Form onSent={check}>
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
          options={units.map((each) => [each, texts(`measure.unit-${each}`)])}
          chosen={unit}
          onChosen={(chosen) => edit(() => setUnit(chosen))}
        />
      </div>
      {accepted ? (
        resultOf(accepted)
      ) : (
        <button type="submit" class="main">
          {texts("measure.show-result")}
        </button>
      )}
    </Form>
  );
}
