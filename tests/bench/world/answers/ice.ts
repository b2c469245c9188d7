import { deliveryStops, gramsPerDay, piecesLook, testRunMoves } from "../making.ts";
import { type Deeds, done, type Hooks, listen, look, plain, recall, type Scene } from "../scene.ts";
import { dispenserFlow, fillShare } from "../water.ts";

const lies = (scene: Scene) => scene.state.binGrams > 150;

export const iceHooks: Hooks = {
  "control-lock.look": look(({ state, machine }) =>
    machine.lock ? (state.locked ? "lock-on" : "lock-off") : "no-lock",
  ),
  "control-lock.unlock": done(({ state }) => (state.power === "off" ? "still-locked" : "unlocked")),
  "power.light": look(({ state }) => (state.power === "on" ? "alive" : "dead")),
  "power.plug": done(() => "came-on"),
  "ice-maker-switch.look": look(({ state }) => (state.iceOn && state.power === "on" ? "on" : "off")),
  "ice-maker-switch.switch-on": done(({ state }) => (state.power === "off" ? "no-effect" : "switched-on")),
  "ice-settings.look": look(({ state, machine }) => {
    if (state.iceSetting !== "usual") return "changed";
    return machine.display ? "usual" : "none";
  }),
  "ice-settings.set-back": done(() => "set-usual"),
  "ice-bin.look": look(({ state }) => {
    if (state.binCrooked || state.binCracked) return "not-seated";
    if (state.sensorFrost) return "sensor-blocked";
    return state.binFull ? "full" : state.lump ? "clumped" : "fine";
  }),
  "ice-bin.empty": plain(() => "emptied"),
  "ice-bin.tip-out": plain(() => "tipped-out"),
  "ice-bin.reseat": done(({ state }) => (state.binCracked ? "cracked" : "clicks-in")),
  "ice-bin.wipe-sensor": plain(() => "wiped"),
  "ice-under-maker.look": look(({ state }) => (state.jam === "none" ? "clear" : "ice-there")),
  "ice-under-maker.remove": done(({ state }) => (state.jam === "fast" ? "frozen-fast" : "removed")),
  "transport-parts.look": look(({ state }) => (state.packing ? "found" : "nothing")),
  "transport-parts.remove": plain(() => "removed"),
  "reset.find": look(({ machine }) => (machine.testButton ? "found" : "no-button")),
  "reset.restart": plain(() => "restarted"),
  "reset.hold": look(({ state }) =>
    testRunMoves({ ...state, stalled: false }) ? "chime-or-move" : "nothing",
  ),
  "reset.test": look(({ state, machine }) => {
    if (!testRunMoves(state)) return "nothing-moved";
    return fillShare(state, machine) > 0.12 ? "moved-wet" : "moved-dry";
  }),
  "fresh-ice.look": look((scene) => {
    const { state, machine } = scene;
    if (gramsPerDay(state, machine, state) > 0.08 * machine.dayGrams) return piecesLook(state, machine);
    return lies(scene) ? "right" : null;
  }),
  "ice-use.look": recall(({ state }) =>
    state.iceThawed ? "thawed" : state.iceOld || state.binFull ? "old" : "fresh",
  ),
  "ice-use.turn-over": plain(() => "tipped-out"),
  "ice-demand.use": recall(({ state }) => (state.demandHigh ? "more" : "less")),
  "ice-demand.plan": done(planned),
  "ice-yield.plan": done(planned),
  "ice-count.plan": done(planned),
  "ice-look.look": look(({ state }) => {
    if (state.hardWater || state.flakes) return "white";
    if (state.unflushed) return "bits";
    return state.binDirty || state.tankDirty ? "slimy" : "smell";
  }),
  "ice-look.harmless": look(({ state }) =>
    state.hardWater || state.flakes ? "that-is-it" : "something-else",
  ),
  "bin-wash.look": look(({ state }) => (state.binDirty ? "dirty" : "clean")),
  "bin-wash.wash": plain(() => "washed"),
  "open-food.look": look(({ state }) => (state.smellyFood ? "open" : "covered")),
  "open-food.cover": plain(() => "covered"),
  "level.look": look(({ state }) => (state.tilted ? "tilted" : "level")),
  "level-feet.turn": done(() => "level-now"),
  "auger.look": look(({ state }) =>
    state.drive === "iced" ? "frozen" : state.drive === "broken" ? "broken" : "turns",
  ),
  "auger.thaw": done(({ state }) => (state.drive === "broken" ? "still-stuck" : "turns-now")),
  "chute-flap.look": look(({ state, machine }) => {
    if (!machine.iceDispenser) return "no-chute";
    return state.chute === "iced" ? "iced" : state.chute === "flap-broken" ? "hangs-open" : "clear";
  }),
  "chute-flap.clear-ice": done(({ state }) => (state.chute === "flap-broken" ? "still-open" : "shuts-now")),
  "lever.look": look(({ state }) =>
    state.lever === "sticky" ? "sticks" : state.lever === "broken" ? "broken" : "moves",
  ),
  "lever.clean": done(() => "moves-now"),
  "door-switch.press": look(({ state, machine }) => {
    if (!machine.doorSwitchSeen) return "no-switch";
    return state.doorSwitch === "sound" ? "goes-out" : "stays-on";
  }),
  "door-switch.clean": look(({ state }) => (state.doorSwitch === "dead" ? "stays-on-still" : "goes-out-now")),
  "dispense-listen.listen": listen(({ state, machine }) => {
    if (!machine.iceDispenser) return null;
    const stops = deliveryStops(state);
    if (stops === null) return "comes";
    if (stops === "ice" || stops === "chute" || stops === "empty") return "hums";
    return stops === "motor" ? "light-only" : "silent";
  }),
  "dispense-listen.water": look(({ state, machine }) => {
    if (!machine.waterDispenser) return "no-water-there";
    const shut = state.locked || state.mode === "sabbath" || state.doorSwitch !== "sound";
    return !shut && dispenserFlow(state, machine) > 2 ? "water-comes" : "nothing-either";
  }),
};

function planned(scene: Scene): string {
  return scene.state.demandHigh && scene.trait("stores")() < 0.7 ? "will-store" : "made-more";
}

export const iceDeeds: Deeds = {
  "control-lock.unlock:unlocked": (state) => {
    state.locked = false;
  },
  "power.plug:came-on": (state) => {
    state.power = "on";
  },
  "ice-maker-switch.switch-on:switched-on": (state) => {
    state.iceOn = true;
  },
  "ice-settings.set-back:set-usual": (state) => {
    state.iceSetting = "usual";
  },
  "ice-bin.empty:emptied": emptyBin,
  "ice-bin.tip-out:tipped-out": emptyBin,
  "ice-bin.reseat:clicks-in": (state) => {
    state.binCrooked = false;
  },
  "ice-bin.wipe-sensor:wiped": (state) => {
    state.sensorFrost = false;
    state.binCrooked = false;
  },
  "ice-under-maker.remove:removed": (state) => {
    if (state.jam === "loose") state.jam = "none";
  },
  "transport-parts.remove:removed": (state) => {
    state.packing = false;
  },
  "reset.restart:restarted": (state) => {
    state.stalled = false;
  },
  "reset.hold:chime-or-move": (state) => {
    state.stalled = false;
  },
  "reset.hold:nothing": (state) => {
    state.stalled = false;
  },
  "ice-use.turn-over:tipped-out": emptyBin,
  "bin-wash.wash:washed": (state) => {
    state.binDirty = false;
    emptyBin(state);
  },
  "open-food.cover:covered": (state) => {
    state.smellyFood = false;
  },
  "ice-look.harmless:that-is-it": (state) => {
    state.hardWater = false;
  },
  "level-feet.turn:level-now": (state) => {
    state.tilted = false;
  },
  "auger.thaw:turns-now": (state) => {
    state.drive = state.drive === "iced" ? "sound" : state.drive;
    emptyBin(state);
  },
  "chute-flap.clear-ice:shuts-now": (state) => {
    if (state.chute === "iced") state.chute = "clear";
  },
  "lever.clean:moves-now": (state) => {
    if (state.lever === "sticky") state.lever = "sound";
  },
  "door-switch.clean:goes-out-now": (state) => {
    if (state.doorSwitch === "iced") state.doorSwitch = "sound";
  },
  ...Object.fromEntries(
    ["ice-demand", "ice-yield", "ice-count"].map((check) => [
      `${check}.plan:will-store`,
      (state: Scene["state"]) => {
        state.demandHigh = false;
      },
    ]),
  ),
};

/** The ice is out; what it had become goes with it. The bin is pushed back with care. */
export function emptyBin(state: Scene["state"]): void {
  state.binFull = false;
  state.lump = false;
  state.iceOld = false;
  state.iceThawed = false;
  state.binGrams = 0;
  state.binCrooked = false;
}
