import { type Answers, celsius, fittedOn, flowOf, runsOut, strips } from "../session/drive.ts";

export const lowFlow: Answers = { "flow-test.run": flowOf(5) };
export const noPlug: Answers = { "flow-without-filter.have": "no-plug" };
export const withPlug: Answers = { "flow-without-filter.prepare": "plug-fitted" };
/** What is asked on top after a change, with nothing wrong in it. */
export const afterChange: Answers = {
  "running-time.since": "over-a-day",
  "cooling-settings.look": "usual",
  "purge-air.run": "steady",
};
/** What nobody can settle: a person who comes this far has answered all there is. */
export const nothingFound: Answers = { "fill-tube.look": "clear", "inlet-valve.screen": "not-sure" };

/** A tube that was thawed and has frozen shut again. */
const refrozen: Answers = {
  "fill-tube.look": "frozen",
  "fill-tube.thaw": "thawed",
  "fill-tube.look-again": "open-now",
  "wait-for-ice.wait": runsOut,
  "wait-for-ice.came": "no-ice",
  "fill-tube-again.look": "frozen-again",
};

/** Each cause that has a proof: the answers that make it, and the part or the trade that it ends with. */
export const proved: Record<string, [answers: Answers, endsWith: string]> = {
  "power-trips": [{ "power.light": "dead", "power.plug": "trips-again" }, "appliance-engineer"],
  "stays-dead": [{ "power.light": "dead", "power.plug": "stays-dead" }, "appliance-engineer"],
  "door-out-of-line": [
    {
      "door-closing.look": "stays-open",
      "door-closing.blocked-front": "nothing-there",
      "door-closing.blocked-behind": "nothing-there",
      "door-closing.again": "still-open",
    },
    "appliance-engineer",
  ],
  "ice-compartment-iced": [{ "ice-compartment.look": "frosted" }, "appliance-engineer"],
  "seal-worn": [
    {
      "door-seal.look": "torn",
      "door-seal.paper-strip": strips(1, 5, 8),
      "door-seal.clean": "cleaned",
      "door-seal.strip-again": strips(1, 5, 8),
    },
    "door-seal",
  ],
  "bin-cracked": [{ "ice-bin.look": "not-seated", "ice-bin.reseat": "cracked" }, "ice-bin"],
  "bin-sensor-faulty": [{ "bin-arm.look": "broken" }, "bin-sensor"],
  "cooling-fault": [
    {
      "freezer-temperature.read": celsius(-5),
      "freezer-temperature.colder": "set-colder",
      "reset.find": "cannot",
      "wait-for-ice.wait": runsOut,
      "wait-for-ice.came": "no-ice",
      "freezer-again.read": celsius(-5),
    },
    "appliance-engineer",
  ],
  "tap-stuck": [{ ...lowFlow, "stop-tap.open": "will-not-turn" }, "plumber"],
  "line-damaged": [{ ...lowFlow, "supply-line.look": "damaged" }, "supply-line"],
  "line-still-kinked": [
    { ...lowFlow, "supply-line.look": "kinked", "supply-line.straighten": "still-flat" },
    "supply-line",
  ],
  "filter-clogged": [{ ...lowFlow, ...withPlug, "flow-without-filter.run": flowOf(25) }, "water-filter"],
  "supply-weak": [{ ...lowFlow, ...withPlug, "flow-without-filter.run": flowOf(5) }, "plumber"],
  "filter-due": [{ ...lowFlow, ...noPlug, "filter-age.fitted": fittedOn("2025-01-01") }, "water-filter"],
  "valve-leaks-by": [{ ...refrozen, "fill-drip.look": "drips" }, "appliance-engineer"],
  "weak-at-valve": [
    { "fill-tube.look": "clear", "inlet-valve.screen": "clean", "inlet-valve.arrives": "weak" },
    "plumber",
  ],
  "defrost-fault": [{ "too-full.look": "frosted", "full-thaw.before": "came-back" }, "appliance-engineer"],
  "fill-tube-faulty": [{ ...refrozen, "fill-drip.look": "dry" }, "fill-tube"],
  "inlet-valve-faulty": [
    { "fill-tube.look": "clear", "inlet-valve.screen": "clean", "inlet-valve.arrives": "strong" },
    "inlet-valve",
  ],
  "ice-maker-faulty": [{ "reset.test": "nothing-moved" }, "ice-maker"],
  "ice-maker-in-doubt": [{ "reset.test": "nothing-moved", "reset.unplug": "cannot" }, "appliance-engineer"],
};

/** Each cause that a person puts right on the way, and the answers that do so. */
export const putRight: Record<string, Answers> = {
  "no-power": { "power.light": "dead", "power.plug": "came-on" },
  "control-locked": { "control-lock.look": "lock-on", "control-lock.unlock": "unlocked" },
  "switched-off": { "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" },
  "too-soon": {
    "opening.changed": "power-cut",
    "running-time.since": "under-a-day",
    "running-time.give-time": "will-wait",
  },
  "room-extreme": { "room-warmth.look": "hot", "room-warmth.change": "will-change" },
  "setting-wrong": { "cooling-settings.look": "special", "cooling-settings.switch-back": "switched" },
  "controls-stalled": { "reset.test": "moved-wet" },
  "door-blocked": {
    "door-closing.look": "stays-open",
    "door-closing.blocked-front": "cleared",
    "door-closing.again": "closes-now",
  },
  "seal-dirty": {
    "door-seal.look": "dirty",
    "door-seal.paper-strip": strips(1, 5, 8),
    "door-seal.clean": "cleaned",
    "door-seal.strip-again": strips(),
  },
  "bin-full": { "ice-bin.look": "full", "ice-bin.empty": "emptied" },
  "bin-clumped": { "ice-bin.look": "clumped", "ice-bin.tip-out": "tipped-out" },
  "bin-not-seated": { "ice-bin.look": "not-seated", "ice-bin.reseat": "clicks-in" },
  "bin-sensor-blocked": { "ice-bin.look": "sensor-blocked", "ice-bin.wipe-sensor": "wiped" },
  "ice-jammed": { "ice-under-maker.look": "ice-there", "ice-under-maker.remove": "removed" },
  "too-full": { "too-full.look": "packed", "too-full.rearrange": "rearranged" },
  "frost-built-up": {
    "too-full.look": "frosted",
    "full-thaw.before": "never",
    "full-thaw.thaw": "thawed",
    "full-thaw.thawed": "running-again",
  },
  "vents-blocked": { "too-full.look": "vents-covered", "too-full.uncover": "uncovered" },
  "freezer-warm": { "freezer-temperature.read": celsius(-5), "freezer-temperature.colder": "set-colder" },
  "tap-closed": { ...lowFlow, "stop-tap.open": "opened", "flow-again.run": flowOf(25) },
  "line-kinked": {
    ...lowFlow,
    "supply-line.look": "kinked",
    "supply-line.straighten": "straightened",
    "flow-again.run": flowOf(25),
  },
  "filter-not-seated": {
    ...lowFlow,
    "filter-seated.look": "loose",
    "filter-seated.reseat": "reseated",
    "flow-again.run": flowOf(25),
  },
  "filter-backwards": {
    ...lowFlow,
    "filter-seated.look": "backwards",
    "filter-seated.turn-round": "turned",
    "flow-again.run": flowOf(25),
  },
  "fill-tube-frozen": {
    "fill-tube.look": "frozen",
    "fill-tube.thaw": "thawed",
    "fill-tube.look-again": "open-now",
  },
  "valve-screen-blocked": {
    "fill-tube.look": "clear",
    "inlet-valve.screen": "blocked",
    "inlet-valve.rinse": "rinsed",
  },
};
