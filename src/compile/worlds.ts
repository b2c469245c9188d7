import type { Machine, Spread, States } from "../guide/index.ts";

/** One way a machine with a certain cause can be: the place of each quantity's state, and how likely that is. */
export type World = { states: Uint8Array; chance: number };

/** A machine made ready: quantities by place, upstream first. */
type Network = { names: string[]; quantities: Quantity[] };
type Quantity = { states: string[]; follows: { when: Test[]; is: [state: number, chance: number][] }[] };
type Test = { quantity: number; states: number[] };

const known = new WeakMap<Machine, Network>();

/**
 * Every way a machine can be while a cause is there, as far as the quantities named and all that they follow go. The
 * chances sum to 1. A cause acts on its quantities itself; every other follows those before it.
 * @param from worlds to go on from, in which the quantities `known`, and all that they follow, are settled
 * @throws Error for a quantity or a state that does not exist
 */
export function worldsOf(
  machine: Machine,
  cause: string,
  named: Iterable<string>,
  from: { worlds: readonly World[]; known: Iterable<string> } | null = null,
): readonly World[] {
  const network = networkOf(machine);
  const needed = upstreamOf(network, named);
  for (const place of upstreamOf(network, from?.known ?? [])) needed.delete(place);
  const does = machine.causes[cause]?.does ?? {};
  if (from && !needed.size) return from.worlds;
  let worlds: World[] = from
    ? from.worlds.map(({ states, chance }) => ({ states: states.slice(), chance }))
    : [{ states: new Uint8Array(network.names.length), chance: 1 }];
  for (const [place, { states, follows }] of network.quantities.entries()) {
    const name = network.names[place] ?? "";
    const own = does[name];
    if (!needed.has(place) || (!own && !follows.length)) continue;
    const acted = own && spreadOf(own, states, name);
    const next: World[] = [];
    for (const world of worlds) {
      const is = acted ?? follows.find(({ when }) => when.every((test) => passes(test, world)))?.is ?? [];
      for (const [state, share] of is.slice(1)) next.push(moved(world, place, state, share));
      const [first] = is;
      next.push(first ? settled(world, place, ...first) : world);
    }
    worlds = next;
  }
  return worlds;
}

/** True where one of the combinations of states is there. */
export function isThere(machine: Machine, any: readonly States[]): (world: World) => boolean {
  const tests = any.map((states) => testsOf(states, networkOf(machine)));
  return (world) => tests.some((each) => each.every((test) => passes(test, world)));
}

/** How likely one of the combinations of states is while a cause is there; "" for a sound machine. */
export function chanceOf(machine: Machine, cause: string, any: readonly States[]): number {
  const holds = isThere(machine, any);
  const worlds = worldsOf(
    machine,
    cause,
    any.flatMap((states) => Object.keys(states)),
  );
  return worlds.reduce((sum, world) => sum + (holds(world) ? world.chance : 0), 0);
}

const passes = ({ quantity, states }: Test, { states: are }: World) => states.includes(are[quantity] ?? 0);

function moved({ states, chance }: World, place: number, state: number, share: number): World {
  return settled({ states: states.slice(), chance }, place, state, share);
}

/** The last branch of a world needs no copy of it. */
function settled(world: World, place: number, state: number, share: number): World {
  world.states[place] = state;
  world.chance *= share;
  return world;
}

function networkOf(machine: Machine): Network {
  const before = known.get(machine);
  if (before) return before;
  const names = Object.keys(machine.quantities);
  const network: Network = { names, quantities: [] };
  for (const [name, { states, follows = [] }] of Object.entries(machine.quantities))
    network.quantities.push({
      states,
      follows: follows.map(({ when = {}, is }) => ({
        when: testsOf(when, network),
        is: spreadOf(is, states, name),
      })),
    });
  known.set(machine, network);
  return network;
}

function testsOf(when: States, { names, quantities }: Network): Test[] {
  return Object.entries(when).map(([name, states]) => {
    const quantity = names.indexOf(name);
    const known = quantities[quantity]?.states;
    if (!known) throw new Error(`No quantity "${name}" comes before what follows it`);
    return { quantity, states: states.map((state) => placeOf(state, known, name)) };
  });
}

function spreadOf(spread: Spread, states: string[], name: string): [number, number][] {
  const total = Object.values(spread).reduce((sum, one) => sum + one, 0);
  return Object.entries(spread).map(([state, share]) => [placeOf(state, states, name), share / total]);
}

function placeOf(state: string, states: string[], name: string): number {
  const place = states.indexOf(state);
  if (place < 0) throw new Error(`The quantity "${name}" has no state "${state}"`);
  return place;
}

/** The places of quantities and of all that they follow. */
function upstreamOf({ names, quantities }: Network, named: Iterable<string>): Set<number> {
  const found = new Set<number>();
  const open = [...named].map((name) => names.indexOf(name));
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    if (found.has(place)) continue;
    found.add(place);
    for (const { when } of quantities[place]?.follows ?? [])
      open.push(...when.map(({ quantity }) => quantity));
  }
  return found;
}
