import * as z from "zod/mini";
import { bounds } from "./bounds.ts";
import { normaliseCode } from "./model-code.ts";
import { plainText } from "./untrusted-text.ts";

/** A short text of a shop's as one printable line. What is too long is not looked at any further. */
export const label = z
  .string()
  .check(z.maxLength(bounds.label, { abort: true }), z.overwrite(plainText), z.minLength(1));

/** A fitment as a catalogue writes it: the code, and what else must stand on the plate. */
export const conditionalFit = z.object({
  code: z.string().check(z.maxLength(bounds.label)),
  variant: z.optional(label),
  serialFrom: z.optional(label),
  serialTo: z.optional(label),
});

/**
 * What must stand on the plate beside the model code for a part to fit: a production variant, or a serial number from
 * one to another, both included. Makers change a part in the middle of a model's life.
 */
export type Condition = Omit<z.infer<typeof conditionalFit>, "code">;

/** What a person read beside the model code; null where they could not find it, missing where nobody asked yet. */
export type Plate = { variant?: string | null; serial?: string | null };

/** What has to be read off the plate before it is known which part fits. */
export type Unread = { about: "variant"; choices: string[] } | { about: "serial" };

/** Whether a part fits as far as the plate was read; `unread` names what decides and is not known. */
export type Match = "fits" | "other" | "unread-variant" | "unread-serial";

/** Holds one condition against what was read. A serial that cannot be compared with the range counts as unread. */
export function matchCondition(condition: Condition | undefined, plate: Plate): Match {
  if (!condition) return "fits";
  const { variant, serialFrom, serialTo } = condition;
  if (variant !== undefined) {
    if (!plate.variant) return "unread-variant";
    const wanted = codeOf(variant);
    // A variant without letters and digits cannot be typed or compared; as a guess it would fit everything.
    if (wanted === "" || codeOf(plate.variant) !== wanted) return "other";
  }
  if (serialFrom === undefined && serialTo === undefined) return "fits";
  if (!plate.serial) return "unread-serial";
  const from = serialFrom === undefined ? 1 : compareSerials(plate.serial, serialFrom);
  const to = serialTo === undefined ? -1 : compareSerials(plate.serial, serialTo);
  if (from === null || to === null) return "unread-serial";
  return from >= 0 && to <= 0 ? "fits" : "other";
}

/**
 * Which of two serial numbers is the later: by their number where both are digits only, else sign by sign where
 * letters and digits stand at the same places. Anything else cannot be compared, and a guess would sell a part.
 * @returns below, at or above 0; null where they cannot be compared
 */
export function compareSerials(one: string, other: string): number | null {
  const [a, b] = [codeOf(one), codeOf(other)];
  if (/^\d+$/.test(a) && /^\d+$/.test(b)) {
    const [x, y] = [BigInt(a), BigInt(b)];
    return x < y ? -1 : Number(x > y);
  }
  const shape = (text: string) => text.replace(/\d/g, "0").replace(/\p{L}/gu, "A");
  if (a === "" || shape(a) !== shape(b)) return null;
  return a < b ? -1 : Number(a > b);
}

function codeOf(text: string): string {
  const read = normaliseCode(text, bounds.label);
  return read.kind === "code" ? read.code : "";
}
