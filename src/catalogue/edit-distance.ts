import { codeText, foldCode, isMisreading } from "./model-code.ts";

/**
 * What telling two codes apart costs, in tenths of an edit so that sums are exact. Judgement, no source:
 * a look-alike is hardly a mistake; a published misreading, a swap of neighbours or a key that was hit twice or once
 * too few is likelier than any other slip. Separators cost nothing because normalising removes them. `ending` is for
 * codes that differ by a country or colour behind the slash only.
 */
export const editCosts = { lookAlike: 2, ending: 5, misreading: 6, swap: 6, doubled: 6, other: 10 };
export type EditCosts = typeof editCosts;

function substitution(one: string, other: string, costs: EditCosts): number {
  if (one === other) return 0;
  if (foldCode(one) === foldCode(other)) return costs.lookAlike;
  return isMisreading(one, other) ? costs.misreading : costs.other;
}

const isSwap = (a: readonly string[], b: readonly string[], i: number, j: number) =>
  i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];

/** What a character at place i costs that stands only in this code: less where it repeats the one before it. */
const surplus = (code: readonly string[], i: number, costs: EditCosts) =>
  i > 1 && code[i - 1] === code[i - 2] ? costs.doubled : costs.other;

/** Weighted optimal string alignment: cell (i, j) is the cost of turning i characters of a into j of b. */
function fillTable(a: readonly string[], b: readonly string[], costs: EditCosts) {
  const first = [0];
  const cells = [first];
  for (let j = 1; j <= b.length; j++) first.push((first[j - 1] ?? 0) + surplus(b, j, costs));
  const at = (i: number, j: number) => cells[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= a.length; i++) {
    const row = [at(i - 1, 0) + surplus(a, i, costs)];
    cells.push(row);
    for (let j = 1; j <= b.length; j++) {
      row[j] = Math.min(
        at(i - 1, j) + surplus(a, i, costs),
        at(i, j - 1) + surplus(b, j, costs),
        at(i - 1, j - 1) + substitution(a[i - 1] ?? "", b[j - 1] ?? "", costs),
        isSwap(a, b, i, j) ? at(i - 2, j - 2) + costs.swap : Number.POSITIVE_INFINITY,
      );
    }
  }
  return at;
}

/** Distance of two normalised codes, in tenths of an edit; 0 only if they are equal. */
export function codeDistance(one: string, other: string, costs: EditCosts = editCosts): number {
  const a = [...one];
  const b = [...other];
  return fillTable(a, b, costs)(a.length, b.length);
}

/**
 * For each character (code point) of a code as it is displayed: does it differ from what was typed?
 * Separators never differ. A character that was typed too much has no place here and marks nothing.
 * @param typed a normalised code
 * @param display the code of a model, with its separators
 */
export function markDifferences(typed: string, display: string): boolean[] {
  const marks: boolean[] = [];
  const b: string[] = [];
  const places: number[] = [];
  for (const character of display) {
    for (const part of codeText(character)) {
      b.push(part);
      places.push(marks.length);
    }
    marks.push(false);
  }
  const mark = (j: number) => {
    marks[places[j - 1] ?? 0] = true;
  };
  const a = [...typed];
  const at = fillTable(a, b, editCosts);
  let i = a.length;
  let j = b.length;
  while (j > 0) {
    const same = i > 0 && a[i - 1] === b[j - 1];
    const replaced = at(i - 1, j - 1) + substitution(a[i - 1] ?? "", b[j - 1] ?? "", editCosts);
    if (at(i, j) === replaced) {
      if (!same) mark(j);
      i--;
      j--;
    } else if (isSwap(a, b, i, j) && at(i, j) === at(i - 2, j - 2) + editCosts.swap) {
      mark(j);
      mark(j - 1);
      i -= 2;
      j -= 2;
    } else if (at(i, j) === at(i - 1, j) + surplus(a, i, editCosts)) {
      i--;
    } else {
      mark(j);
      j--;
    }
  }
  return marks;
}
