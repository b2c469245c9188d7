import type { Finding, FlowSlice } from "../chart/index.ts";
import {
  cubesLimits,
  filterLimits,
  flowLimits,
  iceLimits,
  sealLimits,
  supplyLimits,
  temperatureLimits,
} from "../guide/index.ts";
import {
  assessCubes,
  assessFilterLife,
  assessFilterShare,
  assessFlow,
  assessIce,
  assessSeal,
  assessSupply,
  assessTemperature,
  fromCelsius,
  fromGrams,
  fromKilopascals,
  type MassUnit,
} from "../measurement/index.ts";
import type { Texts } from "./actions.ts";
import { createNumbers } from "./formats.ts";

/** A reading with its uncertainty and its verdict in words, as it stands in a folded line and in the evidence. */
export function readingText(turn: string, finding: Finding, { limits }: FlowSlice, texts: Texts): string {
  const { reading, answer, at } = finding;
  const number = createNumbers(texts("ui.locale"));
  const verdict = texts(`checks.${turn}.verdicts.${answer}`) || texts(`findings.verdicts.${answer}`);
  const half = ({ low, high }: { low: number; high: number }, decimals = 1) =>
    number((high - low) / 2, decimals);
  switch (reading?.kind) {
    case "flow": {
      const bounds = flowLimits(limits);
      const { perSecond, range } = assessFlow(reading, bounds);
      const said = texts("findings.flow", {
        value: number(perSecond.value, 1),
        error: half(range),
        verdict,
      });
      const { before } = reading;
      const share = before && assessFilterShare({ kind: "flow", runs: before }, reading, bounds);
      if (!share) return said;
      const percent = (part: number) => number(part * 100, 0);
      const { low, high } = share.range;
      return `${said}. ${texts("findings.share", { low: percent(low), high: percent(high) })}`;
    }
    case "temperature": {
      const { range } = assessTemperature(reading, temperatureLimits(limits));
      const shown = (celsius: number) => fromCelsius(celsius, reading.unit);
      return texts("findings.temperature", {
        value: `${number(reading.value, 1)} °${reading.unit}`,
        error: half({ low: shown(range.low), high: shown(range.high) }),
        verdict,
      });
    }
    case "supply": {
      const { value, range } = assessSupply(reading, supplyLimits(limits));
      if (reading.by === "fill")
        return texts("findings.supply", { value: number(value.value, 1), error: half(range), verdict });
      const shown = (kilopascals: number) => fromKilopascals(kilopascals, reading.unit);
      return texts("findings.gauge", {
        value: number(reading.value, 1),
        unit: texts(`measure.unit-${reading.unit}`),
        error: half({ low: shown(range.low), high: shown(range.high) }),
        verdict,
      });
    }
    case "ice": {
      const { low, high } = assessIce(reading, iceLimits(limits)).range;
      const unit = texts("measure.day-unit") as MassUnit;
      const shown = (kilograms: number) => number(fromGrams(kilograms * 1000, unit), 2);
      return texts("findings.ice", { low: shown(low), high: shown(high), unit, verdict });
    }
    case "cubes": {
      const { grams, range } = assessCubes(reading, cubesLimits(limits));
      const unit = texts("measure.piece-unit") as MassUnit;
      const shown = (value: number) => fromGrams(value, unit);
      return texts("findings.cubes", {
        value: number(shown(grams.value), 2),
        error: half({ low: shown(range.low), high: shown(range.high) }, 2),
        unit,
        verdict,
      });
    }
    case "seal":
      return texts("findings.seal", {
        count: assessSeal(reading, sealLimits(limits)).slips,
        spots: reading.spots.filter(Boolean).length,
        verdict,
      });
    case "filter-age": {
      const { months, litres } = assessFilterLife(reading, at.slice(0, 10), filterLimits(limits));
      const age = ageText(months, texts, verdict);
      if (!litres) return age;
      const drawn = litres.high === null ? "litres-open" : "litres";
      const shown = { low: number(litres.low, 0), high: number(litres.high ?? 0, 0) };
      return `${age}. ${texts(`findings.${drawn}`, shown)}`;
    }
    default:
      return "";
  }
}

/** Whole months, rounded so that the true age lies between them. */
function ageText({ low, high }: { low: number; high: number | null }, texts: Texts, verdict: string): string {
  const number = createNumbers(texts("ui.locale"));
  const least = number(Math.floor(low), 0);
  if (high === null) return texts("findings.filter-age-open", { low: least, verdict });
  const most = number(Math.ceil(high), 0);
  return texts(`findings.filter-age${least === most ? "-one" : ""}`, { low: least, high: most, verdict });
}
