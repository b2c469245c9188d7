import type { Flow, Machine } from "../guide/index.ts";
import { isThere, type World, worldsOf } from "./worlds.ts";

/** A world of one cause in which people say a certain complaint; `chance` is P(world, complaint | cause). */
type Complained = readonly World[];

const known = new WeakMap<Machine, Map<string, Complained>>();

/** The worlds of a cause in which people make a complaint, with the quantities named besides. */
export function complainedWorlds(
  machine: Machine,
  cause: string,
  complaint: string,
  besides: readonly string[] = [],
): Complained {
  const cache = known.get(machine) ?? new Map<string, Complained>();
  known.set(machine, cache);
  const spoken = Object.values(machine.complaints).flatMap((one) => Object.keys(one));
  const extra = besides.filter((name) => !spoken.includes(name)).sort();
  const key = [cause, complaint, ...extra].join(" ");
  const before = cache.get(key);
  if (before) return before;
  const says = speakersOf(machine);
  const worlds = worldsOf(machine, cause, [...spoken, ...extra]).flatMap(({ states, chance }) => {
    const spokenFor = says({ states, chance })[complaint] ?? 0;
    return spokenFor ? [{ states, chance: chance * spokenFor }] : [];
  });
  cache.set(key, worlds);
  return worlds;
}

/** How likely each complaint is in a world: one of those that it gives reason for, or none. */
function speakersOf(machine: Machine): (world: World) => Record<string, number> {
  const reasons = Object.entries(machine.complaints).map(([complaint, quantities]) => ({
    complaint,
    states: Object.entries(quantities).flatMap(([quantity, chances]) =>
      Object.entries(chances).map(([state, chance]) => ({
        holds: isThere(machine, [{ [quantity]: [state] }]),
        chance,
      })),
    ),
  }));
  return (world) => {
    const weights = reasons.map(({ complaint, states }) => {
      const weight = states.reduce((sum, { holds, chance }) => sum + (holds(world) ? chance : 0), 0);
      return [complaint, Math.min(weight, 1)] as const;
    });
    const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
    return Object.fromEntries(weights.map(([complaint, weight]) => [complaint, weight / Math.max(total, 1)]));
  };
}

/** P(complaint | cause). */
export function chanceOfComplaint({ machine }: Flow, cause: string, complaint: string): number {
  return complainedWorlds(machine, cause, complaint).reduce((sum, { chance }) => sum + chance, 0);
}
