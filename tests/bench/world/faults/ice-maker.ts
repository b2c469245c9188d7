import type { Fault } from "./fault.ts";

const maker: Fault["trades"] = ["appliance-engineer"];

/** The ice maker, its controls and its bin. All shares are judgement. */
export const iceMakerFaults: Fault[] = [
  {
    id: "ice-maker-dead",
    share: 50,
    reason: "common practice: gears, heater or module; about 14 % of no ice",
    after: { new: 0.2 },
    break: (state) => {
      state.motor = "dead";
    },
    isThere: (state) => state.motor === "dead",
    parts: ["ice-maker"],
    trades: maker,
    names: ["ice-maker-faulty", "ice-maker-in-doubt"],
  },
  {
    id: "ice-maker-weak",
    share: 7,
    reason: "judgement: cycles that take too long; with early harvest 5–8 % of too little",
    break: (state) => {
      state.motor = "weak";
    },
    isThere: (state) => state.motor === "weak",
    parts: ["ice-maker"],
    trades: maker,
    names: ["ice-maker-weak", "ice-maker-slow", "ice-maker-faulty", "ice-maker-in-doubt"],
  },
  {
    id: "early-harvest",
    share: 9,
    reason: "common practice: the mould's sensor reads cold; hollow ice",
    break: (state) => {
      state.earlyHarvest = true;
    },
    isThere: (state) => state.earlyHarvest,
    parts: ["ice-maker"],
    trades: maker,
    names: ["harvest-early", "harvest-too-early", "mould-sensor", "ice-maker-faulty", "harvests-early"],
  },
  {
    id: "stalled",
    share: 20,
    reason: "judgement: electronics hang, most after a cut; a reset is the first thing engineers try",
    after: { "power-cut": 5 },
    break: (state) => {
      state.stalled = true;
    },
    isThere: (state) => state.stalled,
    self: "nothing",
    names: ["controls-stalled"],
  },
  {
    id: "switched-off",
    share: 22,
    reason: "common practice: knocked or switched off; about 30 % after a holiday",
    after: { holiday: 16, moved: 4, new: 5 },
    break: (state) => {
      state.iceOn = false;
    },
    isThere: (state) => !state.iceOn,
    self: "nothing",
    names: ["switched-off"],
  },
  {
    id: "full-sensor-dead",
    share: 20,
    reason: "common practice: arm or light barrier that always says full, 5–8 % of no ice",
    break: (state) => {
      state.fullSensorDead = true;
    },
    isThere: (state) => state.fullSensorDead,
    parts: ["bin-sensor", "ice-maker"],
    trades: maker,
    names: ["bin-sensor-faulty", "bin-arm-faulty", "bin-sensor-failed", "bin-full-sensor"],
  },
  {
    id: "jam",
    share: 34,
    reason: "judgement: a piece across the tray is what engineers find most after switches",
    after: { "power-cut": 1.5 },
    break: (state, chance) => {
      state.jam = chance() < 0.25 ? "fast" : "loose";
    },
    isThere: (state) => state.jam !== "none",
    trades: maker,
    self: "nothing",
    names: ["ice-jammed"],
  },
  {
    id: "packing-left",
    share: 0.1,
    reason: "judgement: only when new or moved",
    after: { new: 500, moved: 60 },
    break: (state) => {
      state.packing = true;
    },
    isThere: (state) => state.packing,
    self: "nothing",
    names: ["transport-locks"],
  },
  {
    id: "bin-full",
    share: 8,
    reason: "judgement: nobody takes ice and the stop is taken for a fault",
    after: { holiday: 2 },
    break: (state) => {
      state.binFull = true;
      state.binGrams = 3000;
      state.iceOld = true;
    },
    isThere: (state) => state.binFull,
    self: "nothing",
    names: ["bin-full", "ice-stood"],
  },
  {
    id: "bin-crooked",
    share: 14,
    reason: "judgement: pushed in short of its click; the arm or a switch waits",
    after: { moved: 2, new: 2 },
    break: (state) => {
      state.binCrooked = true;
    },
    isThere: (state) => state.binCrooked,
    self: "nothing",
    names: ["bin-not-seated"],
  },
  {
    id: "sensor-frost",
    share: 11,
    reason: "judgement: frost on the window or the arm",
    after: { "power-cut": 2 },
    break: (state) => {
      state.sensorFrost = true;
    },
    isThere: (state) => state.sensorFrost,
    self: "nothing",
    names: ["bin-sensor-blocked"],
  },
  {
    id: "lump",
    share: 38,
    reason: "common practice: unused ice clumps; thaws after a cut",
    after: { "power-cut": 4, holiday: 4 },
    break: (state, chance) => {
      state.lump = true;
      if (chance() < 0.5) state.iceOld = true;
      else state.iceThawed = true;
    },
    isThere: (state) => state.lump,
    self: "nothing",
    names: ["bin-clumped", "ice-stood"],
  },
  {
    id: "bin-cracked",
    share: 5,
    reason: "judgement: hot water or a fall",
    break: (state) => {
      state.binCracked = true;
    },
    isThere: (state) => state.binCracked,
    parts: ["ice-bin"],
    names: ["bin-cracked"],
  },
  {
    id: "tilted",
    share: 5,
    reason: "judgement: water runs to one side of the tray",
    after: { moved: 7, new: 5 },
    break: (state) => {
      state.tilted = true;
    },
    isThere: (state) => state.tilted,
    trades: maker,
    self: "move",
    names: ["not-level"],
  },
  {
    id: "overfill",
    share: 4,
    reason: "judgement: a timer or a valve that stays open too long",
    on: (machine) => machine.water === "plumbed",
    break: (state) => {
      state.overfill = true;
    },
    isThere: (state) => state.overfill,
    parts: ["inlet-valve", "ice-maker"],
    trades: maker,
    names: ["overfills", "valve-leaks-by"],
  },
  {
    id: "ice-setting",
    share: 7,
    reason: "judgement: small, slow or night modes set by chance",
    break: (state, chance) => {
      state.iceSetting = chance() < 0.4 ? "small" : chance() < 0.7 ? "slow" : "crushed";
    },
    isThere: (state) => state.iceSetting !== "usual",
    self: "nothing",
    names: ["ice-setting-wrong"],
  },
  {
    id: "demand-high",
    share: 15,
    reason: "judgement: guests and hot weather; 2 kg a day are 114 pieces (LBNL)",
    break: (state) => {
      state.demandHigh = true;
    },
    isThere: (state) => state.demandHigh,
    self: "nothing",
    names: ["demand-high"],
  },
];
