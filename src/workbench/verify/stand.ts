import type { Note, TurnMeta } from "../../chart/index.ts";
import { foldGuard, type Guard, type Truth, truthOf } from "../../condition/index.ts";
import { type Prepared, type Preparation, stateAfter, statesIn } from "../../guide/index.ts";
import type { Edge } from "./graph.ts";

/** What one walk follows: some preparations, and at most one gate with them. `keepers`: causes that keep the tap closed. */
export type Watch = { things: readonly Preparation[]; gate: string | null; keepers: readonly string[] };

/**
 * A place of the chart with all that a walk follows. `leaks`: causes found that keep the tap closed. `confirmed`: what the
 * chart remembers of the gate; `really`: whether the same person has just confirmed it in full and nothing undid it.
 */
export type Stand = {
  leaf: string;
  prepared: Partial<Record<Preparation, string>>;
  leaks: readonly string[];
  confirmed: boolean;
  really: boolean;
};

/** An edge, and whether it is passable hangs on the stand. */
export type Way = Edge & { hangs: boolean };

/** The edges by their start, those left out that are passable in no stand. */
export function waysFor(edges: readonly Edge[], watch: Watch): Map<string, Way[]> {
  const nowhere: Stand = { leaf: "", prepared: {}, leaks: [], confirmed: false, really: false };
  const from = new Map<string, Way[]>();
  for (const edge of edges) {
    const guard = edge.way?.guard;
    const hangs = guard !== undefined && wordsIn(guard).some((word) => isFollowed(word, watch));
    if (!hangs && !isPassable({ ...edge, hangs: true }, nowhere, watch)) continue;
    const ways = from.get(edge.from);
    if (ways) ways.push({ ...edge, hangs });
    else from.set(edge.from, [{ ...edge, hangs }]);
  }
  return from;
}

const known = new WeakMap<Guard, Guard[]>();

/** The words of a guard, each with its parameters. */
function wordsIn(guard: Guard): Guard[] {
  const before = known.get(guard);
  if (before) return before;
  const flat = (parts: Guard[][]) => parts.flat();
  const words = foldGuard<Guard[]>(guard, { word: (word) => [word], all: flat, any: flat, not: (part) => part });
  known.set(guard, words);
  return words;
}

function isFollowed({ type, params }: Guard, { things, gate }: Watch): boolean {
  if (type === "found") return things.includes("water");
  if (type === "prepared") return things.includes(params.of as Preparation);
  const { leaves } = params as { leaves?: Prepared };
  return type === "fresh" && (params.gate === gate || statesIn(leaves).some(([one]) => things.includes(one)));
}

/** True unless what the edge's guard says of what is followed is false at the stand. */
export function isPassable({ way, hangs }: Way, stand: Stand, watch: Watch): boolean {
  return !hangs || !way?.guard || truthOf(way.guard, (word) => isSo(word, stand, watch)) !== false;
}

/** Where an edge leads, with all that it notes down. @param meta of the turn that it leaves */
export function afterStep({ to, event, way }: Edge, stand: Stand, watch: Watch, meta: TurnMeta | null): Stand {
  const note: Note = Object.assign({}, ...(way?.actions ?? []).map(({ params }) => params));
  const prepared = { ...stand.prepared };
  let undone = false;
  for (const [one, state] of statesIn(note.leaves)) {
    if (!watch.things.includes(one)) continue;
    const before = prepared[one] ?? null;
    const is = stateAfter(one, before, state);
    undone ||= is !== before;
    if (is) prepared[one] = is;
  }
  const isFull = meta?.gate === watch.gate && !meta?.short && event === "answered.ready";
  const confirms = watch.gate !== null && note.confirms === watch.gate;
  return {
    leaf: to,
    prepared,
    // Only the tap is kept closed by a leak.
    leaks: watch.things.includes("water") ? leaksAfter(stand.leaks, note, watch.keepers) : [],
    confirmed: confirms || (stand.confirmed && !note.returns && !undone),
    really: watch.gate !== null && (isFull || (stand.really && event !== "session-resumed" && !undone)),
  };
}

function leaksAfter(leaks: readonly string[], note: Note, keepers: readonly string[]): readonly string[] {
  const gone = [note.remedies, ...(note.again?.found ?? [])];
  const found = note.finds && keepers.includes(note.finds) ? [note.finds] : [];
  return [...new Set([...leaks.filter((one) => !gone.includes(one)), ...found])].sort();
}

/** Whether a word of a guard is so at a stand; null where that hangs on what the walk does not follow. */
function isSo({ type, params }: Guard, stand: Stand, { things, gate, keepers }: Watch): Truth {
  const { of, is, causes } = params as { of: Preparation; is: string[]; causes: string[] };
  const stateOf = (one: Preparation) => stand.prepared[one] ?? "as-found";
  if (type === "prepared") return things.includes(of) ? is.includes(stateOf(of)) : null;
  if (type === "fresh") {
    const fresh = params as { gate: string; leaves: Prepared };
    const watched = statesIn(fresh.leaves).filter(([one]) => things.includes(one));
    if (!watched.every(([one, state]) => stateOf(one) === state)) return false;
    return fresh.gate === gate ? stand.confirmed : null;
  }
  if (type === "led") return false;
  if (type !== "found") return null;
  if (causes.some((cause) => stand.leaks.includes(cause))) return true;
  return causes.every((cause) => keepers.includes(cause)) ? false : null;
}
