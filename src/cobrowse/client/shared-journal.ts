import { compact, type Journal, standingOf } from "../../session/index.ts";
import { fits } from "../protocol/index.ts";

/** One message of the journal's: where it begins, entries that follow, or both. A new beginning ends what was before it. */
type Part = { begin?: Omit<Journal, "entries">; entries: Journal["entries"] };

/**
 * What has to be carried so that whoever has these bodies has the journal: nothing, the entries that are new, or the
 * whole, where it was made anew or an entry is too long for one message.
 * @param carried bodies that were sent or wait to be
 */
export function bodiesFor(journal: Journal, carried: readonly string[]): string[] {
  const has = journalIn(carried) as Journal | null;
  const ids = new Set(journal.entries.map(({ id }) => id));
  const isSame =
    has !== null &&
    has.started === journal.started &&
    has.model === journal.model &&
    has.entries.every(({ id }) => ids.has(id));
  const known = new Set(isSame ? has.entries.map(({ id }) => id) : []);
  const { entries, ...begin } = journal;
  const missing = entries.filter(({ id }) => !known.has(id));
  const bodies = isSame ? packed(missing, null) : packed(missing, begin);
  if (bodies) return bodies;
  const { entries: inForce, ...anew } = compact(standingOf(journal)).journal;
  return packed(inForce, anew) ?? [];
}

/** As few messages as hold these; null where one entry alone is too long. */
function packed(entries: Journal["entries"], begin: Part["begin"] | null): string[] | null {
  const bodies: string[] = [];
  let part: Part | null = begin && { begin, entries: [] };
  for (const entry of entries) {
    const longer: Part = { ...part, entries: [...(part?.entries ?? []), entry] };
    if (fits("entry", JSON.stringify(longer))) part = longer;
    else {
      if (part) bodies.push(JSON.stringify(part));
      part = { entries: [entry] };
      if (!fits("entry", JSON.stringify(part))) return null;
    }
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
      if (journal && Array.isArray(entries)) journal = { ...journal, entries: [...journal.entries, ...entries] };
    } catch {}
  }
  return journal;
}
