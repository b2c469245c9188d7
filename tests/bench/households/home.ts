import { disturbance, luck, pick } from "./chance.ts";
import type { Scene } from "./scene.ts";

/**
 * A simulated home: what is really wrong, hidden from every policy, and what its people would answer. All shares
 * below are our judgement; they are meant to be unkind.
 */
export type Home = { scene: Scene; seed: number; faults: string[] };

/** Two things wrong at once. */
const doubles = 0.1;
/** A question passed over with 'not sure' or 'can't', by how hard the check is. */
const skips = { easy: 0.03, hard: 0.1, rareTool: 0.3 };
/** Any answer at all instead of what is there to see. */
const misreads = 0.01;
/** The luck of a second look is the luck of the first: the same jug, the same eyes. */
const sameLuck = 0.5;
/** Something put right that was wrong, and not well enough. */
const botches = 0.02;

const hardAccess = ["pulled-out", "back-panel"];
const rareTools = ["bypass-plug"];

/** A home with one or two faults, drawn from the scenario's priors, each of them wrong by up to a factor of 3. */
export function createHome(scene: Scene, seed: number): Home {
  const weights = scene.model.priors.map((prior, cause) => prior * disturbance(seed, "prior", cause));
  const first = pick(weights, luck(seed, "first"));
  const faults = [first];
  if (luck(seed, "double") < doubles) {
    weights[first] = 0;
    faults.push(pick(weights, luck(seed, "second")));
  }
  return { scene, seed, faults: faults.map((cause) => scene.model.causes[cause]?.id ?? "") };
}

/** True where the people of this home can do this check and make something of it. */
export function canAnswer({ scene, seed }: Home, check: string, look = 1): boolean {
  const rule = scene.flow.checks[check];
  const rare = rule?.tools.some((tool) => rareTools.includes(tool));
  const share = rare ? skips.rareTool : hardAccess.includes(rule?.access ?? "") ? skips.hard : skips.easy;
  return luck(seed, "skip", nameOf(seed, check, look)) >= share;
}

/** The outcome that this home's people report of a check while `present` is wrong, by its place. */
export function observe({ scene, seed }: Home, check: string, present: readonly string[], look = 1): number {
  const place = scene.world.checkAt.get(check) ?? -1;
  const rule = scene.world.checks[place];
  if (!rule?.outcomes.length) return -1;
  const usual = rule.outcomes.map(({ chances }) => median(chances));
  let weights = usual;
  for (const fault of present) {
    const cause = scene.world.causeAt.get(fault) ?? -1;
    // The square root: the odds between two outcomes are then off by up to 3, as those between two causes are.
    // What sets this fault apart from the rest comes on top of what the other fault does.
    weights = weights.map(
      (weight, at) =>
        weight *
        (((rule.outcomes[at]?.chances[cause] ?? 0) * Math.sqrt(disturbance(seed, "says", check, fault, at))) /
          (usual[at] ?? 1)),
    );
  }
  const name = nameOf(seed, check, look);
  if (luck(seed, "misread", name) < misreads)
    return Math.floor(luck(seed, "instead", name) * rule.outcomes.length);
  const group = scene.world.checks[rule.group]?.id ?? check;
  const key = luck(seed, "same", name) < sameLuck ? group : name;
  return pick(weights, luck(seed, "shows", key));
}

/** True where a fault that is really there is put right well. */
export function mends({ seed }: Home, fault: string): boolean {
  return luck(seed, "mends", fault) >= botches;
}

function median(values: Float64Array): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** The name under which a look draws its luck: half of all second looks are the first one over again. */
function nameOf(seed: number, check: string, look: number): string {
  return look > 1 && luck(seed, "fresh", check) >= sameLuck ? `${check} again` : check;
}
