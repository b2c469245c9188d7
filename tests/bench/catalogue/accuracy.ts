import { readNearby } from "../../../src/catalogue/shards/nearby.ts";
import { keyOf, type Slip, slipKinds } from "../../catalogue/slips.ts";
import type { Lookup } from "./lookups.ts";
import type { Typed } from "./sample.ts";

/**
 * What became of codes that were typed. `found`: shown, or one of those that were counted only; `silent`: taken without
 * a question though another was meant; `another`: what was typed is the code of another model, so that nobody could
 * know; `alike`: asked about codes that all take the same parts.
 */
export type Tally = {
  typed: number;
  exact: number;
  found: number;
  shown: number;
  first: number;
  silent: number;
  another: number;
  alike: number;
};

export const emptyTally = (): Tally => ({
  typed: 0,
  exact: 0,
  found: 0,
  shown: 0,
  first: 0,
  silent: 0,
  another: 0,
  alike: 0,
});

/** Adds one lookup to a tally. @param isKnown whether a normalised code is one of the catalogue */
export function count(
  tally: Tally,
  { code, typed }: Typed,
  { result, files }: Lookup,
  isKnown: (key: string) => boolean,
): void {
  tally.typed++;
  if (keyOf(typed) !== keyOf(code) && isKnown(keyOf(typed))) tally.another++;
  if (result.kind === "exact") {
    const isRight = result.model.code === code;
    for (const name of ["exact", "found", "shown", "first"] as const) tally[name] += Number(isRight);
    tally.silent += Number(!isRight);
  }
  if (result.kind !== "near") return;
  const place = result.candidates.findIndex(({ model }) => model.code === code);
  const isCounted =
    place < 0 && result.more > 0 && files.some(({ json }) => readNearby(json).includes(keyOf(code)));
  tally.found += Number(place >= 0 || isCounted);
  tally.shown += Number(place >= 0);
  tally.first += Number(place === 0);
  tally.alike += Number(result.differing.length === 0);
}

export type Accuracy = { right: Tally; bySlip: Record<Slip, Tally>; all: Tally };

export const emptyAccuracy = (): Accuracy => ({
  right: emptyTally(),
  bySlip: Object.fromEntries(slipKinds.map((slip) => [slip, emptyTally()])) as Record<Slip, Tally>,
  all: emptyTally(),
});

/** Adds one lookup to the tallies that it belongs to. */
export function note(
  accuracy: Accuracy,
  typed: Typed,
  lookup: Lookup,
  isKnown: (key: string) => boolean,
): void {
  const tallies = typed.slip ? [accuracy.bySlip[typed.slip], accuracy.all] : [accuracy.right];
  for (const tally of tallies) count(tally, typed, lookup, isKnown);
}
