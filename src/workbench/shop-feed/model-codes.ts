import { longestCode, normaliseCode } from "../../catalogue/index.ts";
import { isPattern } from "../feed/index.ts";

/** Whether a spreadsheet has made a number of a code: `4.31E+11`. What was cut off is gone. */
export const isRounded = (text: string): boolean => /^\d+([.,]\d+)?E\+\d+$/i.test(text.trim());

/** Or a date: `43-Jan`. */
export const isDated = (text: string): boolean =>
  /^(\d{1,2}[-. ](jan|feb|mar|apr|may|mai|jun|jul|aug|sep|okt|oct|nov|dez|dec)\.?|(jan|feb|mar|apr|may|mai|jun|jul|aug|sep|okt|oct|nov|dez|dec)[-. ]\d{2,4})$/i.test(
    text.trim(),
  );

/** Whether a piece has words in it: 'and', 'series', 'up to'. Small letters alone are none: some shops write codes so. */
export const hasWords = (piece: string): boolean =>
  /\p{Ll}{3}/u.test(piece) || /\s(and|or|und|oder|et|ou)\s/i.test(piece);

/** Why a piece of a cell cannot be taken as a model's code; null where it can. */
export function faultOfModel(piece: string): string | null {
  if (piece.includes("\uFFFD")) return "A model holds characters that cannot be read. Say --encoding.";
  if (isRounded(piece))
    return "A spreadsheet has made a number of this model; its digits are lost. Export it as text.";
  if (isDated(piece)) return "A spreadsheet has made a date of this model. Export it as text.";
  if (isPattern(piece) || piece.includes("…")) return "A model with * or ? or dots is no whole code.";
  if (!/\d/.test(piece)) return "This is no model code: it has no digit.";
  if (hasWords(piece) || /[()<>:=+&]/.test(piece))
    return "This is no model code: it has words or marks in it.";
  // Most codes are plain signs, and a feed may name millions: only the others need a closer look.
  if (piece.length <= longestCode && /^[A-Z\d][A-Z\d ./-]*$/i.test(piece)) return null;
  const read = normaliseCode(piece);
  if (read.kind === "unreadable" || piece.length > 80)
    return `This is no model code: it is longer than ${longestCode} signs.`;
  return null;
}

/**
 * Numbers that have probably lost zeros in front: of a column of numbers that are nearly all equally long, the shorter
 * ones.
 */
export function findLostZeros(numbers: readonly string[]): string[] {
  const digits = numbers.filter((number) => /^\d+$/.test(number));
  if (digits.length < 10 || digits.length * 2 < numbers.length) return [];
  const byLength = new Map<number, number>();
  for (const { length } of digits) byLength.set(length, (byLength.get(length) ?? 0) + 1);
  const [usual = 0, count = 0] = [...byLength].sort((a, b) => b[1] - a[1])[0] ?? [];
  if (usual < 5 || count / digits.length < 0.7) return [];
  return digits.filter(({ length }) => length < usual && length >= usual - 3);
}
