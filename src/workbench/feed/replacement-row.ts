import { plainText } from "../../catalogue/index.ts";
import { type Cells, longestLabel, ownCopy, readText } from "./cells.ts";
import type { Replacement } from "./supersede.ts";

/** What a row says of older and newer numbers of its part; older ones are separated by `|`. */
export function readReplacements(cells: Cells, number: string): Replacement[] {
  const read = (["replaces", "replaced-by"] as const).flatMap((column) => {
    if (cells.raw(column) === "") return [];
    const others = (readText(cells, column) ?? "").split("|").map(plainText).filter(Boolean);
    const isUnclear = column === "replaced-by" && others.length > 1;
    if (isUnclear || others.some((other) => other.length > longestLabel)) {
      const why = isUnclear
        ? "Name the one part that replaces this one."
        : `A part number is longer than ${longestLabel} characters.`;
      cells.problem("bad-replacement", column, `${why} "${column}" is left out.`);
      return [];
    }
    const place = others.length > 0 ? cells.placeOf(column) : { line: 1, column: 1 };
    return others.map((other) => {
      const own = ownCopy(other);
      return column === "replaces"
        ? { from: own, to: number, ...place }
        : { from: number, to: own, ...place };
    });
  });
  return read;
}
