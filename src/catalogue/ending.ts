import { bounds } from "./bounds.ts";
import { codeText } from "./model-code.ts";

// Plates carry the country, the colour or the series behind the code that a person reads out; judged by what such
// endings look like (common practice, no source).
const longestEnding = 4;
const shortestBase = 5;

/**
 * The code without the ending that stands behind its last slash, dash, dot or space (`WXM 431A/EK`), normalised; null
 * where it has none. Two letters at the very end count too, where no mark stands before them (`WXM431AEK`).
 * @param code as printed or as typed
 */
export function baseOf(code: string): string | null {
  if (code.length > bounds.typedCode) return null;
  const marked = /^(.*)[/\\\s.\p{Pd}](.*)$/u.exec(code.trim());
  const [base, ending] = marked
    ? [codeText(marked[1] ?? ""), codeText(marked[2] ?? "")]
    : [codeText(code).slice(0, -2), /\d\p{L}{2}$/u.test(codeText(code)) ? "**" : ""];
  return base.length >= shortestBase && ending.length > 0 && ending.length <= longestEnding ? base : null;
}
