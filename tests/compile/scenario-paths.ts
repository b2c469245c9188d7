import {
  type Answers,
  celsius,
  fittedOn,
  flowOf,
  fridgeCelsius,
  gramsEach,
  healthy,
  kilograms,
  kilopascals,
  runsOut,
  strips,
} from "../session/drive.ts";

/** What a person finds on a machine with nothing wrong that a look could show. */
export const sound: Answers = {
  ...healthy,
  "reset.test": "moved-wet",
  "tank.look": "full",
  "tank-inside.look": "clean",
  "add-water-light.look": "dark",
  "pump-run.listen": "water-comes",
  "running-time.since": "over-a-day",
  "transport-parts.look": "nothing",
  "cooling-settings.look": "usual",
  "purge-air.run": "steady",
  "filter-cap.look": "nothing",
  "fill-tube.look": "clear",
  "inlet-valve.screen": "clean",
  "inlet-valve.arrives": "strong",
  "dispense-listen.listen": "hums",
  "dispense-listen.water": "water-comes",
  "chute-flap.look": "clear",
  "lever.look": "moves",
  "auger.look": "turns",
  "door-switch.press": "goes-out",
  "ice-demand.use": "less",
  "ice-settings.look": "usual",
  "door-openings.look": "seldom",
  "fresh-ice.look": "right",
  "ice-yield.count": kilograms(1.8),
  "ice-count.count": kilograms(1.8),
  "cube-weight.weigh": gramsEach(18),
  "fridge-temperature.read": fridgeCelsius(3),
  "level.look": "level",
  "fill-drip.look": "dry",
  "ice-use.look": "fresh",
  "warm-where.look": "both",
  "space-around.look": "room",
  "condenser.look": "clean",
  "cooling-runs.listen": "runs",
  "ice-look.look": "smell",
  "bin-wash.look": "clean",
  "open-food.look": "covered",
  "tap-water.compare": "tap-fine",
  "flush.look": "flushed",
  "leak-stop.stops": "stops",
  "leak-where.look": "floor",
  "tap-joint.look": "dry",
  "drain.look": "free",
  // Whatever was put right is worth a wait, and the wait shows that it was all.
  "wait-for-ice.wait": "ice-came",
  "last-wait.wait": "ice-came",
  "try-dispenser.wait": "comes",
  "ice-count.wait": "plenty",
  "wait-for-batch.wait": "right",
  "wait-for-cold.wait": "cold-again",
  "watch-leak.fill": "wet-again",
  // The tap that a gate had closed is opened again.
  "tap-reopen.open": "opened",
  "put-back.all": "back",
  "flow-without-filter.have": "have-plug",
};

const noPlug: Answers = { "flow-without-filter.have": "no-plug" };
const plug = (perSecond: number): Answers => ({
  "flow-without-filter.prepare": "plug-fitted",
  "flow-without-filter.run": flowOf(perSecond),
});
const lowFlow: Answers = { "flow-test.run": flowOf(5) };
const better: Answers = { "flow-again.run": flowOf(25) };
const dry: Answers = { "reset.find": "found", "reset.test": "moved-dry" };
const dead: Answers = { "reset.find": "found", "reset.test": "nothing-moved" };
const stuckDoor: Answers = {
  "door-closing.look": "stays-open",
  "door-closing.blocked-front": "nothing-there",
};
const slips: Answers = {
  "door-seal.look": "dirty",
  "door-seal.paper-strip": strips(1, 5, 8),
  "door-seal.clean": "cleaned",
};
const warmStill: Answers = {
  "freezer-temperature.read": celsius(-5),
  "freezer-temperature.colder": "set-colder",
};

/** Answers that lead to a cause, wherever it is looked for. `extra` below adds what one scenario asks on top. */
export const signs: Record<string, Answers> = {
  "no-power": { "power.light": "dead", "power.plug": "came-on" },
  "power-trips": { "power.light": "dead", "power.plug": "trips-again" },
  "stays-dead": { "power.light": "dead", "power.plug": "stays-dead" },
  "control-locked": { "control-lock.look": "lock-on", "control-lock.unlock": "unlocked" },
  "switched-off": { "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" },
  "controls-stalled": {},
  "door-blocked": {
    ...stuckDoor,
    "door-closing.blocked-front": "cleared",
    "door-closing.again": "closes-now",
  },
  "door-out-of-line": {
    ...stuckDoor,
    "door-closing.blocked-behind": "nothing-there",
    "door-closing.again": "still-open",
  },
  "seal-dirty": { ...slips, "door-seal.strip-again": strips() },
  "seal-worn": { ...slips, "door-seal.strip-again": strips(1, 5, 8) },
  "bin-full": { "ice-bin.look": "full", "ice-bin.empty": "emptied" },
  "bin-clumped": { "ice-bin.look": "clumped", "ice-bin.tip-out": "tipped-out" },
  "bin-not-seated": { "ice-bin.look": "not-seated", "ice-bin.reseat": "clicks-in" },
  "bin-sensor-blocked": { "ice-bin.look": "sensor-blocked", "ice-bin.wipe-sensor": "wiped" },
  "bin-cracked": { "ice-bin.look": "not-seated", "ice-bin.reseat": "cracked" },
  "ice-jammed": { "ice-under-maker.look": "ice-there", "ice-under-maker.remove": "removed" },
  "too-full": { "too-full.look": "packed", "too-full.rearrange": "rearranged" },
  "vents-blocked": { "too-full.look": "vents-covered", "too-full.uncover": "uncovered" },
  "defrost-fault": { "too-full.look": "frosted", "full-thaw.before": "came-back" },
  "frost-built-up": {
    "too-full.look": "frosted",
    "full-thaw.before": "never",
    "full-thaw.thaw": "thawed",
    "full-thaw.thawed": "running-again",
  },
  "freezer-warm": warmStill,
  "cooling-fault": {
    ...warmStill,
    "freezer-again.read": celsius(-5),
    "wait-for-ice.came": "no-ice",
    "ice-count.count": kilograms(0.2),
    "wait-for-batch.came": "still-odd",
    "cooling-runs.listen": "clicks",
  },
  "sealed-circuit-fault": {
    ...warmStill,
    "wait-for-cold.wait": runsOut,
    "wait-for-cold.came": "still-warm",
    "freezer-again.read": celsius(-5),
  },
  "tank-empty": { "tank.look": "empty", "tank.fill": "filled" },
  "tank-not-seated": { "tank.look": "not-seated", "tank.push-in": "clicks-in" },
  "tank-dirty": { "tank-inside.look": "dirty", "tank-inside.wash": "washed" },
  "float-stuck": { "tank-inside.look": "float-stuck", "tank-inside.free-float": "moves-now" },
  "tank-faulty": { "tank-inside.look": "broken" },
  "pump-faulty": { ...dry, "pump-run.listen": "silent", "pump-run.again": "silent-again" },
  "chute-iced": { "chute-flap.look": "iced", "chute-flap.clear-ice": "shuts-now" },
  "flap-broken": { "chute-flap.look": "hangs-open", "chute-flap.clear-ice": "still-open" },
  "auger-frozen": { "auger.look": "frozen", "auger.thaw": "turns-now" },
  "auger-broken": { "auger.look": "broken" },
  "lever-stuck": { "dispense-listen.listen": "silent", "lever.look": "sticks", "lever.clean": "moves-now" },
  "door-switch-iced": {
    "dispense-listen.listen": "silent",
    "dispense-listen.water": "nothing-either",
    "door-switch.press": "stays-on",
    "door-switch.clean": "goes-out-now",
  },
  "door-switch-faulty": { "door-switch.press": "stays-on", "door-switch.clean": "stays-on-still" },
  "dispenser-dead": { "dispense-listen.listen": "silent" },
  "demand-high": { "ice-demand.use": "more", "ice-demand.plan": "will-store" },
  "heat-let-in": { "door-openings.look": "often", "door-openings.fewer": "will-change" },
  "ice-setting-wrong": { "ice-settings.look": "changed", "ice-settings.set-back": "set-usual" },
  "not-level": { "level.look": "tilted", "level-feet.turn": "level-now" },
  overfills: { "fresh-ice.look": "joined" },
  "ice-stood": { "ice-use.look": "old", "ice-use.turn-over": "tipped-out" },
  "bin-dirty": { "bin-wash.look": "dirty", "bin-wash.wash": "washed" },
  "food-smells": { "open-food.look": "open", "open-food.cover": "covered" },
  "hard-water": {
    "ice-look.look": "white",
    "ice-look.vinegar": "dissolve",
    "ice-look.harmless": "that-is-it",
  },
  "coating-flakes": { "ice-look.look": "white", "ice-look.vinegar": "flakes" },
  "not-flushed": { "flush.look": "not-flushed", "flush.run": "flushed-now" },
  "water-odd": { "tap-water.compare": "same-taste" },
  "filter-stale": { "filter-age.fitted": fittedOn("2025-01-01") },
  "too-soon": { "running-time.since": "under-a-day", "running-time.give-time": "will-wait" },
  "transport-locks": { "transport-parts.look": "found", "transport-parts.remove": "removed" },
  "air-in-line": { "purge-air.run": "spurts", "purge-air.go-on": "steady-now" },
  "cap-left-on": { ...lowFlow, ...better, "filter-cap.look": "cap", "filter-cap.remove": "removed" },
  "setting-wrong": {
    "cooling-settings.look": "special",
    "cooling-settings.switch-back": "switched",
  },
  "no-air-space": { "space-around.look": "tight", "space-around.clear": "cleared" },
  "condenser-dusty": { "condenser.look": "dusty", "condenser.brush": "brushed" },
  "room-extreme": { "room-warmth.look": "cold", "room-warmth.change": "will-change" },
  "ice-compartment-iced": { "ice-compartment.look": "frosted" },
  "filter-refused": { ...lowFlow, "opening.changed": "new-filter", "filter-kind.look": "refused" },
  "fan-fault": { "cooling-runs.listen": "scrapes" },
  "supply-strong": { "tap-fill.fill": kilopascals(1000) },
  "joint-leaks": { "tap-joint.look": "drips", "tap-joint.tighten": "dry-now" },
  "drain-blocked": { "drain.look": "blocked", "drain.clear": "runs-now" },
  "drain-iced": { "drain.look": "iced-over" },
  "tap-closed": { ...lowFlow, ...better, "stop-tap.open": "opened" },
  "tap-stuck": { ...lowFlow, "stop-tap.open": "will-not-turn" },
  "line-kinked": {
    ...lowFlow,
    ...better,
    "supply-line.look": "kinked",
    "supply-line.straighten": "straightened",
  },
  "line-still-kinked": { ...lowFlow, "supply-line.look": "kinked", "supply-line.straighten": "still-flat" },
  "line-damaged": { ...lowFlow, "supply-line.look": "damaged" },
  "filter-not-seated": {
    ...lowFlow,
    ...better,
    "filter-seated.look": "loose",
    "filter-seated.reseat": "reseated",
  },
  "filter-backwards": {
    ...lowFlow,
    ...better,
    "filter-seated.look": "backwards",
    "filter-seated.turn-round": "turned",
  },
  "filter-leaks": { "filter-seated.look": "loose", "filter-seated.reseat": "leaks" },
  "filter-clogged": { ...lowFlow, ...plug(25) },
  "filter-due": {
    ...lowFlow,
    ...noPlug,
    "filter-age.fitted": fittedOn("2025-01-01"),
    "fresh-ice.look": "small",
  },
  "supply-weak": { ...lowFlow, ...plug(5) },
  "weak-at-valve": { ...dry, "inlet-valve.arrives": "weak" },
  "fill-tube-frozen": {
    ...dry,
    "fill-tube.look": "frozen",
    "fill-tube.thaw": "thawed",
    "fill-tube.look-again": "open-now",
  },
  "valve-screen-blocked": { ...dry, "inlet-valve.screen": "blocked", "inlet-valve.rinse": "rinsed" },
  "inlet-valve-faulty": dry,
  "inlet-valve-slow": {
    "fresh-ice.look": "small",
    "flow-test.run": flowOf(25),
    "purge-air.run": "nothing-comes",
    "level.look": "cannot",
    "fill-tube.look": "clear",
    "inlet-valve.screen": "clean",
    "inlet-valve.arrives": "strong",
  },
  "fill-tube-faulty": {
    "fill-tube.look": "frozen",
    "fill-tube-again.look": "frozen-again",
    "fill-drip.look": "dry",
  },
  "valve-leaks-by": { "fill-drip.look": "drips" },
  "ice-maker-faulty": dead,
  "ice-maker-in-doubt": { ...dead, "reset.unplug": "cannot" },
  "bin-sensor-faulty": { "bin-arm.look": "broken" },
};

export const tankFed: Answers = { "opening.supply": "tank" };
const odd = (answer: string): Answers => ({ "opening.symptom": "odd-ice", "opening.odd": answer });
/** Nothing read of the cold, and no test run, so that neither says anything yet. */
const unread: Answers = { "freezer-temperature.read": "cannot", "reset.find": "cannot" };

/** `extra`: what one scenario asks on top for a cause. */
type Case = { open: Answers; extra?: Record<string, Answers>; tankCauses?: string[] };

/** How each scenario is come to; causes of a tank-fed machine are told from there. */
export const cases: Record<string, Case> = {
  "no-ice-tank": {
    open: { "opening.symptom": "no-ice", "opening.supply": "tank", "opening.changed": "new", ...unread },
    extra: {
      "controls-stalled": { "reset.find": "found", "reset.test": "moved-wet" },
      "fill-tube-frozen": dry,
      "air-in-line": { ...dry, "pump-run.listen": "hums", "pump-run.prime": "water-now" },
      "pump-faulty": dry,
    },
  },
  "not-dispensed": { open: { "opening.symptom": "not-dispensed" } },
  "too-little": {
    open: { "opening.symptom": "little-ice", "opening.changed": "power-cut" },
    tankCauses: ["tank-empty", "tank-not-seated", "tank-dirty", "float-stuck", "tank-faulty"],
  },
  "odd-cubes": {
    open: { ...odd("shape"), "fresh-ice.look": "small" },
    extra: {
      overfills: { "fresh-ice.look": "joined" },
    },
    tankCauses: ["tank-empty", "tank-not-seated", "tank-dirty", "float-stuck", "tank-faulty"],
  },
  clumped: { open: odd("clumped") },
  "after-change": {
    open: { "opening.symptom": "after-change", "opening.changed": "new", ...unread },
    extra: {
      ...Object.fromEntries(
        ["tap-closed", "line-kinked", "filter-not-seated", "filter-backwards", "cap-left-on"].map((id) => [
          id,
          dry,
        ]),
      ),
      "controls-stalled": { "reset.find": "found", "reset.test": "moved-wet" },
      "fill-tube-frozen": dry,
      "valve-screen-blocked": dry,
      "weak-at-valve": dry,
      "inlet-valve-faulty": dry,
    },
  },
  "too-warm": { open: { "opening.symptom": "too-warm", "opening.changed": "power-cut" } },
  "odd-taste": { open: odd("taste"), tankCauses: ["tank-dirty", "tank-faulty"] },
  leaking: {
    open: { "opening.symptom": "leaking", "opening.leak": "away" },
    tankCauses: ["tank-not-seated", "tank-faulty"],
  },
};

/** Where the water shows for the causes of a leak that do not show on the floor. */
export const wetAt: Record<string, string> = {
  "air-in-line": "dispenser",
  "chute-iced": "dispenser",
  "flap-broken": "dispenser",
  "ice-stood": "ice",
  "valve-leaks-by": "ice",
  overfills: "ice",
  "not-level": "ice",
  "ice-setting-wrong": "ice",
  "door-blocked": "bottom",
  "door-out-of-line": "bottom",
  "seal-dirty": "bottom",
  "seal-worn": "bottom",
  "filter-leaks": "filter",
};
