import type { Entry, Journal } from "./journal-shape.ts";

/** Told of a journal each time something was appended here; `added` may be empty where only what lies beside it is new. */
export type Listener = (journal: Journal, added: Entry[]) => void;

/** One journal as whoever stores it, carries it elsewhere or learns from it follows it. */
export type Feed = {
  /** Hands on what was appended; entries that the one before has are not told again. */
  put(journal: Journal): void;
  /** Takes a journal that a listener knows already, such as what another tab has stored: nobody is told. */
  take(journal: Journal): void;
  /** @returns ends it */
  subscribe(listener: Listener): () => void;
};

/** A feed that begins with a journal. */
export function createFeed(first: Journal): Feed {
  let known = new Set<string>();
  const listeners = new Set<Listener>();
  const take = ({ entries }: Journal) => {
    known = new Set(entries.map(({ id }) => id));
  };
  take(first);
  return {
    take,
    put: (journal) => {
      const added = journal.entries.filter(({ id }) => !known.has(id));
      take(journal);
      for (const listener of listeners) listener(journal, added);
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}
