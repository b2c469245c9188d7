import * as z from "zod/mini";
import { bounds, type Journal } from "../session/index.ts";

/** What is kept in one tab of turns that are half done, at most; all of it judgement. */
export const draftBounds = {
  /** A turn and the two gates before it. */
  turns: 3,
  /** What is entered at one turn: the lines of a gate, the fields and choices of a form. */
  values: 60,
  /** Characters in all. Far more than these hold: anything longer was not written here. */
  characters: 20_000,
} as const;

const text = (most: number) => z.string().check(z.maxLength(most));

/** What was entered at a turn when its journal had so many entries. */
export const shape = z
  .array(
    z.object({
      started: text(bounds.time),
      entries: z.number().check(z.minimum(0), z.maximum(bounds.entries)),
      turn: text(bounds.turn),
      // A name and a text each. A field holds one character more than is read.
      values: z
        .array(z.array(text(bounds.ownWords + 1)).check(z.maxLength(2)))
        .check(z.maxLength(draftBounds.values)),
    }),
  )
  .check(z.maxLength(draftBounds.turns));

type Draft = z.infer<typeof shape>[number];

type Around = {
  key: string;
  journal(): Journal;
  /** The storage of one tab. */
  place(): Storage;
};

/**
 * What was entered and not answered yet, of one session in one tab: a phone may close a page for its camera. Nothing here
 * throws: where the storage is denied, full or holds anything else, nothing comes back.
 */
export function createDrafts({ key, journal, place }: Around) {
  let drafts: Draft[] = [];
  try {
    const kept = place().getItem(key) ?? "[]";
    if (kept.length <= draftBounds.characters) drafts = shape.parse(JSON.parse(kept));
  } catch {
    // Denied, or not ours.
  }

  function write(next: Draft[]): void {
    drafts = next;
    try {
      if (drafts[0]) place().setItem(key, JSON.stringify(drafts));
      else place().removeItem(key);
    } catch {
      // Denied or full: it lasts as long as the page.
    }
  }

  /** Forgets what its turn is through with. */
  function look(): void {
    const fitting = drafts.filter((draft) => isStillOpen(draft, journal()));
    if (fitting.length < drafts.length) write(fitting);
  }

  const of = (turn: string): Record<string, string> =>
    Object.fromEntries(drafts.find((draft) => draft.turn === turn)?.values ?? []);

  return {
    look,
    /** What was entered at a turn, by name. */
    read(turn: string): Record<string, string> {
      look();
      return of(turn);
    },
    keep(turn: string, name: string, entered: string): void {
      look();
      const { started, entries } = journal();
      const values = Object.entries({ ...of(turn), [name]: entered });
      const others = drafts.filter((draft) => draft.turn !== turn);
      const draft = { started, entries: entries.length, turn, values };
      write([...others, draft].slice(-draftBounds.turns));
    },
  };
}

/**
 * Whether nothing was said since but what leads back to the turn after an interruption: its check's gates, and what has
 * to be done again before it.
 */
function isStillOpen({ started, entries, turn }: Draft, journal: Journal): boolean {
  const checkOf = (id: string) => id.split(".")[0];
  return (
    started === journal.started &&
    entries <= journal.entries.length &&
    journal.entries
      .slice(entries)
      .every(
        ({ event }, place) =>
          event.type === "session-resumed" ||
          (place > 0 &&
            event.type === "answered" &&
            event.turn !== turn &&
            checkOf(event.turn) === checkOf(turn)),
      )
  );
}
