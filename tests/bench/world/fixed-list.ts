import { deeds, hooks, measure } from "./answers/index.ts";
import { chanceOf } from "./chance.ts";
import { said } from "./errors.ts";
import type { Home } from "./home.ts";
import { nothingPrepared } from "./prepare.ts";
import type { Scene } from "./scene.ts";
import { stillThere } from "./still-there.ts";
import { runFor } from "./time.ts";
import type { Visit } from "./visit.ts";

/* The list that shops print: look here, then there, and in the end a new ice maker or somebody to call. */

type Step = { look: string; wrong: string; then: string; own: string[]; needs?: "tap" | "move" };

const step = (look: string, wrong: string, then: string, own: string, needs?: Step["needs"]): Step => ({
  look,
  wrong,
  then,
  own: own.split(" "),
  ...(needs ? { needs } : {}),
});

const steps = {
  switch: step("ice-maker-switch.look", "off", "ice-maker-switch.switch-on:switched-on", "on off"),
  lock: step("control-lock.look", "lock-on", "control-lock.unlock:unlocked", "lock-off no-lock lock-on"),
  full: step("ice-bin.look", "full", "ice-bin.empty:emptied", "fine not-seated sensor-blocked full clumped"),
  lump: step(
    "ice-bin.look",
    "clumped",
    "ice-bin.tip-out:tipped-out",
    "fine not-seated sensor-blocked full clumped",
  ),
  seat: step(
    "ice-bin.look",
    "not-seated",
    "ice-bin.reseat:clicks-in",
    "fine not-seated sensor-blocked full clumped",
  ),
  tap: step("stop-tap.open", "opened", "stop-tap.open:opened", "was-open opened will-not-turn", "tap"),
  line: step(
    "supply-line.look",
    "kinked",
    "supply-line.straighten:straightened",
    "sound kinked damaged",
    "move",
  ),
  jam: step("ice-under-maker.look", "ice-there", "ice-under-maker.remove:removed", "clear ice-there"),
  settings: step(
    "cooling-settings.look",
    "too-mild",
    "cooling-settings.colder:set-colder",
    "usual special too-mild",
  ),
  mode: step(
    "cooling-settings.look",
    "special",
    "cooling-settings.switch-back:switched",
    "usual special too-mild",
  ),
  packed: step(
    "too-full.look",
    "packed",
    "too-full.rearrange:rearranged",
    "room frosted vents-covered packed",
  ),
  vents: step(
    "too-full.look",
    "vents-covered",
    "too-full.uncover:uncovered",
    "room frosted vents-covered packed",
  ),
  seal: step("door-seal.look", "dirty", "door-seal.clean:cleaned", "sound dirty torn gaps"),
  dust: step("condenser.look", "dusty", "condenser.brush:brushed", "clean dusty no-grille"),
  joint: step("tap-joint.look", "drips", "tap-joint.tighten:dry-now", "dry drips", "tap"),
  drain: step("drain.look", "blocked", "drain.clear:runs-now", "free blocked iced-over not-seen"),
  bin: step("bin-wash.look", "dirty", "bin-wash.wash:washed", "clean dirty"),
  old: step("ice-use.look", "old", "ice-use.turn-over:tipped-out", "fresh old thawed"),
  flush: step("flush.look", "not-flushed", "flush.run:flushed-now", "flushed not-flushed no-dispenser"),
  tank: step("tank.look", "empty", "tank.fill:filled", "full cracked empty not-seated"),
  seated: step("tank.look", "not-seated", "tank.push-in:clicks-in", "full cracked empty not-seated"),
};

type Way = (keyof typeof steps | "filter" | "reset")[];
const ice: Way = [
  "switch",
  "tank",
  "seated",
  "full",
  "lump",
  "seat",
  "tap",
  "line",
  "filter",
  "settings",
  "jam",
  "reset",
];
const lists: Record<string, Way> = {
  "too-warm": ["settings", "mode", "packed", "vents", "seal", "dust"],
  leaking: ["joint", "drain", "filter"],
  "not-dispensed": ["lock", "lump", "seat", "switch"],
  taste: ["old", "bin", "flush", "filter"],
};

/** What the list's last line says: buy an ice maker, or call somebody. */
export type Last = "ice-maker" | "professional";

/** Sends a home through the list. Each remedy is followed by a day of waiting. */
export function followList(home: Home, perfect: boolean, last: Last): Visit {
  const visit: Visit = {
    home,
    state: structuredClone(home.state),
    turns: [],
    ending: null,
    session: null,
    minutes: 0,
    hours: 0,
    fullGates: 0,
    shortGates: 0,
    askedTwice: 0,
    hazards: [],
    unknown: [],
    leftBehind: [],
  };
  if (home.hazard) return { ...visit, ending: ended("stopped") };
  const scene = sceneOf(home, visit, perfect);
  const { symptom, trouble, odd } = home.complaint;
  const key = symptom === "odd-ice" && odd === "taste" ? "taste" : trouble === "taste" ? "taste" : symptom;
  for (const name of lists[key] ?? ice) {
    visit.turns.push({ turn: name, said: "" });
    visit.minutes += 3;
    const acted =
      name === "filter" ? changeFilter(scene) : name === "reset" ? reset(scene) : follow(scene, steps[name]);
    if (acted === "bought") return { ...visit, ending: ended("part", "water-filter") };
    if (!acted) continue;
    visit.hours += 24;
    runFor(scene.state, home.machine, 24);
    if (!stillThere(scene)) return { ...visit, ending: ended("fixed") };
  }
  return { ...visit, ending: last === "ice-maker" ? ended("part", "ice-maker") : ended("professional") };
}

const ended = (outcome: string, part: string | null = null) => ({
  outcome,
  who: outcome === "professional" ? "appliance-engineer" : null,
  part,
  claim: null,
  causes: [],
});

function sceneOf(home: Home, { state }: Visit, perfect: boolean): Scene {
  return {
    home,
    machine: home.machine,
    state,
    person: home.person,
    prepared: nothingPrepared(),
    perfect,
    now: 0,
    slipped: new Map(),
    trait: (spot) => chanceOf(`${home.seed} ${spot}`),
    chance: chanceOf(`${home.seed} list`),
  };
}

function follow(scene: Scene, { look, wrong, then, own, needs }: Step): boolean {
  const { machine, person } = scene;
  if (look.startsWith("tank.") && machine.water !== "tank") return false;
  if (needs && machine.water === "tank") return false;
  if ((needs === "tap" && !machine.tapInReach) || (needs === "move" && !person.movesMachine)) return false;
  const hook = hooks[look];
  const truth = hook?.truth(scene, own);
  if (!hook || !truth || said(scene, look, hook.way, truth, own) !== wrong) return false;
  if (truth === wrong) deeds[then]?.(scene.state, scene);
  return true;
}

/** 'Change the filter if it is older than six months.' */
function changeFilter(scene: Scene): "bought" | false {
  const asked = {
    turn: "list",
    instrument: "filter-age",
    place: "freezer",
    at: "2026-03-03T09:00:00Z",
  } as const;
  const age = measure(scene, asked);
  if (typeof age === "string" || age.kind !== "filter-age" || age.fitted.by !== "month") return false;
  return age.fitted.month < "2025-09" ? "bought" : false;
}

function reset(scene: Scene): boolean {
  deeds["reset.restart:restarted"]?.(scene.state, scene);
  return true;
}
