import { type Deeds, done, type Hooks, listen, look, plain, recall, type Scene } from "../scene.ts";
import { dispenserFlow, fillShare, flowAtMachine, pumpFlow } from "../water.ts";

const filtered = ({ machine }: Scene) => machine.filter !== "none";
const leaks = ({ state }: Scene, place: string) => state.leaks.some((leak) => leak === place);
/** A joint, a ring: tightened or wiped it holds in some homes. */
const holdsAfter = (scene: Scene, spot: string, share: number) => scene.trait(spot)() < share;

export const waterHooks: Hooks = {
  "stop-tap.open": look(({ state }) =>
    state.tapStuck ? "will-not-turn" : state.tapOpen < 1 ? "opened" : "was-open",
  ),
  "tap-joint.look": look((scene) => (leaks(scene, "joint") ? "drips" : "dry")),
  "tap-joint.tighten": done((scene) =>
    leaks(scene, "joint") && !holdsAfter(scene, "joint", 0.6) ? "still-drips" : "dry-now",
  ),
  "tap-reopen.open": done((scene) =>
    leaks(scene, "joint") && holdsAfter(scene, "joint seen", 0.6) ? "drips" : "opened",
  ),
  "supply-line.look": look((scene, own) => {
    if (leaks(scene, "line")) return "damaged";
    const copper = scene.state.kinkStays && scene.trait("copper")() < 0.3 && own.includes("copper-kinked");
    return scene.state.kink > 0 ? (copper ? "copper-kinked" : "kinked") : "sound";
  }),
  "supply-line.straighten": done(({ state }) => (state.kinkStays ? "still-flat" : "straightened")),
  "filter-cap.look": look((scene) => (filtered(scene) ? (scene.state.filterCap ? "cap" : "nothing") : null)),
  "filter-cap.remove": done(() => "removed"),
  "filter-kind.look": look((scene) => {
    if (!scene.state.filterRefused) return "same";
    return scene.machine.filterReader ? "refused" : "other-kind";
  }),
  "filter-seated.look": look((scene) => {
    if (!filtered(scene)) return null;
    const { state } = scene;
    if (state.filterBackwards) return scene.person.movesMachine ? "backwards" : null;
    return state.filterLoose || (leaks(scene, "filter") && holdsAfter(scene, "ring", 0.5))
      ? "loose"
      : "seated";
  }),
  "filter-seated.reseat": done((scene) =>
    leaks(scene, "filter") && !holdsAfter(scene, "ring", 0.5) ? "leaks" : "reseated",
  ),
  "filter-seated.turn-round": done(() => "turned"),
  "flow-without-filter.have": plain(({ machine }) => (machine.bypassPlug ? "have-plug" : "no-plug")),
  "flow-without-filter.prepare": plain((scene) =>
    filtered(scene) && scene.machine.bypassPlug ? "plug-fitted" : "no-plug",
  ),
  "flush.look": recall(({ state, machine }) => {
    if (!machine.waterDispenser) return "no-dispenser";
    return state.unflushed || state.newHose ? "not-flushed" : "flushed";
  }),
  "flush.run": plain(() => "flushed-now"),
  "purge-air.run": look((scene) => {
    const { state, machine } = scene;
    if (!machine.waterDispenser) return null;
    if (dispenserFlow(state, machine) < 1) return "nothing-comes";
    if (state.airInLine) return "spurts";
    return leaks(scene, "dispenser") ? "drips-after" : "steady";
  }),
  "purge-air.go-on": done((scene) => (leaks(scene, "dispenser") ? "still-spurts" : "steady-now")),
  "inlet-valve.screen": look(({ state }) => (state.screen ? "blocked" : "clean")),
  "inlet-valve.rinse": done(() => "rinsed"),
  "inlet-valve.arrives": look(({ state, machine }) =>
    flowAtMachine({ ...state, tapShutByUs: false }, machine) > 10 ? "strong" : "weak",
  ),
  "fill-tube.look": look(({ state }) => (state.tube === "iced" ? "frozen" : "clear")),
  "fill-tube.look-again": look(({ state }) => (state.tube === "iced" ? "still-frozen" : "open-now")),
  "fill-tube-again.look": look(({ state }) => (state.tube === "iced" ? "frozen-again" : "clear")),
  "fill-drip.look": look(({ state }) => (state.seeps ? "drips" : "dry")),
  "tap-water.compare": look(({ state }) => (state.oddWater ? "same-taste" : "tap-fine")),
  "tank.look": look(({ state }) => {
    if (state.tankCracked) return "cracked";
    return state.tankEmpty ? "empty" : state.tankCrooked ? "not-seated" : "full";
  }),
  "tank.fill": plain(() => "filled"),
  "tank.push-in": done(() => "clicks-in"),
  "tank-inside.look": look(({ state }) => {
    if (state.tankCracked) return "broken";
    return state.tankDirty ? "dirty" : state.float === "stuck" ? "float-stuck" : "clean";
  }),
  "tank-inside.wash": plain(() => "washed"),
  "tank-inside.free-float": done((scene) =>
    scene.state.float === "stuck" && scene.trait("float")() < 0.2 ? "still-stuck" : "moves-now",
  ),
  "pump-run.listen": listen(({ state }) => {
    if (pumpFlow(state) > 0 && fillShare(state, { water: "tank" } as Scene["machine"]) > 0.1)
      return "water-comes";
    return state.pumpDead || state.float !== "sound" ? "silent" : "hums";
  }),
  "pump-run.prime": look(({ state }) =>
    pumpFlow(state) > 0 && state.tube === "open" ? "water-now" : "still-dry",
  ),
  "pump-run.again": listen(({ state }) =>
    state.pumpDead || state.float !== "sound" ? "silent-again" : "hums-now",
  ),
  "leak-where.look": look(({ state }) => whereWet(state)),
  "leak-stop.stops": look((scene) => {
    const { state } = scene;
    if (state.leaks.some((leak) => leak === "drip-pan" || leak === "condensation") || state.drain !== "free")
      return scene.trait("slow drip")() < 0.3 ? "was-dry" : "keeps-coming";
    const onlyFills = state.leaks.some(
      (leak) => leak === "valve-body" || leak === "hinge-tube" || leak === "fill-cup",
    );
    return onlyFills && scene.trait("between fills")() < 0.6 ? "was-dry" : "stops";
  }),
};

function whereWet(state: Scene["state"]): string {
  const [leak] = state.leaks;
  if (leak === "filter" || leak === "dispenser" || leak === "tank") return leak;
  if (leak === "fill-cup" || (!leak && state.seeps)) return "ice";
  return leak ? "floor" : "bottom";
}

export const waterDeeds: Deeds = {
  "stop-tap.open:opened": (state) => {
    state.tapOpen = 1;
  },
  "tap-joint.tighten:dry-now": (state) => stopLeak(state, "joint"),
  "supply-line.straighten:straightened": (state) => {
    state.kink = 0;
  },
  "filter-cap.remove:removed": (state) => {
    state.filterCap = false;
  },
  "filter-seated.reseat:reseated": (state) => {
    state.filterLoose = false;
    stopLeak(state, "filter");
  },
  "filter-seated.turn-round:turned": (state) => {
    state.filterBackwards = false;
  },
  "flush.run:flushed-now": (state) => {
    state.unflushed = false;
    state.newHose = false;
    state.airInLine = false;
  },
  "purge-air.go-on:steady-now": (state) => {
    state.airInLine = false;
  },
  "inlet-valve.rinse:rinsed": (state) => {
    state.screen = false;
  },
  "tank.fill:filled": (state) => {
    state.tankEmpty = false;
    state.tankCrooked = false;
  },
  "tank.push-in:clicks-in": (state) => {
    state.tankCrooked = false;
  },
  "tank-inside.wash:washed": (state) => {
    state.tankDirty = false;
    state.tankEmpty = false;
    state.tankCrooked = false;
  },
  "tank-inside.free-float:moves-now": (state) => {
    if (state.float === "stuck") state.float = "sound";
    state.tankEmpty = false;
  },
  "pump-run.listen:hums": (state) => {
    state.tankEmpty = false;
    state.tankCrooked = false;
    state.airInPump = false;
  },
  "pump-run.listen:silent": (state) => {
    state.tankEmpty = false;
    state.tankCrooked = false;
  },
};

export function stopLeak(state: Scene["state"], place: string): void {
  state.leaks = state.leaks.filter((leak) => leak !== place);
}
