import { batchesPerDay, type Cold } from "./cold.ts";
import type { Machine } from "./machine.ts";
import { ice } from "./physics.ts";
import type { State } from "./state.ts";
import { fillShare } from "./water.ts";

/** Why no batch is begun or tipped out, whatever the cold and the water; null where nothing stops it. */
export function stoppedBy(state: State, machine: Machine): "power" | "motor" | "bin" | "jam" | null {
  if (state.power === "off" || !state.iceOn || state.stalled || state.mode !== "none") return "power";
  if (state.motor === "dead" || state.packing) return "motor";
  if (state.jam !== "none") return "jam";
  const looksFull = state.binFull || state.sensorFrost || state.fullSensorDead;
  const lumpUp = state.lump && machine.shutOff === "arm";
  return looksFull || lumpUp || state.binCrooked || state.binCracked ? "bin" : null;
}

/** A test run passes by what a full bin says, and by the cold. */
export function testRunMoves(state: State): boolean {
  return (
    state.power === "on" &&
    state.iceOn &&
    !state.stalled &&
    state.mode !== "demo" &&
    state.motor !== "dead" &&
    !state.packing &&
    state.jam === "none"
  );
}

/** Grams of ice a day at these temperatures. Less than a tenth of a fill makes nothing that is called ice. */
export function gramsPerDay(state: State, machine: Machine, cold: Cold): number {
  if (stoppedBy(state, machine)) return 0;
  const fill = Math.min(1, fillShare(state, machine));
  if (fill < 0.1) return 0;
  const pace = (batchesPerDay(cold.boxC) * (machine.iceAt === "door" ? 1.2 : 1)) / (24 / 1.68);
  const weak = (state.motor === "weak" ? 0.35 : 1) * (state.iceSetting === "slow" ? 0.5 : 1);
  return machine.dayGrams * fill * pace * weak;
}

/** How the newest pieces look. */
export type Pieces = "right" | "small" | "uneven" | "hollow" | "joined";

export function piecesLook(state: State, machine: Machine): Pieces {
  const fill = fillShare(state, machine);
  if (state.overfill || state.seeps) return "joined";
  if (state.earlyHarvest) return "hollow";
  if (state.tilted) return "uneven";
  if (state.airInLine && fill > 0.3) return "uneven";
  return fill < 0.72 ? "small" : "right";
}

/** Grams of one piece. */
export function pieceGrams(state: State, machine: Machine): number {
  const full = (machine.trayMl * ice.density) / 1000 / machine.pieces;
  return full * Math.min(1.2, fillShare(state, machine)) * (state.earlyHarvest ? 0.75 : 1);
}

/** Whether ice comes out of the door when it is asked for, and if not, where it stops. */
export function deliveryStops(
  state: State,
): "lock" | "power" | "switch" | "door" | "lever" | "motor" | "ice" | "chute" | "empty" | null {
  if (state.power === "off") return "power";
  if (state.locked || state.mode === "sabbath") return "lock";
  if (state.doorSwitch !== "sound" || state.sealGap === "crooked") return "door";
  if (state.lever !== "sound") return "lever";
  if (state.drive === "motor-dead") return "motor";
  if (state.drive !== "sound" || state.lump || state.binCrooked || state.binCracked) return "ice";
  if (state.chute === "iced") return "chute";
  return state.binGrams < 60 ? "empty" : null;
}
