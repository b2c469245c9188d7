import { useState } from "preact/hooks";
import type { Estimate } from "../../measuring/index.ts";
import type { ScreenProps } from "../../panel/frame/index.ts";
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
import { rangeText } from "../range.ts";
import { assessIce } from "./assess.ts";
import { checkIce } from "./check.ts";
import type { IceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

type Wanted = "unknown" | NonNullable<IceReading["wanted"]>;

const ways: IceReading["by"][] = ["pieces", "weight", "batches"];
const uses: Wanted[] = ["unknown", "little", "some", "much"];
const enough = "M6 9h12M6 15h12";

/** How much ice came in some hours, as a day's ice, against what the machine can make and what is used. */
export function Screen({ need, ...props }: ScreenProps & { need: NeedOf<"ice"> }) {
  const { services, texts } = props;
  const { limits, region, celsius, perSecond, since } = need;
  const [timed] = useState(() => hoursSince(since, services.now(), limits));
  const [by, setBy] = useKept<IceReading["by"]>(props, "by", "pieces", ways);
  const [wanted, setWanted] = useKept<Wanted>(props, "wanted", "unknown", uses);
  const { accepted, accept, edit, read, isEmpty, refuseRange, field } = useEntries<
    "amount" | "hours" | "watched" | "pieceGrams",
    IceReading
  >("amount", props, timed === null ? {} : { hours: showNumber(texts, timed) });
  const { unit, unitName, unitChoices } = useUnits(region.units.mass, props, edit);
  const weight = by === "weight";
  // Batches are watched for a while of their own.
  const time = by === "batches" ? "watched" : "hours";

  function check() {
    const typed = read("amount", time);
    const piece = typed && (by === "pieces" && !isEmpty("pieceGrams") ? read("pieceGrams") : {});
    if (!typed || !piece) return;
    const reading: IceReading = {
      kind: "ice",
      by,
      amount: typed.amount,
      hours: typed[time],
      wanted: wanted === "unknown" ? null : wanted,
      ...(weight ? { unit } : {}),
      ...(celsius ? { celsius: plain(celsius) } : {}),
      ...(perSecond ? { perSecond: plain(perSecond) } : {}),
      ...piece,
    };
    const problem = checkIce(reading, limits);
    if (problem) refuseRange(problem, problem.field === "hours" ? time : problem.field);
    else accept(reading);
  }

  function resultOf(reading: IceReading) {
    const { perDay, range, possible, wanted: use, verdict } = assessIce(reading, limits);
    const inUnit = inUnitOf(reading, limits);
    const show = (kilograms: number) => showNumber(texts, inUnit.shown(kilograms), inUnit.decimals);
    const inWords = ({ low, high }: { low: number; high: number }) => rangeText(texts, show(low), show(high));
    const shown = {
      unit: texts(`measure.unit-${inUnit.unit}`),
      value: show(perDay.value),
      limit: show(possible.low),
      range: inWords(range),
    };
    return (
      <Result
        {...props}
        {...range}
        name="ice"
        reading={reading}
        verdict={verdict}
        mark={verdict === "demand" ? enough : undefined}
        shown={shown}
        limit={possible.low}
        better="above"
      >
        {(celsius || perSecond) && (
          <p>{texts("measure.ice-conditions", { ...shown, range: inWords(possible) })}</p>
        )}
        {use && <p>{texts("measure.ice-wanted", { ...shown, range: inWords(use) })}</p>}
      </Result>
    );
  }

  return (
    <MeasureForm onSent={check} result={accepted && resultOf(accepted)} texts={texts}>
      <MeasureChoices
        legend="ice-by"
        values={ways}
        named={(each) => `ice-by-${each}`}
        chosen={by}
        onChosen={(chosen) => edit(() => setBy(chosen))}
        texts={texts}
      />
      {field("amount", {
        label: texts(`measure.ice-${by}`),
        keys: weight ? "decimal" : "numeric",
        unit: weight ? unitName : "",
      })}
      {weight && unitChoices}
      {by === "pieces" &&
        field("pieceGrams", { label: texts("measure.ice-piece-grams"), unit: texts("measure.unit-g") })}
      {field(time, {
        label: texts(`measure.ice-hours-${by}`),
        unit: texts("measure.unit-hours"),
        note: timed !== null && time === "hours" ? texts("measure.ice-hours-timed") : "",
      })}
      <MeasureChoices
        legend="ice-use"
        values={uses}
        named={(each) => `ice-use-${each}`}
        chosen={wanted}
        onChosen={(chosen) => edit(() => setWanted(chosen))}
        texts={texts}
      />
    </MeasureForm>
  );
}

const MS_PER_HOUR = 3_600_000;

/** How long the wait has taken, in hours; null where there was none, or none that a reading could have. */
function hoursSince(since: string | null, now: string, limits: IceLimits): number | null {
  const hours = (Date.parse(now) - Date.parse(since ?? "")) / MS_PER_HOUR;
  return hours >= limits.shortestHours && hours <= limits.longestHours ? hours : null;
}

/** An estimate as a log keeps it, without the shape of its errors. */
const plain = ({ value, u }: Estimate) => ({ value, u });
