import type { Chance } from "../chance.ts";
import type { Machine } from "../machine.ts";
import type { State } from "../state.ts";

export type Changed = "nothing" | "new-filter" | "new" | "moved" | "power-cut" | "holiday";

export type Trade =
  | "appliance-engineer"
  | "refrigeration-engineer"
  | "plumber"
  | "water-supplier"
  | "shop"
  | "electrician";

/** What somebody must be able to do to put it right: reach the tap, move the machine, take a panel off. */
export type Needs = "tap" | "move" | "panel" | "nothing";

export type Fault = {
  id: string;
  /** How common it is among a thousand homes whose machine can have it, with nothing changed lately. */
  share: number;
  /** Why that share: a source, or judgement with its reason. */
  reason: string;
  /** Times as common after a change. */
  after?: Partial<Record<Changed, number>>;
  on?: (machine: Machine) => boolean;
  /** Disturbs the state. */
  break(state: State, chance: Chance, machine: Machine): void;
  isThere(state: State): boolean;
  /** Parts that put it right. */
  parts?: string[];
  /** Whoever is rightly called, where the home itself can't or must not. */
  trades?: Trade[];
  /** The home can put it right, if its people can do that; without it, calling somebody is never needless. */
  self?: Needs;
  /** Ids of the product's causes that name this fault truly. Not its shares or words. */
  names: string[];
};
