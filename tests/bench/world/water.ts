import type { Machine } from "./machine.ts";
import { flowThrough } from "./physics.ts";
import type { State } from "./state.ts";

/** Drags of a sound way: 25 psi (172 kPa) give the trade's 15 ml/s through a filter some months old, 300 kPa 21 ml/s. */
const way = { pipe: 0.45, filter: 2.2 } as const;

/** ml/s that the kitchen's cold tap gives; taps hold back themselves (5–8 l/min common; 2.2 gal/min the US law). */
export function kitchenTapFlow(state: State): number {
  return Math.min(138, flowThrough(state.mainsKpa, state.houseDrag + 0.006, 0));
}

/** ml/s that reach the end of the machine's water way, `with` its filter or the bypass plug, before any valve. */
export function flowAtMachine(state: State, machine: Machine, filter: "with" | "without" = "with"): number {
  if (machine.water === "tank" || state.tapShutByUs || state.tapOpen === 0 || state.kink >= 1) return 0;
  if (filter === "with" && machine.filter !== "none") {
    if (state.filterCap || state.filterRefused || state.filterLoose) return 0;
    if (state.filterBackwards) return flowAtMachineThrough(state, way.filter * 30);
  }
  const carbon = machine.filter === "none" || filter === "without" ? 0 : way.filter * state.clog;
  return flowAtMachineThrough(state, carbon);
}

function flowAtMachineThrough(state: State, carbon: number): number {
  const kPa = Math.min(state.mainsKpa, state.branchKpa);
  const tap = state.tapOpen >= 1 ? 0 : 0.5 / state.tapOpen ** 4;
  const kink = state.kink > 0 ? 0.6 / (1 - state.kink) ** 4 : 0;
  return flowThrough(kPa, way.pipe + state.houseDrag + state.branchDrag + tap + kink, carbon);
}

/** ml/s at the water dispenser; the valve for it is another than the ice maker's. */
export function dispenserFlow(state: State, machine: Machine, filter: "with" | "without" = "with"): number {
  if (!machine.waterDispenser || state.doorLineIced || state.power === "off") return 0;
  if (machine.water === "tank") return pumpFlow(state);
  const kPaKept = state.screen ? 0.55 : 1;
  return flowAtMachine(state, machine, filter) * kPaKept;
}

export function pumpFlow(state: State): number {
  const dry = state.tankEmpty || state.tankCrooked || state.tankCracked || state.pumpDead || state.airInPump;
  if (dry || state.float !== "sound") return 0;
  return state.tankDirty ? 5 : 18;
}

/**
 * Share of the tray that a fill reaches. A filling lasts a fixed time behind a washer that lets 15 ml/s through at
 * most, so that less flow is less fill (140 ml at 15 ml/s take 9.3 s).
 */
export function fillShare(state: State, machine: Machine): number {
  if (state.tube === "iced" || state.valve === "dead") return 0;
  const reach = machine.water === "tank" ? pumpFlow(state) : flowAtMachine(state, machine);
  const screen = state.screen ? 0.22 : 1;
  const valve = state.valve === "slow" ? 0.35 : 1;
  const air = state.airInLine ? 0.6 : 1;
  const full = Math.min(1, (reach * screen * valve * air) / 13);
  return full * (state.iceSetting === "small" ? 0.6 : 1) * (state.overfill ? 1.35 : 1);
}
