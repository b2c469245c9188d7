import { useState } from "preact/hooks";
import {
  assessSupply,
  checkSupply,
  fromKilopascals,
  type PressureUnit,
  type SupplyReading,
  type VolumeUnit,
} from "../../../measurement/index.ts";
import type { ReadingNeed } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Choices } from "./choices.tsx";
import { MeasureForm, Units, useEntries } from "./entries.tsx";
import { showNumber } from "./format.ts";
import { Result } from "./result.tsx";
import { Stopwatch } from "./stopwatch.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "supply" }> };

/** How much the house gives: a known vessel filled by the clock at the nearest tap, or a pressure gauge read. */
export function Supply({ need: { limits }, turn, actions, services, texts, busy }: Props) {
  const fillUnits = texts("measure.fill-units").split(" ") as VolumeUnit[];
  const gaugeUnits = texts("measure.pressure-units").split(" ") as PressureUnit[];
  const [by, setBy] = useState<SupplyReading["by"]>("fill");
  const [fillUnit, setFillUnit] = useState(fillUnits[0] ?? "l");
  const [gaugeUnit, setGaugeUnit] = useState(gaugeUnits[0] ?? "bar");
  const { accepted, accept, edit, type, read, refuseRange, field } = useEntries<
    "vessel" | "seconds" | "pressure",
    SupplyReading
  >("vessel", texts);
  const unitName = texts(`measure.unit-${by === "fill" ? fillUnit : gaugeUnit}`);
  const seconds = texts("measure.unit-seconds");

  function check() {
    const reading = by === "fill" ? readFill() : readGauge();
    if (!reading) return;
    const problem = checkSupply(reading, limits);
    if (!problem) return accept(reading);
    const at = problem.field === "volume" ? "vessel" : problem.field;
    const isTime = at === "seconds";
    refuseRange(problem, at, { unit: isTime ? seconds : unitName, own: isTime });
  }

  function readFill(): SupplyReading | null {
    const volume = read("vessel");
    const time = volume === null ? null : read("seconds");
    if (volume === null || time === null) return null;
    return { kind: "supply", by: "fill", volume, unit: fillUnit, seconds: time };
  }

  function readGauge(): SupplyReading | null {
    const value = read("pressure");
    return value === null ? null : { kind: "supply", by: "gauge", value, unit: gaugeUnit };
  }

  function resultOf(reading: SupplyReading) {
    const { value, range, limit, verdict, belowStatutory } = assessSupply(reading, limits);
    // A gauge is spoken of in its own unit; a filling in litres a minute, in which the reference is published.
    const show = (amount: number) =>
      showNumber(texts, reading.by === "gauge" ? fromKilopascals(amount, reading.unit) : amount);
    const most = limit === limits.mostKilopascals;
    const shown = {
      value: show(value.value),
      doubt: show(range.high - value.value),
      limit: show(limit),
      unit: reading.by === "gauge" ? unitName : texts("measure.unit-per-minute"),
    };
    return (
      <Result
        instrument="supply"
        verdict={verdict}
        said={texts(`measure.supply-said${most ? "-most" : ""}`, shown)}
        limit={limit}
        better={most ? "below" : "above"}
        {...range}
        limitText={texts(`measure.supply-${most ? "most" : "least"}`, shown)}
        valueText={texts("measure.supply-value", shown)}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, reading)}
      >
        {belowStatutory && <p>{texts("measure.below-statutory")}</p>}
        {(verdict === "fails" || verdict === "too-strong") && <p>{texts(`measure.no-part-${verdict}`)}</p>}
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      <Choices
        legend={texts("measure.supply-by")}
        options={(["fill", "gauge"] as const).map((each) => [each, texts(`measure.supply-by-${each}`)])}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
      />
      {by === "gauge" ? (
        <>
          <p class="small">{texts("measure.gauge-how")}</p>
          {field("pressure", { label: texts("measure.pressure-label"), unit: unitName })}
          <Units
            units={gaugeUnits}
            chosen={gaugeUnit}
            onChosen={(unit) => edit(() => setGaugeUnit(unit))}
            texts={texts}
          />
        </>
      ) : (
        <>
          {field("vessel", { label: texts("measure.vessel-label"), unit: unitName })}
          <Units
            units={fillUnits}
            chosen={fillUnit}
            onChosen={(unit) => edit(() => setFillUnit(unit))}
            texts={texts}
          />
          <Stopwatch
            seconds={limits.longestSeconds}
            up
            services={services}
            texts={texts}
            onStopped={(ran) => type("seconds", showNumber(texts, ran))}
          />
          {field("seconds", { label: texts("measure.seconds-label"), unit: seconds })}
        </>
      )}
    </MeasureForm>
  );
}
