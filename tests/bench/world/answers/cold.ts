import { deliveryStops, gramsPerDay } from "../making.ts";
import { type Deeds, done, feel, type Hooks, listen, look, recall, result, type Scene } from "../scene.ts";
import { stillThere } from "../still-there.ts";

export const coldHooks: Hooks = {
  "warm-where.look": look(({ state }) => {
    const freezer = state.freezerC > -13;
    const fridge = state.fridgeC > 6.5;
    return freezer && fridge ? "both" : fridge ? "fridge-only" : freezer ? "freezer-only" : "neither";
  }),
  "cooling-settings.look": look(({ state }) => {
    if (state.mode !== "none") return "special";
    return state.setFreezer > -15 || state.setFridge > 6 ? "too-mild" : "usual";
  }),
  "cooling-settings.switch-back": done(({ state }) => (state.power === "off" ? "no-effect" : "switched")),
  "cooling-settings.colder": done(({ state }) => (state.power === "off" ? "no-effect" : "set-colder")),
  "freezer-temperature.colder": done((scene) =>
    scene.state.setFreezer > -15 || scene.trait("dial")() < 0.5 ? "set-colder" : "already-coldest",
  ),
  "cooling-runs.listen": listen(({ state }) => {
    if (state.power === "off" || state.mode === "demo" || state.circuit < 0.15) return "silent";
    if (state.relayDead) return "clicks";
    return state.fan === "scrapes" ? "scrapes" : "runs";
  }),
  "fan-air.feel": feel(({ state, machine }) => {
    if (!machine.doorSwitchSeen) return "no-switch";
    return airMoves(state) ? "blows" : "still";
  }),
  "fan-air.later": feel(({ state }) => (airMoves(state) ? "blows-now" : "still-again")),
  "room-warmth.look": look(({ state }) => (state.roomC < 10 ? "cold" : state.roomC > 34 ? "hot" : "usual")),
  "room-warmth.change": done((scene) => (scene.trait("room")() < 0.5 ? "will-change" : "cannot-change")),
  "ice-compartment.look": look((scene) => {
    if (scene.machine.iceAt !== "door") return "in-freezer";
    // Some of the frost lies in the duct.
    return scene.state.boxFrost && scene.trait("duct")() < 0.75 ? "frosted" : "dry";
  }),
  "condenser.look": look(({ state, machine }) => {
    if (!machine.frontGrille) return "no-grille";
    return state.dust ? "dusty" : "clean";
  }),
  "condenser.brush": done(() => "brushed"),
  "space-around.look": look((scene) => {
    if (scene.state.tight) return "tight";
    return scene.state.roomC > 34 && scene.trait("hot corner")() < 0.4 ? "tight" : "room";
  }),
  "space-around.clear": done((scene) =>
    scene.state.roomC > 34 || scene.trait("niche")() < 0.3 ? "must-be-moved" : "cleared",
  ),
  "door-closing.look": look(({ state }) => (state.sealGap === "none" ? "closes" : "stays-open")),
  "door-closing.blocked-front": done((scene) => isBlocked(scene, "front")),
  "door-closing.blocked-behind": done((scene) => isBlocked(scene, "behind")),
  "door-closing.again": look(({ state }) => (state.sealGap === "none" ? "closes-now" : "still-open")),
  "door-openings.look": recall(({ state }) => state.openings),
  "door-openings.fewer": done((scene) => (scene.trait("doors")() < 0.85 ? "will-change" : "cannot-change")),
  "door-seal.look": look((scene) => {
    const { state } = scene;
    if (state.seal === "worn") return scene.trait("seal")() < 0.6 ? "torn" : "gaps";
    if (state.seal === "dirty") return "dirty";
    return state.sealGap === "crooked" ? "gaps" : "sound";
  }),
  "door-seal.feel": feel(({ state }) =>
    state.seal !== "sound" || state.sealGap !== "none" ? "cold-air" : "no-draught",
  ),
  "door-seal.clear-away": look(({ state }) => (state.sealGap === "blocked" ? "cleared" : "nothing-there")),
  "door-seal.clean": done(() => "cleaned"),
  "too-full.look": look((scene) => {
    const { state } = scene;
    // Most of the frost lies behind a cover.
    if ((state.frost > 0.6 || state.seal === "worn") && scene.trait("cover")() < 0.45) return "frosted";
    return state.ventsCovered ? "vents-covered" : state.packed ? "packed" : "room";
  }),
  "too-full.rearrange": done(() => "rearranged"),
  "too-full.uncover": done(() => "uncovered"),
  "running-time.since": recall(({ state }) => (state.hoursSinceChange < 24 ? "under-a-day" : "over-a-day")),
  "running-time.give-time": done(({ person }) => (person.waits ? "will-wait" : "no-time")),
  "drain.look": look(({ state, machine }) => {
    if (state.drain === "iced") return "iced-over";
    return state.drain === "blocked" ? "blocked" : machine.drainSeen ? "free" : "not-seen";
  }),
  "drain.clear": look(({ state }) => (state.drain === "iced" ? "still-blocked" : "runs-now")),
  "wait-for-cold.came": result(({ state }) =>
    state.freezerC < -14.5 && state.fridgeC < 6 ? "cold-again" : "still-warm",
  ),
  "wait-for-ice.came": result((scene) => (hasMade(scene) ? "ice-came" : "no-ice")),
  "last-wait.came": result((scene) => (hasMade(scene) ? "ice-came" : "no-ice")),
  "wait-for-batch.came": result((scene) => (stillThere(scene) ? "still-odd" : "right")),
  "last-batch.came": result((scene) => (stillThere(scene) ? "still-odd" : "right")),
  "try-dispenser.came": result(({ state }) => (deliveryStops(state) === null ? "comes" : "nothing")),
};

/** A fan that stands, and frost that fills its slots, feel alike. */
const airMoves = ({ fan, frost, power, mode, circuit }: Scene["state"]) =>
  fan !== "dead" && frost < 0.9 && power !== "off" && mode !== "demo" && circuit >= 0.15;

const hasMade = ({ state, machine }: Scene) => gramsPerDay(state, machine, state) > 0.08 * machine.dayGrams;

function isBlocked(scene: Scene, where: "front" | "behind"): string {
  const lies = scene.trait("what blocks")() < 0.5 ? "front" : "behind";
  return scene.state.sealGap === "blocked" && lies === where ? "cleared" : "nothing-there";
}

export const coldDeeds: Deeds = {
  "cooling-settings.switch-back:switched": (state) => {
    state.mode = "none";
    setRight(state);
  },
  "cooling-settings.colder:set-colder": setRight,
  "freezer-temperature.colder:set-colder": setRight,
  "room-warmth.change:will-change": (state) => {
    state.roomC = 20;
  },
  "condenser.brush:brushed": (state) => {
    state.dust = false;
  },
  "space-around.clear:cleared": (state) => {
    state.tight = false;
  },
  "door-closing.blocked-front:cleared": closeGap,
  "door-closing.blocked-behind:cleared": closeGap,
  "door-seal.clear-away:cleared": closeGap,
  "door-openings.fewer:will-change": (state) => {
    state.openings = "seldom";
  },
  "door-seal.clean:cleaned": (state) => {
    if (state.seal === "dirty") state.seal = "sound";
  },
  "too-full.rearrange:rearranged": (state) => {
    state.packed = false;
  },
  "too-full.uncover:uncovered": (state) => {
    state.ventsCovered = false;
  },
  "drain.clear:runs-now": (state) => {
    if (state.drain === "blocked") state.drain = "free";
  },
};

function setRight(state: Scene["state"]): void {
  state.setFreezer = Math.min(-18, state.setFreezer);
  state.setFridge = 4;
}

function closeGap(state: Scene["state"]): void {
  if (state.sealGap === "blocked") state.sealGap = "none";
}
