import { initialTransition, type SnapshotFrom, transition } from "xstate";
import type { ChartContext, ChartEvent, TurnMeta } from "../chart/index.ts";
import { type Chart, type Charts, createCharts } from "../compile/index.ts";
import { dangersOf, type Flow } from "../guide/index.ts";
import { createLog, type Log, type LogEvent } from "./log.ts";
import { straightenTimes } from "./times.ts";

/** One person's way through the chart. Immutable: every function here gives a new one. */
export type Session = {
  flow: Flow;
  charts: Charts;
  chart: Chart;
  log: Log;
  snapshot: SnapshotFrom<Chart>;
};

/** Why an event was refused. The session stays as it was. */
export type Refusal = "other-turn" | "unknown-answer" | "items-missing" | "unreadable" | "not-now";

export type Recorded = { session: Session; refusal: Refusal | null };

/** A session before its first answer. */
export function startSession(
  flow: Flow,
  started: string,
  model: string | null = null,
  charts = createCharts(flow),
  scenario: string | null = null,
  water?: Log["water"],
): Session {
  const chart = charts(scenario);
  const [snapshot] = initialTransition(chart, { model, water } as never);
  const log = { ...createLog(flow.version, started, model), ...(water && { water }) };
  return { flow, charts, chart, log, snapshot };
}

/** The tap as a session leaves it to the one that follows, where we had it closed: no new start opens it. */
export function waterLeftBy(session: Session): Log["water"] {
  const { water } = memoryOf(session);
  return water === "closed-by-us" || water === "left-closed" ? water : undefined;
}

/** What the chart remembers. */
export function memoryOf(session: Session): ChartContext {
  return session.snapshot.context as ChartContext;
}

/** The turn the chart is waiting at. */
export function metaOf(session: Session): TurnMeta {
  const found = Object.values(session.snapshot.getMeta() as Record<string, TurnMeta>).find(
    (meta) => meta?.turn,
  );
  if (!found) throw new Error(`No turn at ${JSON.stringify(session.snapshot.value)}`);
  return found;
}

/** True once a danger was reported: nothing leads on from there but a new start. */
export function isStopped(session: Session): boolean {
  return metaOf(session).outcome === "stopped";
}

/**
 * Takes one event, or refuses it and changes nothing. Live use and replay both come through here.
 * @param toward the check that a replayed log goes on with, in place of today's advice
 */
export function record(session: Session, event: LogEvent, toward?: string): Recorded {
  const refuse = (refusal: Refusal): Recorded => ({ session, refusal });
  const meta = metaOf(session);
  // A second tap on the same button arrives when the turn has already moved on.
  if ("turn" in event && event.turn !== meta.turn) return refuse("other-turn");
  if (event.type === "answered" && meta.gate && event.answer === "ready") {
    const items = session.flow.gates[meta.gate]?.items ?? [];
    if (!items.every((item) => event.items?.includes(item))) return refuse("items-missing");
  }
  const sent = chartEvent(event);
  if (!session.snapshot.can(sent as never)) {
    if (event.type === "answered") return refuse("unknown-answer");
    return refuse(event.type === "measured" ? "unreadable" : "not-now");
  }
  const [snapshot] = transition(session.chart, session.snapshot, {
    ...sent,
    ...(toward ? { toward } : {}),
  } as never);
  const log = { ...session.log, events: [...session.log.events, event] };
  // A scenario's own chart is built when the opening has led there; what was answered before leads there again.
  if (typeof snapshot.value === "string" && session.flow.scenarios[snapshot.value]) {
    const { flow, charts } = session;
    const fresh = startSession(flow, log.started, log.model, charts, snapshot.value, log.water);
    const led = log.events.reduce(
      (before, one) => record(before, one, one === event ? toward : undefined).session,
      fresh,
    );
    return { session: led, refusal: null };
  }
  return { session: { ...session, log, snapshot }, refusal: null };
}

function chartEvent(event: LogEvent): ChartEvent {
  const { at } = event;
  if (event.type === "answered") return { type: `answered.${event.answer}`, at };
  if (event.type === "measured") return { type: "measured", at, reading: event.reading };
  if (event.type === "model-given") return { type: "model-given", at, code: event.code };
  if (event.type === "danger-reported") return { type: `danger-reported.${event.danger}`, at };
  return { type: event.type, at };
}

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
  let session = startSession(flow, log.started, log.model, charts, null, log.water);
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

/**
 * Goes back to the turn that event `index` of the log answered; that answer and all later ones are dropped. A
 * hazardous turn is met behind its gate. A session that is stopped stays as it is.
 */
export function changeAnswer(session: Session, index: number, at: string): Session {
  if (isStopped(session)) return session;
  const { water: _, ...whole } = session.log;
  // No change of an answer opens a tap.
  const water = waterLeftBy(session);
  const log = { ...whole, ...(water && { water }), events: whole.events.slice(0, index) };
  const { session: back } = replay(session.flow, log, session.charts);
  return record(back, { type: "session-resumed", at }).session;
}
