import type { Note, Transition, TurnMeta } from "../../chart/index.ts";
import { foldGuard, type Guard, type Truth, truthOf } from "../../condition/index.ts";
import { type Preparation, type Prepared, stateAfter, statesIn } from "../../guide/index.ts";
import { emergency } from "./exits.ts";
import type { Edge } from "./graph.ts";

/**
 * What one walk follows: a preparation, or a gate's confirmation and whether all that it `leaves` is so still. `keepers`:
 * causes that keep the tap closed.
 */
export type Watch = {
  one: Preparation | null;
  gate: string | null;
  leaves: Prepared;
  keepers: readonly string[];
};

/**
 * All that a walk follows, at a place of the chart. `scenario`: the one that the search goes through, at an ending too.
 * `state`: of the preparation, null as it was found. `leaks`: causes found that keep the tap closed. `confirmed`: what
 * the chart remembers of the gate; `really`: whether the same person has just confirmed it in full and nothing undid it.
 */
export type Stand = {
  scenario: string | null;
  state: string | null;
  leaks: readonly string[];
  confirmed: boolean;
  really: boolean;
};

/** Before anything was answered. */
export const atFirst: Stand = { scenario: null, state: null, leaks: [], confirmed: false, really: false };

/** Makes of stands that are the same the same one: a walk comes to few different ones, and asks for each very often. */
export function createStands(): (stand: Stand) => Stand {
  const known = new Map<string, Stand>();
  const first = new Set<Stand>();
  return (stand) => {
    if (first.has(stand)) return stand;
    const { scenario, state, leaks, confirmed, really } = stand;
    const key = `${scenario} ${state} ${leaks} ${confirmed} ${really}`;
    const before = known.get(key);
    if (before) return before;
    known.set(key, stand);
    first.add(stand);
    return stand;
  };
}

/** An edge, and whether it is passable hangs on the stand. */
export type Way = Edge & { hangs: boolean };

/** The edges, but of several that lead to the same place, change nothing that any walk follows and hang on nothing one. */
export function withoutTwins(edges: readonly Edge[]): Edge[] {
  const met = new Set<string>();
  return edges.filter(({ from, to, event, way }) => {
    if (way?.guard || (way && noteOf(way) !== none) || /ready|resumed/.test(event)) return true;
    const key = `${from} ${to} ${emergency.test(event)}`;
    return !met.has(key) && met.add(key);
  });
}

/** The edges by their start, those left out that are passable in no stand. */
export function waysFor(edges: readonly Edge[], watch: Watch): Map<string, Way[]> {
  const from = new Map<string, Way[]>();
  for (const edge of edges) {
    const guard = edge.way?.guard;
    const hangs = guard !== undefined && wordsIn(guard).some((word) => isFollowed(word, watch));
    if (!hangs && !isPassable({ ...edge, hangs: true }, atFirst, watch)) continue;
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
  const words = foldGuard<Guard[]>(guard, {
    word: (word) => [word],
    all: flat,
    any: flat,
    not: (part) => part,
  });
  known.set(guard, words);
  return words;
}

function isFollowed({ type, params }: Guard, { one, gate }: Watch): boolean {
  if (type === "found") return one === "water";
  if (type === "prepared") return params.of === one;
  const { leaves = {} } = params as { leaves?: Prepared };
  return type === "fresh" && (params.gate === gate || (one !== null && one in leaves));
}

/** True unless what the edge's guard says of what is followed is false at the stand. */
export function isPassable({ way, hangs }: Way, stand: Stand, watch: Watch): boolean {
  return !hangs || !way?.guard || truthOf(way.guard, (word) => isSo(word, stand, watch)) !== false;
}

/** The stand after an edge, with all that it notes down: the very same where nothing changes. @param meta of the turn that it leaves */
export function afterStep({ event, way }: Edge, stand: Stand, watch: Watch, meta: TurnMeta | null): Stand {
  const note = way ? noteOf(way) : none;
  // Most answers change nothing that is followed.
  if (note === none) return stand.really && event === "session-resumed" ? { ...stand, really: false } : stand;
  const left = watch.one && note.leaves?.[watch.one];
  const undone = statesIn(watch.leaves).some(([one, state]) => (note.leaves?.[one] ?? state) !== state);
  const isFull = meta?.gate === watch.gate && !meta?.short && event === "answered.ready";
  const confirms = note.confirms === watch.gate;
  return {
    scenario: stand.scenario,
    state: watch.one && left ? stateAfter(watch.one, stand.state, left) : stand.state,
    // Only the tap is kept closed by a leak.
    leaks: watch.one === "water" ? leaksAfter(stand.leaks, note, watch.keepers) : [],
    confirmed: watch.gate !== null && (confirms || (stand.confirmed && !note.returns && !undone)),
    really: watch.gate !== null && (isFull || (stand.really && event !== "session-resumed" && !undone)),
  };
}

const none: Note = {};
const notes = new WeakMap<Transition, Note>();

/** What a way notes down, as far as a walk follows it. */
function noteOf(way: Transition): Note {
  const before = notes.get(way);
  if (before) return before;
  const all: Note = Object.assign({}, ...(way.actions ?? []).map(({ params }) => params));
  const { leaves, confirms, returns, finds, remedies, again } = all;
  const note = leaves || confirms || returns || finds || remedies || again ? all : none;
  notes.set(way, note);
  return note;
}

function leaksAfter(leaks: readonly string[], note: Note, keepers: readonly string[]): readonly string[] {
  const gone = [note.remedies, ...(note.again?.found ?? [])];
  const found = note.finds && keepers.includes(note.finds) ? [note.finds] : [];
  return [...new Set([...leaks.filter((one) => !gone.includes(one)), ...found])].sort();
}

/** Whether a word of a guard is so at a stand; null where that hangs on what the walk does not follow. */
function isSo({ type, params }: Guard, stand: Stand, { one, gate, keepers }: Watch): Truth {
  const { of, is, causes } = params as { of: Preparation; is: string[]; causes: string[] };
  if (type === "prepared") return of === one ? is.includes(stand.state ?? "as-found") : null;
  if (type === "fresh") {
    const { leaves, gate: asked } = params as { gate: string; leaves: Prepared };
    if (one && one in leaves && leaves[one] !== stand.state) return false;
    return asked === gate ? stand.confirmed : null;
  }
  if (type === "led") return false;
  if (type !== "found") return null;
  if (causes.some((cause) => stand.leaks.includes(cause))) return true;
  return causes.every((cause) => keepers.includes(cause)) ? false : null;
}
