import type { Fault } from "./fault.ts";

const engineer: Fault["trades"] = ["appliance-engineer"];

const taste = (
  id: string,
  share: number,
  reason: string,
  key:
    | "stale"
    | "unflushed"
    | "smellyFood"
    | "oddWater"
    | "hardWater"
    | "flakes"
    | "newHose"
    | "binDirty"
    | "iceOld",
  right: Omit<Fault, "id" | "share" | "reason" | "break" | "isThere">,
): Fault => ({
  id,
  share,
  reason,
  break: (state, chance) => {
    state[key] = true;
    if (key === "stale") state.filterMonths = 8 + 24 * chance();
  },
  isThere: (state) => state[key],
  ...right,
});

export const tasteFaults: Fault[] = [
  taste("filter-stale", 19, "judgement: carbon is spent long before it clogs", "stale", {
    on: (machine) => machine.filter !== "none",
    after: { "new-filter": 0, new: 0 },
    parts: ["water-filter"],
    names: ["filter-stale", "filter-due"],
  }),
  taste("unflushed", 2, "judgement: carbon dust after a change", "unflushed", {
    on: (machine) => machine.filter !== "none",
    after: { "new-filter": 22, new: 8, holiday: 3 },
    self: "nothing",
    names: ["not-flushed"],
  }),
  taste("bin-dirty", 8, "judgement: bins are seldom washed", "binDirty", {
    self: "nothing",
    names: ["bin-dirty"],
  }),
  taste("ice-old", 14, "common practice: ice takes on smells within weeks", "iceOld", {
    after: { holiday: 4 },
    self: "nothing",
    names: ["ice-stood"],
  }),
  taste("food-smells", 12, "judgement: fish and onions uncovered", "smellyFood", {
    self: "nothing",
    names: ["food-smells"],
  }),
  taste("water-odd", 9, "judgement: chlorine, works on the main", "oddWater", {
    trades: ["water-supplier", "plumber"],
    names: ["water-odd"],
  }),
  taste("hard-water", 12, "judgement: white grains are taken for dirt", "hardWater", {
    self: "nothing",
    names: ["hard-water"],
  }),
  taste("new-hose", 0.7, "judgement: plastic taste for some weeks", "newHose", {
    on: (machine) => machine.water === "plumbed",
    after: { new: 14, moved: 6 },
    self: "nothing",
    names: ["new-hose", "not-flushed"],
  }),
  taste("flakes", 4, "judgement: an old mould sheds its coating", "flakes", {
    parts: ["ice-maker"],
    trades: engineer,
    names: ["mould-coating", "coating-flakes", "mould-flakes"],
  }),
];
