import type { Chance } from "./chance.ts";
import type { Home, Person } from "./home.ts";
import type { Machine } from "./machine.ts";
import type { Prepared } from "./prepare.ts";
import type { State } from "./state.ts";

/** A home while it is asked: what is true now, and what its people make of it. */
export type Scene = {
  home: Home;
  machine: Machine;
  state: State;
  person: Person;
  prepared: Prepared;
  perfect: boolean;
  /** Minutes of the visit. */
  now: number;
  /** Same spot, same slip: what was misread, by turn. */
  slipped: Map<string, string>;
  /** A number of these people's own for one spot; the same whenever it is asked. */
  trait(spot: string): Chance;
  /** New at every asking. */
  chance: Chance;
};

/** How an answer comes about, which is how it goes wrong. */
export type Way = "look" | "listen" | "feel" | "recall" | "do" | "result" | "plain";

/** What a person would truly say among a turn's `own` answers; null where they can't do what is asked. */
export type Hook = { way: Way; truth: (scene: Scene, own: readonly string[]) => string | null };

/** What an answer changes in the kitchen: the person has done what the turn said. */
export type Deed = (state: State, scene: Scene) => void;

export type Hooks = Record<string, Hook>;
export type Deeds = Record<string, Deed>;

const by =
  (way: Way) =>
  (truth: Hook["truth"]): Hook => ({ way, truth });
export const look = by("look");
export const listen = by("listen");
export const feel = by("feel");
export const recall = by("recall");
/** What came of something that they did. */
export const done = by("do");
/** Whether what they complained of is gone: they know what they wait for. */
export const result = by("result");
/** What nobody gets wrong. */
export const plain = by("plain");
