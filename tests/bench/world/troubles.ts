import { settledCold } from "./cold.ts";
import type { Machine } from "./machine.ts";
import { deliveryStops, gramsPerDay, piecesLook } from "./making.ts";
import type { State } from "./state.ts";

/** What is wrong as a householder could notice it, once all has settled. */
export type Trouble =
  | "no-ice"
  | "little-ice"
  | "odd-shape"
  | "clumped"
  | "not-dispensed"
  | "warm-freezer"
  | "warm-fridge"
  | "leak"
  | "taste"
  | "other";

/**
 * Everything that is wrong with a machine that is left to itself from here on. A tap that was closed for a check
 * counts as open: whoever ends says so (judged apart).
 */
export function troublesOf(now: State, machine: Machine): Trouble[] {
  const state = leftToItself(now, machine);
  const cold = settledCold(state, machine);
  const grams = gramsPerDay(state, machine, cold);
  const found: [Trouble, boolean][] = [
    ["no-ice", grams < 0.08 * machine.dayGrams],
    ["little-ice", isLittle(grams, machine) || state.demandHigh],
    ["odd-shape", piecesLook(state, machine) !== "right" || state.iceSetting === "crushed"],
    ["clumped", state.lump || state.boxFrost || state.chute === "flap-broken"],
    ["not-dispensed", machine.iceDispenser && deliveryStops({ ...state, binGrams: 500 }) !== null],
    ["warm-freezer", cold.freezerC > -11],
    ["warm-fridge", cold.fridgeC > 7],
    ["leak", state.leaks.length > 0 || state.drain !== "free" || (state.seeps && state.overfill)],
    ["taste", tastes(state)],
    ["other", state.noisy || state.doorLineIced],
  ];
  return found.flatMap(([trouble, is]) => (is ? [trouble] : []));
}

/** Little is what falls short of habit, and of what a household misses (twice the 500 g a day that a test method takes as need). */
export const isLittle = (grams: number, machine: Machine) => grams < Math.min(0.62 * machine.dayGrams, 1000);

const tastes = (state: State) =>
  state.stale ||
  state.unflushed ||
  state.smellyFood ||
  state.oddWater ||
  state.hardWater ||
  state.flakes ||
  state.newHose ||
  state.binDirty ||
  state.iceOld ||
  state.tankDirty;

/** What comes back within weeks by itself: frost on a heater that is dead, ice in a tube that is not warmed. */
export function leftToItself(now: State, machine: Machine): State {
  const state = { ...now, tapShutByUs: false, hoursSinceChange: 1000 };
  if (state.defrostDead) state.frost = 0.85;
  if (state.tubeHeaterDead) state.tube = "iced";
  if (state.boxFanDead && machine.iceAt === "door") state.boxFrost = true;
  if (state.airInLine && state.binGrams > 0) return state;
  return state;
}
