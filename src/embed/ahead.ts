import {
  type Answered,
  type LogEvent,
  metaOf,
  recording,
  type Session,
  type Steps,
  sameLater,
} from "../session/index.ts";
import { handOn, makeReady, type Texts, type Turn } from "../turn/index.ts";
import { isMissing } from "./missing.ts";

/** After so many milliseconds no further step is begun in one task: a single one takes a slow phone 10 to 30. */
const SLICE_MS = 8;

/** Does work when nothing else is to be done. */
export type WhenIdle = (work: () => void) => void;

/** What the answers on screen lead to, worked out before one is given. */
export type Ahead = {
  /** Begins with the answers of what is on screen now, and drops all that was worked out for another session. */
  look(session: Session, turn: Turn | null): void;
  /** Goes on with what needed a scenario that was not there. */
  goOn(): void;
  /** Where an event leads, as `record` would say; null where that has not been worked out. */
  led(session: Session, event: LogEvent): Session | null;
};

type Known = { answered: Answered; session: Session };

/** @param whenIdle without it nothing is worked out */
export function createAhead(texts: Texts, now: () => string, whenIdle?: WhenIdle): Ahead {
  let shown: Session | null = null;
  let events: ((at: string) => Answered)[] = [];
  let known = new Map<string, Known>();
  let rounds = 0;

  function* steps(session: Session): Steps<void> {
    for (const eventAt of events) {
      const answered = eventAt(now());
      if (known.has(answered.answer)) continue;
      try {
        const led = yield* recording(session, answered);
        if (led.refusal) continue;
        yield;
        makeReady(led.session, texts, answered.at);
        known.set(answered.answer, { answered, session: led.session });
        yield;
      } catch (problem) {
        if (!isMissing(problem)) throw problem;
      }
    }
  }

  function goOn(): void {
    if (!shown || !whenIdle) return;
    const round = ++rounds;
    const work = steps(shown);
    const slice = () => {
      const end = performance.now() + SLICE_MS;
      while (round === rounds) {
        if (work.next().done) return;
        if (performance.now() >= end) return whenIdle(slice);
      }
    };
    whenIdle(slice);
  }

  return {
    look(session, turn) {
      if (session === shown) return;
      shown = session;
      known = new Map();
      // Another screen stands in the session's place while it is asked which machine this is about.
      events = turn && turn.turn === metaOf(session).turn ? eventsOf(turn) : [];
      goOn();
    },
    goOn,
    led(session, event) {
      const before = event.type === "answered" && session === shown && known.get(event.answer);
      if (!before) return null;
      const led = sameLater(session, before.answered, before.session, event);
      if (led) handOn(before.session, led);
      return led;
    },
  };
}

/** All answers of a turn; a gate is confirmed as a whole. */
function eventsOf({ turn, answers, gate }: Turn): ((at: string) => Answered)[] {
  return answers.map(({ id: answer }) => (at) => ({
    type: "answered",
    turn,
    answer,
    ...(gate && answer === "ready" && { items: gate.items.map(({ id }) => id) }),
    at,
  }));
}
