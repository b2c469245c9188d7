import { isPossible } from "../../../src/compile/is-possible.ts";
import type { Scene } from "./scene.ts";

/**
 * Today's advice as one list for everybody: what the trade says of lock, switch, door, ice, cold, reset, filter,
 * flow and supply, cheapest first, with the tank and the flush for those who have one (common practice, no source).
 * It opens no panel and repeats nothing.
 */
export const tradeList = [
  "control-lock",
  "ice-maker-switch",
  "running-time",
  "tank",
  "door-closing",
  "ice-bin",
  "ice-under-maker",
  "too-full",
  "door-seal",
  "freezer-temperature",
  "reset",
  "filter-age",
  "flow-test",
  "filter-seated",
  "flush",
  "stop-tap",
  "supply-line",
];

/** The list without what this home does not have: no tank is looked for where a line comes in. */
export function tradeListFor({ flow, opening }: Scene): string[] {
  return tradeList.filter((id) =>
    Object.values(flow.scenarios).some(({ checks }) =>
      checks.some(({ check, when }) => check === id && (!when || isPossible(when, opening, flow.conditions))),
    ),
  );
}
