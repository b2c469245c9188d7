import { between } from "../chance.ts";
import type { Fault } from "./fault.ts";

/** Either of them comes with a meter and mends it; who is told the right one is a matter of texts, not of truth. */
const engineer: Fault["trades"] = ["appliance-engineer", "refrigeration-engineer"];

/** What keeps it cold. All shares are judgement. */
export const coldFaults: Fault[] = [
  {
    id: "set-too-mild",
    share: 9,
    reason: "judgement: a knocked dial, a control that starts anew after a cut",
    after: { "power-cut": 3, moved: 2, new: 2 },
    break: (state, chance) => {
      state.setFreezer = between(chance, -12, -5);
      state.setFridge = chance() < 0.5 ? 9 : 4;
    },
    isThere: (state) => state.setFreezer > -13,
    self: "nothing",
    names: ["freezer-warm", "setting-wrong", "set-too-mild"],
  },
  {
    id: "demo-mode",
    share: 2,
    reason: "common practice: 10 % of troubles when new; keys held by chance else",
    after: { new: 30, "power-cut": 1.5 },
    on: (machine) => machine.display,
    break: (state) => {
      state.mode = "demo";
    },
    isThere: (state) => state.mode === "demo",
    self: "nothing",
    names: ["setting-wrong", "demo-mode"],
  },
  {
    id: "rest-mode",
    share: 5,
    reason: "common practice: holiday and Sabbath modes with demonstration 3 % of no ice",
    after: { holiday: 7 },
    on: (machine) => machine.display,
    break: (state, chance) => {
      state.mode = chance() < 0.6 ? "holiday" : "sabbath";
    },
    isThere: (state) => state.mode === "holiday" || state.mode === "sabbath",
    self: "nothing",
    names: ["setting-wrong", "holiday-mode", "special-mode"],
  },
  {
    id: "seal-dirty",
    share: 9,
    reason: "judgement: sticky folds; more common than a torn seal",
    break: (state) => {
      state.seal = "dirty";
    },
    isThere: (state) => state.seal === "dirty",
    self: "nothing",
    names: ["seal-dirty"],
  },
  {
    id: "seal-worn",
    share: 12,
    reason: "judgement: hard or torn after ten years",
    after: { new: 0.1 },
    break: (state) => {
      state.seal = "worn";
    },
    isThere: (state) => state.seal === "worn",
    parts: ["door-seal"],
    names: ["seal-worn"],
  },
  {
    id: "door-blocked",
    share: 13,
    reason: "judgement: a packet behind a drawer",
    after: { moved: 2, holiday: 1.5 },
    break: (state) => {
      state.sealGap = "blocked";
    },
    isThere: (state) => state.sealGap === "blocked",
    self: "nothing",
    names: ["door-blocked"],
  },
  {
    id: "door-crooked",
    share: 5,
    reason: "judgement: a worn hinge, a door hung anew",
    after: { new: 3, moved: 4 },
    break: (state) => {
      state.sealGap = "crooked";
    },
    isThere: (state) => state.sealGap === "crooked",
    trades: engineer,
    names: ["door-out-of-line"],
  },
  {
    id: "packed",
    share: 11,
    reason: "common practice: an overfull freezer stops the ice maker",
    break: (state) => {
      state.packed = true;
    },
    isThere: (state) => state.packed,
    self: "nothing",
    names: ["too-full"],
  },
  {
    id: "vents-covered",
    share: 12,
    reason: "judgement: a box before the vent",
    break: (state) => {
      state.ventsCovered = true;
    },
    isThere: (state) => state.ventsCovered,
    self: "nothing",
    names: ["vents-blocked"],
  },
  {
    id: "heat-let-in",
    share: 14,
    reason: "judgement: guests, hot weather, a big shop",
    break: (state, chance) => {
      state.openings = chance() < 0.6 ? "often" : "warm-food";
    },
    isThere: (state) => state.openings !== "seldom",
    self: "nothing",
    names: ["heat-let-in"],
  },
  {
    id: "no-air-around",
    share: 7,
    reason: "judgement: boxes on top, a tight niche",
    after: { moved: 4, new: 4 },
    break: (state) => {
      state.tight = true;
      state.roomC = 27;
    },
    isThere: (state) => state.tight,
    self: "nothing",
    names: ["no-air-space"],
  },
  {
    id: "condenser-dust",
    share: 17,
    reason: "judgement: pets and years; cleaned by nobody",
    after: { new: 0 },
    break: (state) => {
      state.dust = true;
      state.roomC = 26;
    },
    isThere: (state) => state.dust,
    trades: engineer,
    self: "nothing",
    names: ["condenser-dusty"],
  },
  {
    id: "room-out-of-range",
    share: 7,
    reason: "common practice: garages under 10 or over 35 °C, 4 % of too warm",
    after: { moved: 3 },
    break: (state, chance) => {
      state.roomC = chance() < 0.6 ? 6 : 37;
    },
    isThere: (state) => state.roomC < 10 || state.roomC > 34,
    trades: ["shop"],
    self: "nothing",
    names: ["room-too-cold", "room-too-warm", "room-temperature", "room-out-of-range", "room-extreme"],
  },
];
