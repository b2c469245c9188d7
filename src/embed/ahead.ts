import {
  type Answered,
  finish,
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

/** One answer, at the instant at which work on it began, what is left of that work, and what it has come to. */
type Work = { answered: Answered; steps: Steps<Session | null>; led?: Session | null };

/**
 * @param whenIdle without it nothing is worked out
 * @param rehearse is given each turn that an answer leads to
 */
export function createAhead(
  texts: Texts,
  now: () => string,
  whenIdle?: WhenIdle,
  rehearse?: (turn: Turn) => void,
): Ahead {
  let shown: Session | null = null;
  let events: ((at: string) => Answered)[] = [];
  /** By answer. */
  let begun = new Map<string, Work>();
  let rounds = 0;

  function* stepsOf(session: Session, answered: Answered): Steps<Session | null> {
    try {
      const led = yield* recording(session, answered);
      if (led.refusal) return null;
      yield;
      const { turn } = makeReady(led.session, texts, answered.at);
      if (rehearse) {
        yield;
        rehearse(turn);
      }
      return led.session;
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
      begun.delete(answered.answer);
      return null;
    }
  }

  function* all(session: Session): Steps<void> {
    for (const eventAt of events) {
      const answered = eventAt(now());
      const { answer } = answered;
      const work = begun.get(answer) ?? { answered, steps: stepsOf(session, answered) };
      begun.set(answer, work);
      if (work.led === undefined) work.led = yield* work.steps;
      yield;
    }
  }

  function goOn(): void {
    if (!shown || !whenIdle) return;
    const round = ++rounds;
    const work = all(shown);
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
      begun = new Map();
      // Another screen stands in the session's place while it is asked which machine this is about.
      events = turn && turn.turn === metaOf(session).turn ? eventsOf(turn) : [];
      goOn();
    },
    goOn,
    led(session, event) {
      if (event.type !== "answered" || session !== shown) return null;
      const work = begun.get(event.answer);
      if (!work) return null;
      // What was begun is not begun again.
      if (work.led === undefined) work.led = finish(work.steps);
      const led = work.led && sameLater(session, work.answered, work.led, event);
      if (work.led && led) handOn(work.led, led);
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
