/** What became of a number that somebody typed; what cannot be read is kept as it was typed. */
export type NumberReading =
  | { kind: "value"; value: number }
  | { kind: "empty" }
  | { kind: "unreadable"; typed: string };

/** Longest entry that is still looked at, in characters; anything longer was pasted by mistake. */
const longestEntry = 40;

/**
 * Reads a typed number; never throws, whatever the string.
 *
 * Takes surrounding space, a decimal point, a decimal comma or the Arabic decimal separator, a leading
 * plus, a hyphen or a true minus (U+2212), and Arabic or Persian digits, which some phone keyboards type; marks of the
 * direction of writing, which nobody sees, are passed over.
 * Fractions are read as a cup's marks write them: '1/2', '3 1/4', '3½'. Zero is a value. Unreadable are exponents, hex,
 * words, other inner space, improper fractions and more than 40 characters, and also '1,500' or '1.500': one country
 * reads fifteen hundred there, another one and a half, so we ask again.
 */
export function readNumber(typed: string): NumberReading {
  // The last four bits of U+0660 to 0669 and U+06F0 to 06F9 are the digit's value.
  const text = typed
    .replace(/[\u061c\u200e\u200f]/g, "")
    // ½ is one character; taken apart it is 1, a fraction slash and 2.
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (fraction) => ` ${fraction.normalize("NFKD")}`)
    .replace("\u2044", "/")
    .trim()
    .replace(/[\u0660-\u0669\u06f0-\u06f9]/g, (digit) => `${digit.charCodeAt(0) & 15}`)
    .replace(/[,\u066b]/, ".")
    .replace("\u2212", "-");
  if (!text) return { kind: "empty" };
  if (typed.length > longestEntry) return { kind: "unreadable", typed };
  const [, sign, whole, part, parts] = /^([+-]?)(?:(\d{1,3}) +)?(\d{1,2})\/(\d{1,2})$/.exec(text) ?? [];
  if (Number(part) < Number(parts)) {
    const value = Number(whole ?? 0) + Number(part) / Number(parts);
    return { kind: "value", value: (sign === "-" ? -value : value) + 0 };
  }
  const readable = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text);
  if (!readable || /^[+-]?[1-9]\d{0,2}\.\d{3}$/.test(text)) return { kind: "unreadable", typed };
  // Adding 0 turns −0 into 0, which is what a stored log would give back.
  return { kind: "value", value: Number(text) + 0 };
}

/** Why a number cannot be right, with what the message needs, in the unit in which it was typed. */
export type RangeProblem = {
  code: "negative" | "zero" | "too-small" | "too-large";
  value: number;
  min: number;
  max: number;
};

/**
 * Whether a number lies within `min` to `max`, ends included; null when it does.
 * 'negative' and 'zero' are told apart from 'too-small' wherever the range leaves them out altogether.
 */
export function checkRange(value: number, { min, max }: { min: number; max: number }): RangeProblem | null {
  const found = (code: RangeProblem["code"]) => ({ code, value, min, max });
  if (value < 0 && min >= 0) return found("negative");
  if (value === 0 && min > 0) return found("zero");
  if (value < min) return found("too-small");
  // Written this way round so that NaN does not pass.
  if (!(value <= max)) return found("too-large");
  return null;
}
