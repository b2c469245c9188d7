import { type Condition, compareSerials } from "../../catalogue/index.ts";
import { type Cells, longestLabel, ownCopy, readText } from "./cells.ts";

const columns = [
  ["variant", "variant"],
  ["serial-from", "serialFrom"],
  ["serial-to", "serialTo"],
] as const;

/**
 * Reads what else must stand on the plate. A condition that cannot be read makes the row unusable: without it the part
 * would seem to fit every machine of the model.
 * @returns undefined where there is none, null where it cannot be used, which is told
 */
export function readCondition(cells: Cells): Condition | undefined | null {
  const condition: Condition = {};
  for (const [column, key] of columns) {
    const text = readText(cells, column);
    if (text === null) return null;
    if (text.length > longestLabel || (text !== "" && !/[\p{L}\p{N}]/u.test(text))) {
      cells.problem("bad-condition", column, `"${column}" is nothing that can stand on a plate.`);
      return null;
    }
    if (text !== "") condition[key] = ownCopy(text);
  }
  const { serialFrom, serialTo } = condition;
  if (serialFrom !== undefined && serialTo !== undefined) {
    const order = compareSerials(serialFrom, serialTo);
    if (order === null || order > 0) {
      const why = order === null ? "are not of the same form" : "are the wrong way round";
      cells.problem("bad-condition", "serial-from", `"serial-from" and "serial-to" ${why}.`);
      return null;
    }
  }
  return Object.keys(condition).length > 0 ? condition : undefined;
}
