import { createCharts } from "../compile/index.ts";
import { dangersOf, type Flow } from "../guide/index.ts";
import { type Log, type LogEvent, waterIn } from "./log.ts";
import { isStopped, metaOf, type Recorded, record, type Session, startSession } from "./session.ts";
import { straightenTimes } from "./times.ts";

/**
 * Replays a log as far as this flow still takes it. A log keeps its own order of checks, as far as they are allowed:
 * advice changes with every edit of what the trade knows, and what was answered holds all the same.
 * @returns the session and how many events at the log's end no longer fitted
 */
export function replay(
  flow: Flow,
  log: Log,
  charts = createCharts(flow),
): { session: Session; dropped: number } {
  let session = startSession(flow, log.started, log.model, charts, null, waterIn(log));
  for (const [at, event] of log.events.entries()) {
    const next = recordToward(session, event, log.events.slice(at + 1));
    if (next.refusal) return { session, dropped: log.events.length - at };
    session = next.session;
  }
  return { session, dropped: 0 };
}

/** Takes an event, and where today's advice leads elsewhere than the log went, goes where the log went. */
function recordToward(session: Session, event: LogEvent, later: LogEvent[]): Recorded {
  const advised = record(session, event);
  const following = later.find((one) => "turn" in one);
  if (advised.refusal || !following) return advised;
  const check = checkOf(following.turn);
  const leadsThere = (to: Recorded) => checkOf(metaOf(to.session).turn) === check;
  if (leadsThere(advised)) return advised;
  const led = record(session, event, check);
  return leadsThere(led) ? led : advised;
}

const checkOf = (turn: string) => turn.split(".")[0] ?? "";

/**
 * Goes on with a log that something else has written (this tab before a reload, another tab, a file): its times are
 * held against `at`, and a danger among the events that no longer fit still stops.
 * @returns the session and how many events at the log's end no longer fitted
 */
export function takeOver(
  flow: Flow,
  log: Log,
  at: string,
  charts = createCharts(flow),
): { session: Session; dropped: number } {
  const { session, dropped } = replay(flow, straightenTimes(log, at, slipOf(flow)), charts);
  const lost = dropped ? log.events.slice(-dropped) : [];
  const danger = lost.flatMap((event) => dangerIn(event, flow)).at(0);
  return { session: danger === undefined ? session : stopBy(session, danger, at), dropped };
}

/**
 * Comes back to a kept log at `at`: takes it over, ends a wait that is over, and where the person had left in the
 * middle of a hazardous step puts its gate in front of that very turn again.
 */
export function resume(
  flow: Flow,
  log: Log,
  at: string,
  charts = createCharts(flow),
): { session: Session; dropped: number } {
  const { session, dropped } = takeOver(flow, log, at, charts);
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
  const { session: held, dropped } = takeOver(session.flow, session.log, at, session.charts);
  return dropped ? session : held;
}

const slipOf = ({ limits }: Flow) => limits["clock-slip"]?.value ?? 0;

function dangerIn(event: LogEvent, flow: Flow): string[] {
  if (event.type === "danger-reported") return [event.danger];
  return event.type === "answered" && dangersOf(flow).includes(event.answer) ? [event.answer] : [];
}

/** Ends the current wait if its time has come by `at`; otherwise gives the session back as it is. */
export function settle(session: Session, at: string): Session {
  return record(session, { type: "wait-ended", at }).session;
}
