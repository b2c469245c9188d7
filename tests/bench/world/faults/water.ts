import { between } from "../chance.ts";
import type { Machine } from "../machine.ts";
import type { Fault } from "./fault.ts";

const plumbed = (machine: Machine) => machine.water === "plumbed";
const filtered = (machine: Machine) => machine.filter !== "none";
const cartridge = (machine: Machine) => machine.filter === "inside";

/** From the tap to the valve. All shares are judgement; no data of failures was found. */
export const waterFaults: Fault[] = [
  {
    id: "tap-closed",
    share: 8,
    reason: "judgement: closed for work or a leak and forgotten, rarely without an occasion",
    after: { moved: 7, new: 6, "new-filter": 3, holiday: 4 },
    on: plumbed,
    break: (state) => {
      state.tapOpen = 0;
    },
    isThere: (state) => state.tapOpen === 0,
    trades: ["plumber", "appliance-engineer"],
    self: "tap",
    names: ["tap-closed"],
  },
  {
    id: "tap-half-open",
    share: 6,
    reason: "judgement: opened halfway after work; only noticed as small ice",
    after: { moved: 5, new: 4, "new-filter": 3 },
    on: plumbed,
    break: (state, chance) => {
      state.tapOpen = between(chance, 0.18, 0.34);
    },
    isThere: (state) => state.tapOpen > 0 && state.tapOpen < 1,
    trades: ["plumber", "appliance-engineer"],
    self: "tap",
    names: ["tap-closed"],
  },
  {
    id: "tap-stuck",
    share: 2,
    reason: "judgement: old isolating valves seize, but mostly open",
    on: plumbed,
    break: (state) => {
      state.tapOpen = 0.2;
      state.tapStuck = true;
    },
    isThere: (state) => state.tapStuck,
    trades: ["plumber"],
    names: ["tap-stuck"],
  },
  {
    id: "line-kinked",
    share: 13,
    reason: "judgement: machines are pushed back onto their tube, mostly after a move",
    after: { moved: 9, new: 4 },
    on: plumbed,
    break: (state, chance) => {
      state.kink = between(chance, 0.55, 1);
      state.kinkStays = chance() < 0.35;
    },
    isThere: (state) => state.kink > 0,
    parts: ["supply-line"],
    trades: ["plumber", "appliance-engineer"],
    self: "move",
    names: ["line-kinked", "line-still-kinked"],
  },
  {
    id: "filter-clogged",
    share: 62,
    reason: "judgement: few change it every 6 months; the commonest reason of little water",
    after: { "new-filter": 0.02, new: 0.05 },
    on: filtered,
    break: (state, chance) => {
      state.filterMonths = between(chance, 7, 40);
      state.clog = between(chance, 11, 40);
    },
    isThere: (state) => state.clog > 6,
    parts: ["water-filter"],
    names: ["filter-clogged", "filter-due"],
  },
  {
    id: "filter-not-seated",
    share: 2,
    reason: "judgement: a quarter of troubles after a change of filter; else it is left alone",
    after: { "new-filter": 38, new: 5 },
    on: cartridge,
    break: (state) => {
      state.filterLoose = true;
    },
    isThere: (state) => state.filterLoose,
    self: "nothing",
    names: ["filter-not-seated"],
  },
  {
    id: "filter-backwards",
    share: 0.5,
    reason: "judgement: only filters in the tube can be",
    after: { "new-filter": 60 },
    on: (machine) => machine.filter === "inline",
    break: (state) => {
      state.filterBackwards = true;
    },
    isThere: (state) => state.filterBackwards,
    trades: ["plumber", "appliance-engineer"],
    self: "move",
    names: ["filter-backwards"],
  },
  {
    id: "filter-cap-on",
    share: 0.1,
    reason: "judgement: a slip at a change of filter alone",
    after: { "new-filter": 120, new: 20 },
    on: filtered,
    break: (state) => {
      state.filterCap = true;
    },
    isThere: (state) => state.filterCap,
    self: "nothing",
    names: ["cap-left-on"],
  },
  {
    id: "filter-wrong",
    share: 0.4,
    reason: "common practice: 10–15 % after a change: the wrong one, one that the reader refuses",
    after: { "new-filter": 90 },
    on: cartridge,
    break: (state) => {
      state.filterRefused = true;
    },
    isThere: (state) => state.filterRefused,
    parts: ["water-filter"],
    trades: ["shop"],
    self: "nothing",
    names: ["filter-wrong", "filter-refused"],
  },
  {
    id: "supply-weak",
    share: 7,
    reason: "judgement; a UK home on the 7 m statutory minimum gets 10 psi, few do",
    on: plumbed,
    break: (state, chance) => {
      state.mainsKpa = between(chance, 20, 62);
      state.houseDrag = 0.03;
    },
    isThere: (state) => state.mainsKpa < 130,
    trades: ["plumber", "water-supplier"],
    names: ["supply-weak", "weak-at-valve"],
  },
  {
    id: "branch-weak",
    share: 16,
    reason: "common practice: a saddle valve or reverse osmosis is 8–12 % of small ice in America",
    after: { new: 2, moved: 2 },
    on: plumbed,
    break: (state, chance) => {
      if (chance() < 0.6) state.branchDrag = between(chance, 2.6, 9);
      else state.branchKpa = between(chance, 20, 60);
    },
    isThere: (state) => state.branchDrag > 0 || state.branchKpa < 1000,
    trades: ["plumber"],
    names: ["weak-at-valve", "saddle-valve", "reverse-osmosis", "low-at-machine", "supply-weak-at-machine"],
  },
  {
    id: "air-in-line",
    share: 1.5,
    reason: "judgement: air comes in with a new filter or a new line",
    after: { "new-filter": 14, new: 10, moved: 7 },
    on: plumbed,
    break: (state) => {
      state.airInLine = true;
    },
    isThere: (state) => state.airInLine,
    self: "nothing",
    names: ["air-in-line"],
  },
];
