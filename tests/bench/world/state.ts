import type { Machine } from "./machine.ts";

/** All of a machine and its kitchen that a fault can disturb. Temperatures in °C, pressures in kPa, flow in ml/s. */
export type State = {
  power: "on" | "off";
  mode: "none" | "demo" | "holiday" | "sabbath";
  locked: boolean;
  iceOn: boolean;
  stalled: boolean;
  iceSetting: "usual" | "small" | "slow" | "crushed";
  setFreezer: number;
  setFridge: number;
  /** Supply. */
  mainsKpa: number;
  /** Of the house's own pipes, kPa/(ml/s)², felt at the kitchen tap too. */
  houseDrag: number;
  /** Of what feeds the machine alone: a saddle valve, reverse osmosis. */
  branchDrag: number;
  /** What reaches the branch at most: reverse osmosis stores water at little pressure. */
  branchKpa: number;
  tapOpen: number;
  tapStuck: boolean;
  tapShutByUs: boolean;
  kink: number;
  kinkStays: boolean;
  airInLine: boolean;
  filterMonths: number;
  /** Times the drag of a new cartridge. */
  clog: number;
  filterLoose: boolean;
  filterBackwards: boolean;
  filterCap: boolean;
  filterRefused: boolean;
  screen: boolean;
  valve: "sound" | "dead" | "slow";
  seeps: boolean;
  tube: "open" | "iced";
  tubeHeaterDead: boolean;
  tubeThawHours: number;
  doorLineIced: boolean;
  overfill: boolean;
  tilted: boolean;
  /** Cold. */
  roomC: number;
  openings: "seldom" | "often" | "warm-food";
  seal: "sound" | "dirty" | "worn";
  sealGap: "none" | "blocked" | "crooked";
  packed: boolean;
  ventsCovered: boolean;
  tight: boolean;
  dust: boolean;
  fan: "sound" | "dead" | "scrapes";
  condenserFanDead: boolean;
  defrostDead: boolean;
  /** Share of the evaporator closed by frost. */
  frost: number;
  damperShut: boolean;
  /** What is left of the circuit's power to cool. */
  circuit: number;
  relayDead: boolean;
  boxFrost: boolean;
  boxFanDead: boolean;
  freezerC: number;
  fridgeC: number;
  boxC: number;
  hoursSinceChange: number;
  /** Ice maker. */
  motor: "sound" | "dead" | "weak";
  earlyHarvest: boolean;
  fullSensorDead: boolean;
  jam: "none" | "loose" | "fast";
  packing: boolean;
  /** Bin. */
  binGrams: number;
  binFull: boolean;
  binCrooked: boolean;
  binCracked: boolean;
  sensorFrost: boolean;
  lump: boolean;
  iceOld: boolean;
  iceThawed: boolean;
  binDirty: boolean;
  /** Delivery. */
  drive: "sound" | "iced" | "broken" | "motor-dead";
  lever: "sound" | "sticky" | "broken" | "switch-dead";
  doorSwitch: "sound" | "iced" | "dead";
  chute: "clear" | "iced" | "flap-broken";
  /** Tank. */
  tankEmpty: boolean;
  tankCrooked: boolean;
  tankDirty: boolean;
  tankCracked: boolean;
  float: "sound" | "stuck" | "lost";
  pumpDead: boolean;
  airInPump: boolean;
  /** Leaks, by where the water comes from. */
  leaks: Leak[];
  drain: "free" | "blocked" | "iced";
  /** Taste and looks. */
  stale: boolean;
  unflushed: boolean;
  smellyFood: boolean;
  oddWater: boolean;
  hardWater: boolean;
  flakes: boolean;
  newHose: boolean;
  demandHigh: boolean;
  noisy: boolean;
};

export type Leak =
  | "joint"
  | "filter"
  | "line"
  | "valve-body"
  | "hinge-tube"
  | "drip-pan"
  | "condensation"
  | "dispenser"
  | "fill-cup"
  | "tank";

/** A machine in order: 300 kPa of house pressure, −18 and 4 °C. */
export function soundState(machine: Machine): State {
  return {
    power: "on",
    mode: "none",
    locked: false,
    iceOn: true,
    stalled: false,
    iceSetting: "usual",
    setFreezer: -18,
    setFridge: 4,
    mainsKpa: 300,
    houseDrag: 0.009,
    branchDrag: 0,
    branchKpa: Number.POSITIVE_INFINITY,
    tapOpen: 1,
    tapStuck: false,
    tapShutByUs: false,
    kink: 0,
    kinkStays: false,
    airInLine: false,
    filterMonths: 4,
    clog: 1,
    filterLoose: false,
    filterBackwards: false,
    filterCap: false,
    filterRefused: false,
    screen: false,
    valve: "sound",
    seeps: false,
    tube: "open",
    tubeHeaterDead: false,
    tubeThawHours: 3,
    doorLineIced: false,
    overfill: false,
    tilted: false,
    roomC: 21,
    openings: "seldom",
    seal: "sound",
    sealGap: "none",
    packed: false,
    ventsCovered: false,
    tight: false,
    dust: false,
    fan: "sound",
    condenserFanDead: false,
    defrostDead: false,
    frost: 0,
    damperShut: false,
    circuit: 1,
    relayDead: false,
    boxFrost: false,
    boxFanDead: false,
    freezerC: -18,
    fridgeC: 4,
    boxC: machine.iceAt === "door" ? -15 : -18,
    hoursSinceChange: 1000,
    motor: "sound",
    earlyHarvest: false,
    fullSensorDead: false,
    jam: "none",
    packing: false,
    binGrams: 1200,
    binFull: false,
    binCrooked: false,
    binCracked: false,
    sensorFrost: false,
    lump: false,
    iceOld: false,
    iceThawed: false,
    binDirty: false,
    drive: "sound",
    lever: "sound",
    doorSwitch: "sound",
    chute: "clear",
    tankEmpty: false,
    tankCrooked: false,
    tankDirty: false,
    tankCracked: false,
    float: "sound",
    pumpDead: false,
    airInPump: false,
    leaks: [],
    drain: "free",
    stale: false,
    unflushed: false,
    smellyFood: false,
    oddWater: false,
    hardWater: false,
    flakes: false,
    newHose: false,
    demandHigh: false,
    noisy: false,
  };
}
