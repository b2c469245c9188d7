import { deliveryStops, gramsPerDay, piecesLook } from "./making.ts";
import type { Scene } from "./scene.ts";
import { isLittle, type Trouble, troublesOf } from "./troubles.ts";

/** Whether what these people complained of is so at this moment, as they would notice it after a wait. */
export function stillThere({ home, state, machine }: Scene): boolean {
  const grams = gramsPerDay(state, machine, state);
  const now: Partial<Record<Trouble, boolean>> = {
    "no-ice": grams < 0.08 * machine.dayGrams,
    "little-ice": isLittle(grams, machine) || state.demandHigh,
    "odd-shape": piecesLook(state, machine) !== "right" || state.iceSetting === "crushed",
    "warm-freezer": state.freezerC > -13,
    "warm-fridge": state.fridgeC > 6.5,
    "not-dispensed": deliveryStops(state) !== null,
  };
  const { trouble } = home.complaint;
  return now[trouble] ?? troublesOf(state, machine).includes(trouble);
}
