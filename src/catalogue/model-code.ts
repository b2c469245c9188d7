import { bounds } from "./bounds.ts";

/**
 * Reading a model code as a person typed it off a plate behind a drawer. What they see decides nothing
 * alone: 0 and O are the same ink on many plates, so codes are compared twice, as typed and as they look.
 */

/** Most letters and digits that are taken for one model code: comparing a longer text with every model would stall a phone. */
export const longestCode: number = bounds.code;

/** Why a typed text cannot be a model code. */
export type CodeProblem = "empty" | "too-long" | "no-code-characters";

/** A typed text that is no model code; what was typed is kept, so that the screen can show it again. */
export type UnreadableCode = { kind: "unreadable"; problem: CodeProblem; typed: string };

/** A typed text as a comparable code, or why it is none. */
export type TypedCode = { kind: "code"; code: string; typed: string } | UnreadableCode;

// Dashes, blanks, dots and slashes of every script, the ー of Japanese keypads, and what cannot be seen.
const separators = /[\s\p{Pd}\p{Cf}\p{Cc}\u2212\u2043\u30FC./\\\u2044\u2215\u00B7\u2022\u2027\u3002]/gu;

/**
 * Text as it counts in a comparison: NFKC, upper case, Western digits, no separators. Everything else stays,
 * a question mark too: somebody types it for a character that they cannot read, and it must not vanish. Of a text that
 * is too long for any code only the beginning is read.
 */
export function codeText(typed: string): string {
  // Removing a separator can join a letter and its accent, hence NFKC at both ends.
  return typed
    .slice(0, bounds.typedCode)
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[٠-٩۰-۹]/g, (digit) => String(digit.charCodeAt(0) & 15))
    .replace(separators, "")
    .normalize("NFKC");
}

/**
 * Makes a typed model code comparable; never throws, and does nothing with a text that is too long for any.
 * `"wx-40 b8/e"` gives the code `"WX40B8E"`.
 * @param longest most characters that count as a code
 */
export function normaliseCode(typed: string, longest = longestCode): TypedCode {
  const unreadable = (problem: CodeProblem): UnreadableCode => ({ kind: "unreadable", problem, typed });
  if (typed.length > bounds.typedCode) return unreadable("too-long");
  if (typed.trim() === "") return unreadable("empty");
  // Tags are left out only to see whether anything else is there; their letters still count as typed.
  if (!/[\p{L}\p{N}]/u.test(typed.replace(/<[^<>]*>/g, ""))) return unreadable("no-code-characters");
  const code = codeText(typed);
  // The ー of Japanese keypads counts as a letter, and as a dash: alone it leaves nothing.
  if (code === "") return unreadable("no-code-characters");
  if (code.length > longest) return unreadable("too-long");
  return { kind: "code", code, typed };
}

// Pairs that look the same on a plate. Sources: php-iban mistranscriptions.txt for all; O, I and L also
// Crockford's Base32 (draft-crockford-davis-base32-for-humans-01).
const lookAlikes: Record<string, string> = { O: "0", I: "1", L: "1", Z: "2", S: "5", G: "6", B: "8" };

/** Gives codes that look alike the same text, for finding. Takes the code that `normaliseCode` gives. */
export function foldCode(code: string): string {
  return code.replace(/[BGILOSZ]/g, (letter) => lookAlikes[letter] ?? letter);
}

// Digit confusions of php-iban mistranscriptions.txt. They cannot be folded: followed from pair to pair
// (3~8~6~0~9) they would make most digits one and the same.
const misreadings: Record<string, string> = {
  0: "O6DG",
  1: "IL72Z",
  2: "Z7PE1",
  3: "8B",
  4: "GU",
  5: "S7",
  6: "0O8GCBD",
  7: "JI1L",
  8: "B36",
  9: "GYO0D",
};

/** True if either of two different characters is published as being misread for the other. */
export function isMisreading(one: string, other: string): boolean {
  return Boolean(misreadings[one]?.includes(other) || misreadings[other]?.includes(one));
}
