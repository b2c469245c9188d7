import { coolFor } from "./cold.ts";
import type { Machine } from "./machine.ts";
import { gramsPerDay } from "./making.ts";
import type { State } from "./state.ts";

/**
 * Runs a machine on by some hours, an hour at a time: cold, ice, what freezes again, what thaws.
 * @param plugOut it stands without power, its door open
 */
export function runFor(state: State, machine: Machine, hours: number, plugOut = false): void {
  for (let left = hours; left > 0; left -= 1) step(state, machine, Math.min(1, left), plugOut);
}

function step(state: State, machine: Machine, hours: number, plugOut: boolean): void {
  const before = state.power;
  if (plugOut) state.power = "off";
  coolFor(state, machine, hours);
  if (plugOut) thaw(state, hours);
  else {
    state.binGrams += (gramsPerDay(state, machine, state) * hours) / 24;
    freezeAgain(state, machine, hours);
  }
  state.power = before;
  state.hoursSinceChange += hours;
}

function thaw(state: State, hours: number): void {
  state.tubeThawHours -= hours;
  if (state.tubeThawHours <= 0) state.tube = "open";
  state.frost = Math.max(0, state.frost - hours / 14);
}

/** A tube without its heater is shut again within a day or two, an evaporator without defrost within two weeks. */
function freezeAgain(state: State, machine: Machine, hours: number): void {
  if (state.tubeHeaterDead && state.tube === "open") {
    state.tubeThawHours += hours;
    if (state.tubeThawHours > 20) state.tube = "iced";
  }
  if (state.defrostDead) state.frost = Math.min(1, state.frost + hours / 300);
  if (state.boxFanDead && machine.iceAt === "door") state.boxFrost = true;
}
