import { testRunMoves } from "../making.ts";
import { nothingPrepared } from "../prepare.ts";
import { type Deeds, type Hooks, look, plain, recall, result, type Scene } from "../scene.ts";
import { fillShare } from "../water.ts";

/** Second looks, what has to be ruled out before a part, and what puts a kitchen back as it was. */
export const proofHooks: Hooks = {
  "put-back.all": plain(() => "back"),
  "add-water-light.look": look(({ state, machine }) => {
    if (!machine.display) return "no-light";
    return state.float !== "sound" || state.tankEmpty || state.tankCrooked ? "lit" : "dark";
  }),
  "add-water-light.magnet": look(({ state }) => (state.float === "lost" ? "gone" : "there")),
  "bin-arm.look": look((scene) => {
    if (scene.machine.shutOff !== "arm") return "no-arm";
    return scene.state.fullSensorDead && scene.trait("arm")() < 0.5 ? "broken" : "moves";
  }),
  "full-thaw.before": recall((scene) => {
    const tried = scene.trait("thawed before")() < 0.35;
    if (!tried) return "never";
    return scene.state.defrostDead ? "came-back" : "no-help";
  }),
  "full-thaw.thawed": plain(() => "running-again"),
  "ice-look.vinegar": look(({ state }) =>
    state.flakes ? "flakes" : state.hardWater ? "dissolve" : "no-bits",
  ),
  "reset.unplug": plain((scene) =>
    scene.person.reachesPlug || scene.trait("consumer unit")() < 0.5 ? "was-out" : null,
  ),
  "reset.hold-again": plain(() => "held"),
  "reset.test-again": look(({ state, machine }) => {
    if (!testRunMoves(state)) return "nothing-again";
    return fillShare(state, machine) > 0.12 ? "moved-wet" : "moved-dry";
  }),
  "watch-leak.filled": result((scene) => {
    if (showsWet(scene, "filling")) return "wet";
    return scene.state.drain === "free" &&
      scene.home.complaint.trouble === "leak" &&
      scene.trait("drip")() < 0.5
      ? "was-quick"
      : "was-slow";
  }),
  "watch-leak.look": result((scene) => (showsWet(scene) ? "wet" : "dry")),
};

/** Some leaks show within the hours of a watch, some need a fill, a thaw or a damp day. */
const showing: Record<string, number> = {
  joint: 0.97,
  filter: 0.97,
  line: 0.97,
  tank: 0.95,
  "valve-body": 0.75,
  "hinge-tube": 0.75,
  "fill-cup": 0.75,
  dispenser: 0.8,
  "drip-pan": 0.6,
  condensation: 0.5,
};

function showsWet({ state, chance, prepared }: Scene, only: "any" | "filling" = "any"): boolean {
  const fed = ["joint", "filter", "line", "valve-body", "hinge-tube", "fill-cup", "dispenser"];
  const wet = state.leaks.some(
    (leak) => !(prepared.tapShut && fed.includes(leak)) && chance() < (showing[leak] ?? 1),
  );
  if (only === "filling") return wet;
  return wet || (state.drain !== "free" && chance() < 0.6) || (state.seeps && chance() < 0.7);
}

export const proofDeeds: Deeds = {
  "put-back.all:back": (_, scene) => {
    const { tapShut } = scene.prepared;
    Object.assign(scene.prepared, nothingPrepared(), { tapShut });
  },
  "reset.unplug:was-out": (state) => {
    state.stalled = false;
  },
  "reset.hold-again:held": (state) => {
    state.stalled = false;
  },
};
