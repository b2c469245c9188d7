import { normaliseCode } from "../../src/catalogue/index.ts";
import { plateCharacters, published } from "./published-confusions.ts";

/**
 * What goes wrong between a plate and a keyboard, one at a time. `look-alike` is a letter for a digit or a digit for a
 * letter, `wrong` any other character; both as published where the character is in the table.
 */
export const slipKinds = ["look-alike", "swap", "missing", "doubled", "wrong"] as const;
export type Slip = (typeof slipKinds)[number];

const isDigit = (character: string) => character >= "0" && character <= "9";

const lookAlikes = new Map<string, string[]>();
const misread = new Map<string, string[]>();
const add = (map: Map<string, string[]>, one: string, other: string) =>
  map.set(one, [...(map.get(one) ?? []), other]);
for (const [digit = "", other = ""] of published) {
  add(misread, digit, other);
  if (isDigit(other)) continue;
  add(lookAlikes, digit, other);
  add(lookAlikes, other, digit);
}

/**
 * A code with exactly one slip in its letters and digits; separators stay where they are.
 * @param code as printed
 * @param chance numbers in [0, 1)
 * @returns null where the code has no place for such a slip: no two different neighbours, nothing that looks alike
 */
export function disturb(code: string, slip: Slip, chance: () => number): string | null {
  const pick = <T>(from: readonly T[]) => from[Math.floor(chance() * from.length)];
  const places = [...code].flatMap((character, at) => (/[\p{L}\p{N}]/u.test(character) ? [at] : []));
  const at = (place: number | undefined) => code[place ?? -1] ?? "";
  const put = (place: number, text: string) => code.slice(0, place) + text + code.slice(place + 1);
  const next = (place: number) => places[places.indexOf(place) + 1];
  const fitting = places.filter((place) => {
    if (slip === "look-alike") return lookAlikes.has(at(place).toUpperCase());
    return slip !== "swap" || (next(place) !== undefined && at(place) !== at(next(place)));
  });
  const place = pick(fitting);
  if (place === undefined) return null;
  const own = at(place);
  switch (slip) {
    case "look-alike":
      return put(place, pick(lookAlikes.get(own.toUpperCase()) ?? []) ?? own);
    case "wrong": {
      const others = plateCharacters.filter((other) => other !== own.toUpperCase());
      return put(place, pick(misread.get(own) ?? others) ?? own);
    }
    case "missing":
      return put(place, "");
    case "doubled":
      return put(place, own + own);
    case "swap": {
      const other = next(place) ?? place;
      return code.slice(0, place) + at(other) + code.slice(place + 1, other) + own + code.slice(other + 1);
    }
  }
}

/** The letters and digits of a code, as codes are compared. */
export function keyOf(code: string): string {
  const read = normaliseCode(code);
  return read.kind === "code" ? read.code : "";
}
