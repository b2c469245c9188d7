import { codeText } from "../catalogue/index.ts";
import { bounds } from "./bounds.ts";

/** A line of print as it was read; how sure the reader is of it, from 0 to 100. */
export type PrintedLine = { text: string; sure: number };

/** Letters and digits of a text that is looked up: shorter ones are words and units, longer ones several codes. */
const [shortest, longest] = [5, 18];

/** Words of a line that are joined into one code at most: a print with gaps, such as `WXM 431 AB8 /1`. */
const mostWords = 4;

// What stands before a code on plates (common practice, no source), also where its letters were misread.
const label = /\b(M[O0D][DO0][E3]?[L1I]?|TYPE?|[MH]OD[EF]L[EO]?)\b[\s.:;#]*(N[O0o°]?[.:;]?)?[\s.:;#-]*/i;
const otherLabel = /\b(SER(IAL|IE)?|S\/?N|BATCH|DATE|PNC|EAN)\b/i;
// Numbers with their units, refrigerants, and what else every plate says.
const unit =
  /^[\d.,~/-]+(V|HZ|A|W|KW|KG|G|L|OZ|LBS?|BAR|PSI|MPA|KPA|KWH?|MM|CM|C|F|V~)$|^R\d{3}A?$|^[\d.,]*(BAR|HZ|KG|KG\/24|24H?|IPX?\d*|X4)$/i;
const word = /^[^\d]*[a-z][a-z][a-z][^\d]*$/;

/**
 * What may be a model code in the lines of a plate, the likeliest first and each once: words, and neighbouring words
 * joined, with a letter and a digit. What follows the word 'model' comes first, what follows 'serial' last.
 * @param most how many are given
 */
export function codesInLines(lines: readonly PrintedLine[], most: number): string[] {
  const found = new Map<string, { text: string; worth: number }>();
  for (const [place, { text: whole, sure }] of lines.slice(0, bounds.lines).entries()) {
    const text = whole.slice(0, bounds.line);
    const at = label.exec(text);
    const labelled = at ? text.slice(at.index + at[0].length) : text;
    const isBelowLabel = place > 0 && isLabelAlone(lines[place - 1]?.text ?? "");
    const bonus = (at || isBelowLabel ? 60 : 0) - (otherLabel.test(text) ? 60 : 0);
    for (const { joined, words, first } of windowsOf(labelled)) {
      const code = codeText(joined);
      if (code.length < shortest || code.length > longest || !looksLikeCode(code, joined)) continue;
      // A word that stands first behind its label is the code; each further word that is joined may be another thing.
      const worth = sure / 3 + bonus - 8 * (words - 1) - (at && first > 0 ? 40 : 0) + shapeOf(code, joined);
      const known = found.get(code);
      if (!known || known.worth < worth) found.set(code, { text: joined, worth });
    }
  }
  return [...found.values()]
    .sort((a, b) => b.worth - a.worth)
    .slice(0, most)
    .map(({ text }) => text);
}

const isLabelAlone = (text: string) => label.test(text) && text.replace(label, "").trim() === "";

/** Every run of up to `mostWords` neighbouring words. */
function windowsOf(text: string): { joined: string; words: number; first: number }[] {
  const all = text
    .split(/[\s|_"'“”‘’,;:=()[\]{}<>]+/)
    .filter(Boolean)
    .slice(0, 12);
  return all.flatMap((_, first) =>
    all
      .slice(first, first + mostWords)
      .map((__, more) => ({ joined: all.slice(first, first + more + 1).join(" "), words: more + 1, first })),
  );
}

function looksLikeCode(code: string, joined: string): boolean {
  // Digits are misread for letters, so one of either is enough; a word of letters alone is a word.
  return (
    /\d/.test(code) &&
    /[A-Z]/.test(code) &&
    /^[A-Z\d?*]+$/.test(code) &&
    !joined.split(" ").some((each) => unit.test(each) || word.test(each))
  );
}

/** How much like a model code it is written: capitals, a few of both kinds, of the usual length. */
function shapeOf(code: string, joined: string): number {
  const digits = code.replace(/\D/g, "").length;
  const isMixed = digits >= 2 && code.length - digits >= 2;
  return (isMixed ? 20 : 0) + (/[a-z]/.test(joined) ? 0 : 15) + Math.min(code.length, 12);
}
