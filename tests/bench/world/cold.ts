import type { Machine } from "./machine.ts";
import { approach, freezingSeconds } from "./physics.ts";
import type { State } from "./state.ts";

/** What the machine settles at when nobody changes anything for two days. */
export type Cold = { freezerC: number; fridgeC: number; boxC: number };

/** °C between room and freezer that a sound machine could hold flat out; judgement: a third in hand. */
const reach = 52;

/** Cooling power that is left, 1 in order. */
function power(state: State): number {
  if (state.power === "off" || state.mode === "demo" || state.relayDead) return 0;
  const shed =
    (state.tight ? 0.68 : 1) *
    (state.dust ? 0.66 : 1) *
    (state.condenserFanDead ? 0.42 : 1) *
    // A control made for kitchens runs too little in a cold room, and the circuit tires in a hot one.
    (state.roomC > 34 ? 0.72 : 1);
  return state.circuit * shed;
}

/** Share of its air that a machine still moves. */
function air(state: State): number {
  const fan = state.fan === "dead" ? 0.12 : state.fan === "scrapes" ? 0.5 : 1;
  return fan * (1 - 0.75 * state.frost);
}

/** Share of it that gets past the food in the freezer. */
const past = (state: State) => (state.ventsCovered ? 0.38 : 1) * (state.packed ? 0.38 : 1);

/** Heat that gets in, 1 in order. */
function heat(state: State): number {
  const gap = state.sealGap === "none" ? 0 : state.sealGap === "blocked" ? 1.1 : 0.75;
  const seal = state.seal === "worn" ? 0.95 : state.seal === "dirty" ? 0.72 : 0;
  const doors = state.openings === "seldom" ? 0 : 0.72;
  return 1 + gap + seal + doors;
}

export function settledCold(state: State, machine: Machine): Cold {
  const left = power(state);
  const moved = air(state);
  const wanted = state.mode === "holiday" ? -14 : state.setFreezer;
  // In a room below 10 °C the control of one thermostat hardly runs.
  const lazy = state.roomC < 10 ? 9 : 0;
  const gap = (reach * left * Math.min(1, 0.25 + 0.9 * moved * past(state))) / heat(state);
  const freezerC = Math.min(state.roomC, Math.max(wanted + lazy, state.roomC - gap));
  const flow = moved * Math.sqrt(past(state)) ** 0.7 * (state.damperShut ? 0.1 : 1);
  const fridgeAir = (state.roomC + flow * freezerC) / (1 + flow);
  const wantedFridge = state.mode === "holiday" ? 14 : state.setFridge;
  const fridgeC = left === 0 ? state.roomC : Math.max(wantedFridge, fridgeAir);
  const boxGap = machine.iceAt === "door" ? 3 + (state.boxFrost ? 9 : 0) + (state.boxFanDead ? 11 : 0) : 0;
  return { freezerC, fridgeC, boxC: Math.min(state.roomC, freezerC + boxGap) };
}

/** Moves the temperatures on: air and food follow with a time constant of 6 h (common practice: a day to settle). */
export function coolFor(state: State, machine: Machine, hours: number): void {
  const to = settledCold(state, machine);
  state.freezerC = approach(state.freezerC, to.freezerC, hours, 6);
  state.fridgeC = approach(state.fridgeC, to.fridgeC, hours, 6);
  state.boxC = approach(state.boxC, to.boxC, hours, 6);
}

/** Warmest °C at which a tray's sensor still calls a batch frozen (common practice, no source). */
export const harvestLimit = -8;

/** Batches in a day at a temperature: 100.8 min each at −18 °C (2000 g at 140 g), longer as Plank's ratio says. */
export function batchesPerDay(boxC: number): number {
  if (boxC > harvestLimit) return 0;
  const ratio = freezingSeconds("cylinder", 0.025, boxC, 25) / freezingSeconds("cylinder", 0.025, -18, 25);
  return (24 * 60) / (100.8 * ratio);
}
