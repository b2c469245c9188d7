import { askLimits, type Limits, type Region } from "../measuring/index.ts";
import { cubes } from "./cubes/index.ts";
import { filterAge } from "./filter-age/index.ts";
import { flow } from "./flow/index.ts";
import { ice } from "./ice/index.ts";
import type { Asked, Asking, Instrument, Saying } from "./instrument.ts";
import { seal } from "./seal/index.ts";
import { supply } from "./supply/index.ts";
import { temperature } from "./temperature/index.ts";

export { readingBounds } from "./bounds.ts";
export type { Asked, Texts } from "./instrument.ts";
export { type TemperaturePlace, temperaturePlaces } from "./temperature/index.ts";

/** The instruments, by the `kind` of their readings. Their schemas and screens are listed apart. */
const instruments = {
  flow,
  temperature,
  "filter-age": filterAge,
  supply,
  ice,
  cubes,
  seal,
};

type Instruments = typeof instruments;
export type InstrumentName = keyof Instruments;
type PartsOf<Name extends InstrumentName> =
  Instruments[Name] extends Instrument<infer Reading, infer _, infer Found, infer Need>
    ? { reading: Reading; found: Found; need: Need }
    : never;

/** A measured answer, as plain JSON that a log can store. */
export type Reading = { [Name in InstrumentName]: PartsOf<Name>["reading"] }[InstrumentName];

/** What an instrument may say of a reading: in order or not, too close to call, or in which other way not. */
export type ReadingVerdict = { [Name in InstrumentName]: PartsOf<Name>["found"]["verdict"] }[InstrumentName];

/** What the screen of an instrument needs to know; every number comes from flows/limits.yaml. */
export type NeedOf<Name extends InstrumentName> = PartsOf<Name>["need"] & { region: Region };
export type ReadingNeed = { [Name in InstrumentName]: { instrument: Name } & NeedOf<Name> }[InstrumentName];

/** Any of them, as those see it who know no kind. */
type Any = Instrument<Reading, unknown, { verdict: ReadingVerdict }, object>;
const instrumentOf = (name: string) => instruments[name as InstrumentName] as unknown as Any;

export const instrumentNames = Object.keys(instruments) as InstrumentName[];

/** What an instrument may say; a turn that takes its reading has to go on from each. */
export function verdictsOf(name: InstrumentName): readonly ReadingVerdict[] {
  return instrumentOf(name).verdicts;
}

/** All that any of them may say. */
export const everyVerdict = [...new Set(instrumentNames.flatMap(verdictsOf))];

/**
 * The verdict on a reading taken at `at` (RFC 3339 with the person's own offset, whose first ten characters are
 * therefore the person's own day); null for a reading that cannot be right.
 */
export function verdictOn(reading: Reading, limits: Limits, at: string): ReadingVerdict | null {
  const instrument = instrumentOf(reading.kind);
  const own = instrument.limits(askLimits(limits));
  const isWrong = instrument.check(reading, own, dayOf(at)) !== null;
  return isWrong ? null : instrument.assess(reading, own, dayOf(at)).verdict;
}

/**
 * Until when a filter is good, 'YYYY-MM-DD': the earliest day still to come on which it may be due, else the day on which
 * it was due at the latest. Null for a reading of anything else, or one that cannot be right.
 */
export function filterDueOn(reading: Reading, limits: Limits, at: string): string | null {
  if (reading.kind !== "filter-age" || !verdictOn(reading, limits, at)) return null;
  const { earliest, latest } = filterAge.assess(
    reading,
    filterAge.limits(askLimits(limits)),
    dayOf(at),
  ).dueOn;
  return [earliest, latest].find((day) => day !== null && day > dayOf(at)) ?? latest;
}

/** A reading as it stands in the evidence: with its doubt, and its verdict in words. */
export function wordsOf(reading: Reading, limits: Limits, at: string, saying: Saying): string {
  const instrument = instrumentOf(reading.kind);
  const own = instrument.limits(askLimits(limits));
  return instrument.words(reading, instrument.assess(reading, own, dayOf(at)), saying, own);
}

const dayOf = (at: string) => at.slice(0, 10);

/** Where a turn asks for a reading, or where one was taken; null for an instrument that knows one place only. */
export function placeOf(name: string, of: { place?: string | undefined }): string | null {
  return instrumentOf(name)?.place?.(of) ?? null;
}

/** Whether a reading is what a turn asks for: made with its instrument, and at its place. */
export function answersTurn(reading: Reading, { instrument, place }: Asked): boolean {
  const taken = placeOf(reading.kind, reading as Pick<Asked, "place">);
  return reading.kind === instrument && taken === placeOf(instrument, { place });
}

/**
 * What the screen of an instrument needs to know.
 * @param now RFC 3339; only its day matters
 * @param since when the wait of the same check began
 * @param earlier the readings that this one is compared with, the first of a kind counts
 */
export function needOf(
  name: InstrumentName,
  {
    of,
    region,
    place,
    now,
    since = null,
    earlier,
  }: Pick<Asking, "of" | "region" | "place"> & {
    now: string;
    since?: Asking["since"];
    earlier: readonly Reading[];
  },
): ReadingNeed {
  const asking: Asking = {
    of,
    region,
    place,
    today: dayOf(now),
    since,
    earlier(kind) {
      const reading = earlier.find((each) => each.kind === kind);
      if (!reading) return null;
      const instrument = instrumentOf(kind);
      const found = instrument.assess(reading, instrument.limits(of), dayOf(now));
      return { reading, verdict: found.verdict, estimate: instrument.estimate?.(found) ?? null };
    },
  };
  return { instrument: name, region, ...instrumentOf(name).need(asking) } as ReadingNeed;
}
