import type { Machine } from "../machine.ts";
import type { Leak } from "../state.ts";
import type { Fault } from "./fault.ts";

const plumbed = (machine: Machine) => machine.water === "plumbed";
const engineer: Fault["trades"] = ["appliance-engineer"];

/** Shares of water that is where it should not be. Drip pan, condensation, valve body, hinge: a quarter on the floor. */
const leak = (
  place: Leak,
  share: number,
  reason: string,
  right: Omit<Fault, "id" | "share" | "reason" | "break" | "isThere">,
): Fault => ({
  id: `leak-${place}`,
  share,
  reason,
  break: (state) => {
    state.leaks = [...state.leaks, place];
  },
  isThere: (state) => state.leaks.includes(place),
  ...right,
});

export const leakFaults: Fault[] = [
  leak("joint", 13, "judgement: the joint that was touched last", {
    on: plumbed,
    after: { new: 7, moved: 7 },
    trades: ["plumber"],
    self: "tap",
    names: ["joint-leaks", "leak-behind"],
  }),
  leak("filter", 10, "common practice: 8 % of leaks; a ring not wiped, a cracked head", {
    on: (machine) => machine.filter !== "none",
    after: { "new-filter": 14 },
    parts: ["water-filter"],
    trades: ["plumber", "appliance-engineer"],
    names: ["filter-leaks", "filter-not-seated", "filter-head"],
  }),
  leak("line", 6, "judgement: plastic that is old or was pinched", {
    on: plumbed,
    after: { moved: 3 },
    parts: ["supply-line"],
    trades: ["plumber", "appliance-engineer"],
    names: ["line-damaged", "leak-behind"],
  }),
  leak("valve-body", 7, "judgement: a crack by frost or scale", {
    on: plumbed,
    parts: ["inlet-valve"],
    trades: ["appliance-engineer", "plumber"],
    names: ["valve-body", "valve-body-leaks", "inlet-valve-leaks", "leak-behind"],
  }),
  leak("hinge-tube", 4, "judgement: the tube through a door's hinge wears", {
    on: (machine) => plumbed(machine) && machine.waterDispenser,
    trades: engineer,
    names: ["hinge-tube", "hinge-tube-leaks", "leak-behind"],
  }),
  leak("drip-pan", 6, "judgement: cracked, or moved out of place", {
    after: { moved: 3 },
    trades: engineer,
    self: "move",
    names: ["drip-pan", "drip-pan-cracked", "leak-behind"],
  }),
  leak("condensation", 7, "judgement: humid weather, a door ajar", {
    trades: ["shop"],
    self: "nothing",
    names: ["condensation"],
  }),
  leak("dispenser", 7, "judgement: it drips on after use: air, or its valve", {
    on: (machine) => machine.waterDispenser,
    trades: engineer,
    names: ["dispenser-drips", "dispenser-valve"],
  }),
  leak("fill-cup", 4, "judgement: a fill that misses the tray", {
    trades: engineer,
    names: ["overfills", "fill-cup", "valve-leaks-by"],
  }),
  {
    id: "drain-iced",
    share: 24,
    reason: "common practice: the commonest leak inside, 15 %",
    break: (state) => {
      state.drain = "iced";
    },
    isThere: (state) => state.drain === "iced",
    trades: engineer,
    names: ["drain-iced"],
  },
  {
    id: "drain-blocked",
    share: 14,
    reason: "judgement: crumbs in the gutter",
    break: (state) => {
      state.drain = "blocked";
    },
    isThere: (state) => state.drain === "blocked",
    self: "nothing",
    names: ["drain-blocked"],
  },
];
