/**
 * What may have to be prepared for a step, with the words for its states: changed by us; to be put back, but could not
 * be; and put back. What nobody has changed yet has no state.
 */
export const preparations = {
  filter: { ours: "out", left: "left-out", back: "in" },
  panel: { ours: "off", left: "left-off", back: "on" },
  water: { ours: "closed", left: "left-closed", back: "open" },
  machine: { ours: "pulled-out", left: "left-out", back: "in-place" },
  plug: { ours: "out", left: "left-out", back: "in" },
  /** The control lock, which keeps a dispenser from starting. */
  lock: { ours: "on", left: "left-on", back: "off" },
  bin: { ours: "out", left: "left-out", back: "in" },
  /** `still`: switched off, or without power. That nothing in it moves or heats any more is asked by its gate. */
  "ice-maker": { ours: "still", left: "left-off", back: "on" },
} as const;

/** What people may have prepared by pulling the plug instead: whatever needs power needs these put back too. */
export const byPlugInstead: Prepared = { lock: "off", "ice-maker": "on" };

export type Preparation = keyof typeof preparations;

/** States of some preparations, such as a gate leaves or a turn needs. */
export type Prepared = { [One in Preparation]?: State<One> | undefined };
type State<One extends Preparation> = (typeof preparations)[One]["ours" | "left" | "back"];

/** All of them, in the order in which they are put back. */
export const everyPreparation = Object.keys(preparations) as Preparation[];

/** The pairs of what is said of some preparations. */
export function statesIn(prepared: Prepared | undefined): [one: Preparation, state: string][] {
  return Object.entries(prepared ?? {}) as [Preparation, string][];
}

/**
 * The state of a preparation after a step that leaves `state`; null where it is as nobody has changed it. What nobody
 * has changed can't be put back, and what is not changed any more can't be left so.
 */
export function stateAfter(one: Preparation, before: string | null, state: string): string | null {
  const { ours, left } = preparations[one];
  if (state === ours) return state;
  if (state === left) return before === ours || before === left ? state : before;
  return before && state;
}
