import { compact, type Journal, standingOf } from "../../session/index.ts";
import { fits } from "../protocol/index.ts";

/** One message of the journal's: where it begins, entries that follow, or both. A new beginning ends what was before it. */
type Part = { begin?: Omit<Journal, "entries">; entries: Journal["entries"] };

/**
 * What has to be carried so that whoever has these bodies has the journal: nothing, the entries that are new, or the
 * whole, where it was made anew. Where an entry is too long for one message (such as one that takes back hundreds), the
 * same is carried as it is in force.
 * @param carried bodies that were sent or wait to be
 */
export function bodiesFor(journal: Journal, carried: readonly string[]): string[] {
  const { entries, ...begin } = carriable(journal);
  const { entries: known, ...begun } = (journalIn(carried) ?? { entries: [] }) as Journal;
  const there = JSON.stringify([begun, known]);
  const isBegun = there === JSON.stringify([begin, entries.slice(0, known.length)]);
  return isBegun ? packed(entries.slice(known.length), null) : packed(entries, begin);
}

function carriable(journal: Journal): Journal {
  const isCarried = (entry: Journal["entries"][number]) =>
    fits("entry", JSON.stringify({ entries: [entry] }));
  if (journal.entries.every(isCarried)) return journal;
  const { journal: inForce } = compact(standingOf(journal));
  return { ...inForce, entries: inForce.entries.filter(isCarried) };
}

/** As few messages as hold these. */
function packed(entries: Journal["entries"], begin: Part["begin"] | null): string[] {
  const bodies: string[] = [];
  let part: Part | null = begin ? { begin, entries: [] } : null;
  for (const entry of entries) {
    const longer: Part = { ...part, entries: [...(part?.entries ?? []), entry] };
    if (part && !fits("entry", JSON.stringify(longer))) {
      bodies.push(JSON.stringify(part));
      part = { entries: [entry] };
    } else part = longer;
  }
  return part ? [...bodies, JSON.stringify(part)] : bodies;
}

/**
 * The journal that bodies carry, not yet checked: whoever shows it takes it through the door that all journals go
 * through. Null where there is none; a body that nobody can read is passed over.
 */
export function journalIn(bodies: readonly string[]): unknown {
  let journal: { entries: unknown[] } | null = null;
  for (const body of bodies) {
    try {
      const { begin, entries } = JSON.parse(body) as Partial<Part>;
      if (begin) journal = { ...begin, entries: [] };
      journal?.entries.push(...(entries as unknown[]));
    } catch {}
  }
  return journal;
}
