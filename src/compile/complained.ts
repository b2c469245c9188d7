import type { Machine } from "../guide/index.ts";
import { isThere, type World, worldsOf } from "./worlds.ts";

/** What is worked out once for a machine. */
type Told = {
  /** The quantities that complaints speak of. */
  spoken: string[];
  says: (world: World) => Record<string, number>;
  /** Worlds in which a complaint is made, by cause, complaint and the quantities named besides. */
  worlds: Map<string, readonly World[]>;
  /** P(complaint | cause), by cause and complaint. */
  chances: Map<string, number>;
};

const known = new WeakMap<Machine, Told>();

/**
 * The worlds of a cause in which people make a complaint, with the quantities named besides; the chance of each is
 * P(world, complaint | cause).
 */
export function complainedWorlds(
  machine: Machine,
  cause: string,
  complaint: string,
  besides: readonly string[] = [],
): readonly World[] {
  const { spoken, says, worlds } = toldOf(machine);
  const extra = besides.filter((name) => !spoken.includes(name));
  const key = [cause, complaint, ...extra].join(" ");
  const before = worlds.get(key);
  if (before) return before;
  const found = extra.length
    ? // What only follows says nothing of the complaint.
      worldsOf(machine, cause, extra, { worlds: complainedWorlds(machine, cause, complaint), known: spoken })
    : worldsOf(machine, cause, spoken).flatMap(({ states, chance }) => {
        const said = says({ states, chance })[complaint] ?? 0;
        return said ? [{ states, chance: chance * said }] : [];
      });
  worlds.set(key, found);
  return found;
}

/** P(complaint | cause). */
export function chanceOfComplaint(machine: Machine, cause: string, complaint: string): number {
  const { chances } = toldOf(machine);
  const key = `${cause} ${complaint}`;
  const before = chances.get(key);
  if (before !== undefined) return before;
  const chance = complainedWorlds(machine, cause, complaint).reduce((sum, world) => sum + world.chance, 0);
  chances.set(key, chance);
  return chance;
}

function toldOf(machine: Machine): Told {
  const before = known.get(machine);
  if (before) return before;
  const spoken = [...new Set(Object.values(machine.complaints).flatMap((one) => Object.keys(one)))];
  const told = { spoken, says: speakersOf(machine), worlds: new Map(), chances: new Map() };
  known.set(machine, told);
  return told;
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
