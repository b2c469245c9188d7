import { type LogEvent, metaOf, record, type Session } from "../session/index.ts";

/** A check that somebody would like to come next. */
export type Wish = {
  want(check: string): void;
  /** Where an event leads if it leads to that check; null where the chart does not go there now, or nothing is wished. */
  led(session: Session, event: LogEvent): Session | null;
  /** Forgets what has come, or can't come any more. */
  look(session: Session): void;
};

/**
 * Keeps a wish beside a session, in none of its entries. It takes the place of advice alone: the chart has its say as ever,
 * and a gate stands before what is behind one.
 */
export function createWish(): Wish {
  let check: string | null = null;
  const isThere = (session: Session) => metaOf(session).turn.startsWith(`${check}.`);
  return {
    want: (next) => {
      check = next;
    },
    led(session, event) {
      if (check === null || isThere(session)) return null;
      const { session: next, refusal } = record(session, event, check);
      const { kind, outcome } = metaOf(next);
      return refusal || outcome || kind === "model" || !isThere(next) ? null : next;
    },
    look(session) {
      if (isThere(session) || metaOf(session).outcome || !session.log.events[0]) check = null;
    },
  };
}
