import { between } from "../chance.ts";
import type { Machine } from "../machine.ts";
import type { Fault } from "./fault.ts";

const plumbed = (machine: Machine) => machine.water === "plumbed";

/** The valve and the tube into the tray. All shares are judgement. */
export const valveFaults: Fault[] = [
  {
    id: "valve-screen",
    share: 8,
    reason: "judgement: grit and scale gather at the valve's screen, more where water is hard",
    after: { moved: 2 },
    on: plumbed,
    break: (state) => {
      state.screen = true;
    },
    isThere: (state) => state.screen,
    parts: ["inlet-valve"],
    trades: ["appliance-engineer", "plumber"],
    self: "panel",
    names: ["valve-screen-blocked"],
  },
  {
    id: "valve-dead",
    share: 24,
    reason: "common practice: coils fail; about 8 % of no ice",
    on: plumbed,
    break: (state) => {
      state.valve = "dead";
    },
    isThere: (state) => state.valve === "dead",
    parts: ["inlet-valve"],
    trades: ["appliance-engineer"],
    names: ["inlet-valve-faulty"],
  },
  {
    id: "valve-slow",
    share: 7,
    reason: "judgement: a scaled valve opens part of the way",
    on: plumbed,
    break: (state) => {
      state.valve = "slow";
    },
    isThere: (state) => state.valve === "slow",
    parts: ["inlet-valve"],
    trades: ["appliance-engineer"],
    names: ["inlet-valve-slow", "inlet-valve-faulty"],
  },
  {
    id: "valve-seeps",
    share: 9,
    reason: "judgement: a valve that does not shut wets the ice and ices its tube",
    on: plumbed,
    break: (state, chance) => {
      state.seeps = true;
      if (chance() < 0.4) {
        state.tube = "iced";
        state.tubeHeaterDead = true;
      }
    },
    isThere: (state) => state.seeps,
    parts: ["inlet-valve"],
    trades: ["appliance-engineer"],
    names: ["valve-leaks-by", "overfills"],
  },
  {
    id: "tube-iced",
    share: 22,
    reason: "judgement: a splash or a slow fill freezes in the tube once",
    after: { "power-cut": 1.5 },
    break: (state, chance) => {
      state.tube = "iced";
      state.tubeThawHours = between(chance, 2, 16);
    },
    isThere: (state) => state.tube === "iced" && !state.tubeHeaterDead,
    trades: ["appliance-engineer"],
    self: "panel",
    names: ["fill-tube-frozen"],
  },
  {
    id: "tube-heater-dead",
    share: 9,
    reason: "common practice: half of the tubes that freeze again",
    break: (state) => {
      state.tube = "iced";
      state.tubeHeaterDead = true;
    },
    isThere: (state) => state.tubeHeaterDead && !state.seeps,
    parts: ["fill-tube"],
    trades: ["appliance-engineer"],
    names: [
      "fill-tube-heater",
      "fill-tube-heater-faulty",
      "fill-tube-frozen",
      "fill-heater-faulty",
      "fill-tube-faulty",
    ],
  },
];
