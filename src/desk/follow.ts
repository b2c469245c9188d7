import { journalIn } from "../cobrowse/client/index.ts";
import {
  type Guide,
  type Journal,
  parseJournal,
  ScenarioMissing,
  type Session,
  standingOf,
  takeOver,
} from "../session/index.ts";
import { greetedView, type Texts, type View, viewOf } from "../turn/index.ts";

/** A conversation as the householder's device has it: its journal, the session that it makes, and what is on their screen. */
export type Followed = { journal: Journal; session: Session; view: View };

/**
 * Follows what a room carries, through the door that every journal goes through. Null where it is no journal.
 * @param now RFC 3339
 * Rejects where a scenario does not come.
 */
export type Follow = (carried: readonly string[], now: string) => Promise<Followed | null>;

/** @param load makes a scenario ready */
export function createFollow(guide: Guide, texts: Texts, load: (scenario: string) => Promise<void>): Follow {
  return async (carried, now) => {
    const journal = parseJournal(journalIn(carried));
    if (!journal) return null;
    const { log, held } = standingOf(journal);
    // Their clock and ours may differ: times are held against the last one of their own.
    const last = log.events.at(-1)?.at ?? log.started;
    for (;;)
      try {
        const { session } = takeOver(guide, log, last);
        return { journal, session, view: greetedView(viewOf(session, texts, now, []), session, held, texts) };
      } catch (problem) {
        if (!(problem instanceof ScenarioMissing)) throw problem;
        await load(problem.scenario);
      }
  };
}
