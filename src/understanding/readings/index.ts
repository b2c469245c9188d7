import type { InstrumentName } from "../../instruments/index.ts";
import type { Region } from "../../measuring/index.ts";
import { type Amount, amountsOf, offered, short, timeOf } from "./amounts.ts";
import { type Item, itemsOf, type lookupOf } from "./items.ts";
import { whenOf } from "./when.ts";

export { lookupOf, type ReadingWords } from "./items.ts";

/** What is to be entered, by the names under which the instrument's form keeps its entries. */
export type Entries = Record<string, string>;

type About = {
  sentence: string;
  items: Item[];
  amounts: Amount[];
  region: Pick<Region, "units" | "date-order">;
  today: string;
};

const SECONDS_PER_HOUR = 3600;

/** How an instrument's entries are found in a sentence, where they are anything that people type; null: nothing said. */
const readers: Partial<Record<InstrumentName, (about: About) => Entries | null>> = {
  flow(about) {
    const volume = volumeOf(about, about.region.units.volume);
    const seconds = timeOf(about.amounts);
    return (
      volume && {
        volume: volume.typed,
        unit: volume.unit,
        ...(seconds !== null && { seconds: short(seconds) }),
      }
    );
  },
  supply(about) {
    const pressure = about.amounts.find(({ unit }) => unit === "bar" || unit === "psi" || unit === "kPa");
    if (pressure) return { by: "gauge", pressure: pressure.typed, gauge: pressure.unit ?? "" };
    const seconds = timeOf(about.amounts);
    const vessel = volumeOf(about, about.region.units.fill);
    if (!vessel && seconds === null) return null;
    return {
      by: "fill",
      ...(vessel && { vessel: vessel.typed, fill: vessel.unit }),
      ...(seconds !== null && { seconds: short(seconds) }),
    };
  },
  temperature({ items, amounts, region }) {
    const found = amounts.find(
      ({ unit }) => unit === null || unit === "C" || unit === "F" || unit === "degrees",
    );
    if (!found) return null;
    const says = (word: string) => items.some((item) => item.kind === "word" && item.word === word);
    const isBelow = says("below") && found.value > 0;
    const stood = timeOf(amounts.filter((amount) => amount !== found));
    const isNamed = found.unit === "C" || found.unit === "F";
    return {
      temperature: isBelow ? `-${found.typed}` : found.typed,
      unit: isNamed ? (found.unit ?? "") : (region.units.temperature[0] ?? "C"),
      ...((says("thermometer") || stood !== null) && { with: "thermometer" }),
      ...(says("display") && !says("thermometer") && stood === null && { with: "display" }),
      ...(stood !== null && { stood: short(stood / 60) }),
    };
  },
  cubes({ amounts, region }) {
    const pieces = amounts.find(({ unit }) => unit === "piece");
    const mass = amounts
      .map((one) => (one.unit ? offered(one, "mass", region.units.mass) : null))
      .find(Boolean);
    if (!pieces && !mass) return null;
    return { ...(pieces && { pieces: pieces.typed }), ...(mass && { mass: mass.typed, unit: mass.unit }) };
  },
  ice({ items, amounts, region }) {
    const day = items.some((item) => item.kind === "word" && item.word === "yesterday") ? 24 : null;
    const seconds = timeOf(amounts);
    const hours = seconds === null ? day : seconds / SECONDS_PER_HOUR;
    const time = hours === null ? {} : { hours: short(hours) };
    const batches = amounts.find(({ unit }) => unit === "batch");
    if (batches)
      return { by: "batches", amount: batches.typed, ...(hours !== null && { watched: short(hours) }) };
    const mass = amounts
      .map((one) => (one.unit ? offered(one, "mass", region.units.mass) : null))
      .find(Boolean);
    if (mass) return { by: "weight", amount: mass.typed, unit: mass.unit, ...time };
    const pieces = amounts.find(({ unit }) => unit === "piece") ?? amounts.find(({ unit }) => unit === null);
    return pieces ? { by: "pieces", amount: pieces.typed, ...time } : null;
  },
  "filter-age": ({ sentence, items, region, today }) => whenOf(sentence, items, today, region["date-order"]),
};

const volumeOf = ({ amounts }: About, units: readonly string[]) =>
  amounts
    .filter(({ value }) => value >= 0)
    .map((amount) => offered(amount, "volume", units))
    .find(Boolean) ?? null;

/** The entries of an instrument that a sentence says; null where it says none. */
export function readingOf(
  sentence: string,
  instrument: InstrumentName,
  lookup: ReturnType<typeof lookupOf>,
  region: About["region"],
  today: string,
): Entries | null {
  const items = itemsOf(sentence, lookup);
  const read = readers[instrument];
  if (!read) return null;
  return read({ sentence, items, amounts: amountsOf(items), region, today });
}
