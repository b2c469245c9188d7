import type { Machine } from "../machine.ts";
import type { Fault } from "./fault.ts";

const engineer: Fault["trades"] = ["appliance-engineer"];
const tank = (machine: Machine) => machine.water === "tank";

/** Machines whose water is filled in by hand. All shares are judgement. */
export const tankFaults: Fault[] = [
  {
    id: "tank-empty",
    share: 120,
    reason: "judgement: the first thing to look at; a tank lasts some days",
    after: { holiday: 2 },
    on: tank,
    break: (state) => {
      state.tankEmpty = true;
    },
    isThere: (state) => state.tankEmpty,
    self: "nothing",
    names: ["tank-empty"],
  },
  {
    id: "tank-crooked",
    share: 80,
    reason: "common practice: 15 % of tank machines; its valve stays shut",
    on: tank,
    break: (state) => {
      state.tankCrooked = true;
    },
    isThere: (state) => state.tankCrooked,
    self: "nothing",
    names: ["tank-not-seated"],
  },
  {
    id: "tank-dirty",
    share: 35,
    reason: "judgement: slime and scale in the sieve",
    on: tank,
    break: (state) => {
      state.tankDirty = true;
    },
    isThere: (state) => state.tankDirty,
    self: "nothing",
    names: ["tank-dirty"],
  },
  {
    id: "tank-float",
    share: 45,
    reason: "common practice: float or its magnet 5–8 %; 'add water' stays lit",
    on: tank,
    break: (state, chance) => {
      state.float = chance() < 0.65 ? "stuck" : "lost";
    },
    isThere: (state) => state.float !== "sound",
    parts: ["water-tank"],
    trades: engineer,
    self: "nothing",
    names: ["float-stuck", "float-lost", "float-magnet", "tank-faulty"],
  },
  {
    id: "tank-cracked",
    share: 25,
    reason: "judgement: plastic that is dropped",
    on: tank,
    break: (state) => {
      state.tankCracked = true;
      state.leaks = [...state.leaks, "tank"];
    },
    isThere: (state) => state.tankCracked,
    parts: ["water-tank"],
    names: ["tank-faulty"],
  },
  {
    id: "pump-dead",
    share: 75,
    reason: "judgement: the only moving part of that water way",
    on: tank,
    break: (state) => {
      state.pumpDead = true;
    },
    isThere: (state) => state.pumpDead,
    parts: ["tank-pump"],
    trades: engineer,
    names: ["pump-faulty"],
  },
  {
    id: "pump-air",
    share: 30,
    reason: "judgement: it ran dry, or is new",
    after: { new: 2, holiday: 2 },
    on: tank,
    break: (state) => {
      state.airInPump = true;
    },
    isThere: (state) => state.airInPump,
    self: "nothing",
    names: ["air-in-line", "pump-air"],
  },
];
