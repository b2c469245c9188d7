import type { ScreenProps } from "../../panel/frame/index.ts";
import {
  MeasureChoices,
  MeasureForm,
  Result,
  Stopwatch,
  showNumber,
  useEntries,
  useKept,
  useUnits,
} from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { assessSupply } from "./assess.ts";
import { checkSupply } from "./check.ts";
import type { SupplyReading } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

const upwards = "M12 19V5M6 11l6-6 6 6";

const ways: SupplyReading["by"][] = ["fill", "gauge"];

/** How much the house gives: a known vessel filled by the clock at the nearest tap, or a pressure gauge read. */
export function Screen({ need: { limits, region }, ...props }: ScreenProps & { need: NeedOf<"supply"> }) {
  const { services, texts } = props;
  const [by, setBy] = useKept<SupplyReading["by"]>(props, "by", "fill", ways);
  const { accepted, accept, edit, type, read, refuseRange, field } = useEntries<
    "vessel" | "seconds" | "pressure",
    SupplyReading
  >("vessel", props);
  const fill = useUnits(region.units.fill, props, edit, "fill");
  const gauge = useUnits(region.units.pressure, props, edit, "gauge");
  const { unitName, unitChoices } = by === "fill" ? fill : gauge;
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
    const typed = read("vessel", "seconds");
    return (
      typed && { kind: "supply", by: "fill", volume: typed.vessel, unit: fill.unit, seconds: typed.seconds }
    );
  }

  function readGauge(): SupplyReading | null {
    const typed = read("pressure");
    return typed && { kind: "supply", by: "gauge", value: typed.pressure, unit: gauge.unit };
  }

  function resultOf(reading: SupplyReading) {
    const { value, range, limit, verdict, belowStatutory } = assessSupply(reading, limits);
    const inUnit = inUnitOf(reading);
    const show = (amount: number) => showNumber(texts, inUnit.shown(amount), inUnit.decimals);
    const most = limit === limits.mostKilopascals;
    const shown = {
      value: show(value.value),
      doubt: show(range.high - value.value),
      limit: show(limit),
      unit: inUnit.unit(texts),
    };
    return (
      <Result
        {...props}
        {...range}
        name="supply"
        reading={reading}
        verdict={verdict}
        mark={verdict === "too-strong" ? upwards : undefined}
        shown={shown}
        said={texts(`measure.supply-said${most ? "-most" : ""}`, shown)}
        limit={limit}
        better={most ? "below" : "above"}
        limitText={texts(`measure.supply-${most ? "most" : "least"}`, shown)}
      >
        {belowStatutory && <p>{texts(`statutes.${region.statutes["supply-pressure"]?.says}`)}</p>}
        {(verdict === "fails" || verdict === "too-strong") && <p>{texts(`measure.no-part-${verdict}`)}</p>}
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      <MeasureChoices
        legend="supply-by"
        values={ways}
        named={(each) => `supply-by-${each}`}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
        texts={texts}
      />
      {by === "gauge" ? (
        <>
          <p class="small">{texts("measure.gauge-how")}</p>
          {field("pressure", { label: texts("measure.pressure-label"), unit: unitName })}
          {unitChoices}
        </>
      ) : (
        <>
          {field("vessel", { label: texts("measure.vessel-label"), unit: unitName })}
          {unitChoices}
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
