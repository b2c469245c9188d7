import { fromCelsius } from "../../measuring/index.ts";
import type { Instrument } from "../instrument.ts";
import { assessTemperature, type TemperatureAssessment } from "./assess.ts";
import { checkTemperature } from "./check.ts";
import { type TemperatureLimits, temperatureLimits } from "./limits.ts";
import { type TemperaturePlace, temperaturePlaces } from "./places.ts";
import type { TemperatureReading } from "./reading.ts";

export { type TemperaturePlace, temperaturePlaces };

export type TemperatureNeed = { place: TemperaturePlace; targetC: number; limits: TemperatureLimits };

const placeOf = ({ place }: { place?: string | undefined }): TemperaturePlace =>
  temperaturePlaces.find((one) => one === place) ?? "freezer";

/** A temperature in freezer or fridge. */
export const temperature: Instrument<
  TemperatureReading,
  TemperatureLimits,
  TemperatureAssessment,
  TemperatureNeed
> = {
  verdicts: ["passes", "fails", "unclear"],
  limits: temperatureLimits,
  check: checkTemperature,
  assess: assessTemperature,
  estimate: ({ celsius }) => celsius,
  place: placeOf,
  need: ({ of, place }) => ({
    place: placeOf({ place }),
    targetC: of("freezer-target"),
    limits: temperatureLimits(of),
  }),
  words({ value, unit }, { range }, { texts, number, half, verdict }) {
    const shown = (celsius: number) => fromCelsius(celsius, unit);
    return texts("findings.temperature", {
      value: `${number(value, 1)} °${unit}`,
      error: half({ low: shown(range.low), high: shown(range.high) }),
      verdict,
    });
  },
};
