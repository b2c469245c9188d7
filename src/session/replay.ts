import type { FlowSlice } from "../chart/index.ts";
import type { Guide } from "./guide.ts";
import { type Log, type LogEvent, leftIn } from "./log.ts";
import { passOlder } from "./older-log.ts";
import { isStopped, metaOf, type Recorded, record, type Session, startSession } from "./session.ts";
import { straightenTimes } from "./times.ts";

/**
 * Replays a log as far as this flow still takes it. A log keeps its own order of checks, as far as they are allowed:
 * advice changes with every edit of what the trade knows, and what was answered holds all the same.
 * @returns the session and how many events at the log's end no longer fitted
 * @throws ScenarioMissing where it leads to a scenario that has to be loaded first
 */
export function replay(guide: Guide, log: Log): { session: Session; dropped: number } {
  let session = startSession(guide, log.started, log.model, leftIn(log));
  let passed = false;
  let taken = 0;
  for (const event of log.events) {
    const later = log.events.slice(taken + 1);
    let next = recordToward(session, event, later);
    if (next.refusal) {
      const ahead = passOlder(session, event);
      if (!ahead) break;
      passed = true;
      // At a gate its own answer was taken; else the event is taken now that its turn has come.
      next =
        ahead.log === session.log ? recordToward(ahead, event, later) : { session: ahead, refusal: null };
    }
    if (next.refusal) break;
    session = next.session;
    taken++;
  }
  // Nobody stands behind a gate that they were never asked.
  if (passed && metaOf(session).gated)
    session = record(session, {
      type: "session-resumed",
      at: log.events[taken - 1]?.at ?? log.started,
    }).session;
  return { session, dropped: log.events.length - taken };
}

/** Takes an event and goes where the log went, as far as that is allowed; else where today's advice leads. */
function recordToward(session: Session, event: LogEvent, later: LogEvent[]): Recorded {
  const following = later.find((one) => "turn" in one || one.type === "trouble-returned");
  if (!following) return record(session, event);
  if (following.type === "trouble-returned") {
    // A part was named before it; whatever else came back later had ended, for that day.
    const advised = record(session, event);
    if (metaOf(advised.session).outcome === "part") return advised;
  }
  const check = "turn" in following ? checkOf(following.turn) : "later";
  const led = record(session, event, check);
  return checkOf(metaOf(led.session).turn) === check ? led : record(session, event);
}

const checkOf = (turn: string) => turn.split(".")[0] ?? "";

/**
 * Goes on with a log that something else has written (this tab before a reload, another tab, a file): its times are
 * held against `at`, and a danger among the events that no longer fit still stops.
 * @returns the session and how many events at the log's end no longer fitted
 */
export function takeOver(guide: Guide, log: Log, at: string): { session: Session; dropped: number } {
  const { flow } = guide;
  const { session, dropped } = replay(guide, straightenTimes(log, at, flow.limits["clock-slip"]?.value));
  const lost = dropped ? log.events.slice(-dropped) : [];
  const danger = lost.flatMap((event) => dangerIn(event, flow)).at(0);
  return { session: danger === undefined ? session : stopBy(session, danger, at), dropped };
}

/**
 * Comes back to a kept log at `at`: takes it over, ends a wait that is over, and where the person had left in the
 * middle of a hazardous step puts its gate in front of that very turn again.
 */
export function resume(guide: Guide, log: Log, at: string): { session: Session; dropped: number } {
  const { session, dropped } = takeOver(guide, log, at);
  return { session: settle(record(session, { type: "session-resumed", at }).session, at), dropped };
}

/** Stops the session for a danger, wherever it is; one that this flow does not know counts as 'not sure'. */
export function stopBy(session: Session, danger: string, at: string): Session {
  if (isStopped(session)) return session;
  const stop = (kind: string) => record(session, { type: "danger-reported", danger: kind, at });
  const known = stop(danger);
  return known.refusal ? stop("not-sure").session : known.session;
}

/** The session with its times held against a clock that was set back meanwhile: else a wait would be as much longer. */
export function holdTimes(session: Session, at: string): Session {
  const last = session.log.events.at(-1)?.at;
  if (last === undefined || Date.parse(last) <= Date.parse(at)) return session;
  const { session: held, dropped } = takeOver(session.guide, session.log, at);
  return dropped ? session : held;
}

function dangerIn(event: LogEvent, { dangers }: FlowSlice): string[] {
  if (event.type === "danger-reported") return [event.danger];
  return event.type === "answered" && dangers.includes(event.answer) ? [event.answer] : [];
}

/** Ends the current wait if its time has come by `at`; otherwise gives the session back as it is. */
export function settle(session: Session, at: string): Session {
  return record(session, { type: "wait-ended", at }).session;
}
