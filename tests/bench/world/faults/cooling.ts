import { between } from "../chance.ts";
import type { Fault } from "./fault.ts";

/** Either of them comes with a meter and mends it; who is told the right one is a matter of texts, not of truth. */
const engineer: Fault["trades"] = ["appliance-engineer", "refrigeration-engineer"];

/** What makes the cold and carries it, and a machine that had no time yet. All shares are judgement. */
export const coolingFaults: Fault[] = [
  {
    id: "evaporator-fan",
    share: 20,
    reason: "common practice: with the condenser's 10 % of too warm; often silent",
    after: { new: 0.2 },
    break: (state, chance) => {
      state.fan = chance() < 0.65 ? "dead" : "scrapes";
      if (state.fan === "scrapes") state.frost = 0.3;
    },
    isThere: (state) => state.fan !== "sound",
    trades: engineer,
    names: ["fan-fault", "freezer-fan", "fan-silent", "evaporator-fan"],
  },
  {
    id: "condenser-fan",
    share: 7,
    reason: "judgement: dust stops it; a third of fans",
    after: { new: 0.2 },
    break: (state) => {
      state.condenserFanDead = true;
    },
    isThere: (state) => state.condenserFanDead,
    trades: engineer,
    names: ["fan-fault", "condenser-fan", "cooling-fault"],
  },
  {
    id: "defrost",
    share: 30,
    reason: "common practice: 15 % of too warm; heater, sensor or timer",
    after: { new: 0.2 },
    break: (state, chance) => {
      state.defrostDead = true;
      state.frost = between(chance, 0.7, 1);
    },
    isThere: (state) => state.defrostDead,
    trades: engineer,
    names: ["defrost-fault", "frost-built-up"],
  },
  {
    id: "damper",
    share: 8,
    reason: "common practice: 5 % of a warm fridge alone",
    break: (state) => {
      state.damperShut = true;
    },
    isThere: (state) => state.damperShut,
    trades: engineer,
    names: ["damper", "damper-fault", "damper-stuck"],
  },
  {
    id: "circuit",
    share: 15,
    reason: "judgement: a leak or a worn compressor, rarer than defrost",
    after: { moved: 1.5 },
    break: (state, chance) => {
      state.circuit = between(chance, 0.1, 0.5);
    },
    isThere: (state) => state.circuit < 0.6,
    // Judgement: an appliance engineer finds it and brings the licensed one.
    trades: ["refrigeration-engineer", "appliance-engineer"],
    names: ["cooling-fault", "sealed-circuit", "circuit-fault", "sealed-circuit-fault"],
  },
  {
    id: "relay",
    share: 9,
    reason: "judgement: start relay or thermostat; the motor clicks or is silent",
    after: { "power-cut": 3 },
    break: (state) => {
      state.relayDead = true;
    },
    isThere: (state) => state.relayDead,
    trades: engineer,
    names: ["start-relay", "relay-fault", "compressor-start", "cooling-fault"],
  },
  {
    id: "no-power",
    share: 8,
    reason: "common practice: tripped switch, plug's fuse, 4 % of too warm",
    after: { "power-cut": 4, moved: 2, holiday: 2 },
    break: (state) => {
      state.power = "off";
    },
    isThere: (state) => state.power === "off",
    self: "nothing",
    names: ["no-power", "power-off", "plug-out"],
  },
  {
    id: "too-soon",
    share: 0.5,
    reason: "common practice: up to 24 h before ice; a quarter of troubles when new",
    after: { new: 320, moved: 110, "power-cut": 60, "new-filter": 25, holiday: 12 },
    break: (state, chance) => {
      state.hoursSinceChange = between(chance, 2, 18);
      state.freezerC = between(chance, -9, 5);
      state.fridgeC = between(chance, 6, 14);
      state.boxC = state.freezerC + 3;
      state.binGrams = 0;
    },
    isThere: (state) => state.hoursSinceChange < 24,
    self: "nothing",
    names: ["too-soon"],
  },
  {
    id: "ice-box-iced",
    share: 42,
    reason: "common practice: 15–25 % of no ice and clumps in French-door machines",
    on: (machine) => machine.iceAt === "door",
    break: (state, chance) => {
      state.boxFrost = true;
      if (chance() < 0.5) state.lump = true;
    },
    isThere: (state) => state.boxFrost && !state.boxFanDead,
    trades: engineer,
    names: ["ice-compartment-iced", "ice-box-iced", "door-compartment", "ice-compartment"],
  },
  {
    id: "ice-box-fan",
    share: 14,
    reason: "common practice: part of the same; its fan or duct",
    on: (machine) => machine.iceAt === "door",
    break: (state) => {
      state.boxFanDead = true;
    },
    isThere: (state) => state.boxFanDead,
    trades: engineer,
    names: ["ice-compartment-fan", "ice-compartment-iced", "ice-compartment", "ice-box-fan"],
  },
];
