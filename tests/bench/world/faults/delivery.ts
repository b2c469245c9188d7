import type { Machine } from "../machine.ts";
import type { Fault } from "./fault.ts";

const dispenser = (machine: Machine) => machine.iceDispenser;
const engineer: Fault["trades"] = ["appliance-engineer"];

/** From the bin to the glass. All shares are judgement. */
export const deliveryFaults: Fault[] = [
  {
    id: "locked",
    share: 11,
    reason: "common practice: the lock stops the dispenser; a wipe of the panel sets it",
    after: { new: 3 },
    on: (machine) => machine.lock,
    break: (state) => {
      state.locked = true;
    },
    isThere: (state) => state.locked,
    self: "nothing",
    names: ["control-locked"],
  },
  {
    id: "drive-iced",
    share: 13,
    reason: "judgement: melt water freezes the screw, more where ice is old",
    after: { "power-cut": 3 },
    on: dispenser,
    break: (state) => {
      state.drive = "iced";
    },
    isThere: (state) => state.drive === "iced",
    self: "nothing",
    names: ["auger-frozen"],
  },
  {
    id: "drive-broken",
    share: 9,
    reason: "judgement: a coupling that breaks on a lump",
    on: dispenser,
    break: (state) => {
      state.drive = "broken";
    },
    isThere: (state) => state.drive === "broken",
    parts: ["ice-bin"],
    trades: engineer,
    names: ["auger-broken"],
  },
  {
    id: "drive-motor",
    share: 13,
    reason: "judgement: with lever switches 15 % of what is not dispensed",
    on: dispenser,
    break: (state) => {
      state.drive = "motor-dead";
    },
    isThere: (state) => state.drive === "motor-dead",
    trades: engineer,
    names: ["dispenser-dead", "auger-motor"],
  },
  {
    id: "lever-sticky",
    share: 4,
    reason: "judgement: drinks spilt into the gap",
    on: dispenser,
    break: (state) => {
      state.lever = "sticky";
    },
    isThere: (state) => state.lever === "sticky",
    self: "nothing",
    names: ["lever-stuck"],
  },
  {
    id: "lever-switch",
    share: 10,
    reason: "judgement: a small switch that is pressed thousands of times",
    on: dispenser,
    break: (state, chance) => {
      state.lever = chance() < 0.3 ? "broken" : "switch-dead";
    },
    isThere: (state) => state.lever === "broken" || state.lever === "switch-dead",
    trades: engineer,
    names: ["dispenser-dead", "lever-broken"],
  },
  {
    id: "door-switch-iced",
    share: 4,
    reason: "judgement: crumbs and frost",
    on: dispenser,
    break: (state) => {
      state.doorSwitch = "iced";
    },
    isThere: (state) => state.doorSwitch === "iced",
    self: "nothing",
    names: ["door-switch-iced"],
  },
  {
    id: "door-switch-dead",
    share: 8,
    reason: "judgement: a contact that wears",
    on: dispenser,
    break: (state) => {
      state.doorSwitch = "dead";
    },
    isThere: (state) => state.doorSwitch === "dead",
    parts: ["door-switch"],
    trades: engineer,
    names: ["door-switch-faulty"],
  },
  {
    id: "chute-iced",
    share: 10,
    reason: "judgement: a flap that stays open lets damp air freeze",
    on: dispenser,
    break: (state) => {
      state.chute = "iced";
    },
    isThere: (state) => state.chute === "iced",
    self: "nothing",
    names: ["chute-iced"],
  },
  {
    id: "flap-broken",
    share: 6,
    reason: "judgement: a spring or a hinge of plastic",
    on: dispenser,
    break: (state) => {
      state.chute = "flap-broken";
    },
    isThere: (state) => state.chute === "flap-broken",
    parts: ["dispenser-flap"],
    trades: engineer,
    names: ["flap-broken"],
  },
  {
    id: "door-line-iced",
    share: 8,
    reason: "common practice: 10 % of dry dispensers; the tray still fills",
    on: (machine) => machine.waterDispenser && machine.water === "plumbed",
    break: (state) => {
      state.doorLineIced = true;
    },
    isThere: (state) => state.doorLineIced,
    trades: ["appliance-engineer", "shop"],
    names: ["door-line-frozen", "dispenser-line-frozen", "door-line-iced", "water-line-frozen"],
  },
  {
    id: "noise",
    share: 5,
    reason: "judgement: knocking pipes and rattles reach such a page too",
    break: (state) => {
      state.noisy = true;
    },
    isThere: (state) => state.noisy,
    trades: ["shop", "plumber", "appliance-engineer"],
    names: ["not-covered", "knocking-pipes"],
  },
];
