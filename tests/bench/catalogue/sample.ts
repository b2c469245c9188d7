import { disturb, type Slip, slipKinds } from "../../catalogue/slips.ts";
import { luck } from "../households/chance.ts";

/** Some of a list, drawn by chance and all from different places while there are enough. */
export function sampleOf<T>(from: readonly T[], count: number, seed: number): T[] {
  const step = from.length / count;
  return Array.from({ length: count }, (_, at) => {
    const place = step >= 1 ? (at + luck(seed, "sample", at)) * step : luck(seed, "sample", at) * from.length;
    return from[Math.floor(place)] as T;
  });
}

/** What somebody typed who meant a code, and what went wrong. */
export type Typed = { code: string; slip: Slip | null; typed: string };

/** How a code is typed: half of the people leave out what is no letter or digit, and capitals. */
function typedAs(code: string, seed: number, at: number): string {
  return luck(seed, "typed", at) < 0.5 ? code : code.toLowerCase().replace(/[^a-z0-9]/g, "");
}

/** Codes as they are typed without a slip. */
export const typedRightly = (codes: readonly string[], seed: number): Typed[] =>
  codes.map((code, at) => ({ code, slip: null, typed: typedAs(code, seed, at) }));

/** Codes as they are typed with exactly one slip, all kinds in turn. A code without a place for one is left out. */
export function typedWrongly(codes: readonly string[], seed: number): Typed[] {
  return codes.flatMap((code, at) => {
    const slip = slipKinds[at % slipKinds.length] as Slip;
    let draw = 0;
    const slipped = disturb(code, slip, () => luck(seed, "slip", at, draw++));
    return slipped === null ? [] : [{ code, slip, typed: typedAs(slipped, seed, at) }];
  });
}
