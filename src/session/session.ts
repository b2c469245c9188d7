import { initialTransition, type SnapshotFrom, transition } from "xstate";
import type { Adviser } from "../advice/index.ts";
import {
  type ChartContext,
  type ChartEvent,
  createMemory,
  type FlowSlice,
  type TurnMeta,
} from "../chart/index.ts";
import { adviceAfter, adviceAt } from "./advice.ts";
import type { Chart } from "./chart.ts";
import { type Guide, ScenarioMissing } from "./guide.ts";
import { createLog, type Log, type LogEvent } from "./log.ts";
import { straightenTimes } from "./times.ts";

/** One person's way through the opening's chart and then a scenario's. Immutable: every function here gives a new one. */
export type Session = {
  guide: Guide;
  /** What is read of flows/ where the session is. */
  flow: FlowSlice;
  chart: Chart;
  /** Null in the opening. */
  adviser: Adviser | null;
  log: Log;
  snapshot: SnapshotFrom<Chart>;
};

/** Why an event was refused. The session stays as it was. */
export type Refusal = "other-turn" | "unknown-answer" | "items-missing" | "unreadable" | "not-now";

export type Recorded = { session: Session; refusal: Refusal | null };

/** A session before its first answer. */
export function startSession(
  guide: Guide,
  started: string,
  model: string | null = null,
  water?: Log["water"],
): Session {
  const { flow, opening } = guide;
  const memory = createMemory(model, water);
  const [snapshot] = initialTransition(opening, { memory } as never);
  const log = { ...createLog(flow.version, started, model), ...(water && { water }) };
  return { guide, flow, chart: opening, adviser: null, log, snapshot };
}

/** The session in the chart of the scenario that its opening has led to, with the memory that it has. */
function enterScenario(session: Session, scenario: string, event: ChartEvent, toward?: string): Session {
  const loaded = session.guide.loaded.get(scenario);
  if (!loaded) throw new ScenarioMissing(scenario);
  const { flow, chart } = loaded;
  const memory = memoryOf(session);
  const adviser = session.guide.advisers(loaded, memory);
  const advice = adviceAt(adviser, memory, toward);
  const [snapshot] = initialTransition(chart, { memory, event: { ...event, advice } } as never);
  return { ...session, flow, chart, adviser, snapshot };
}

/** The few scenarios that the opening can still lead to; none where they are many, or it has led to one. */
export function scenariosAhead({ guide, adviser, log }: Session): string[] {
  if (adviser) return [];
  const answers = log.events.flatMap((event) => (event.type === "answered" ? [event.answer] : []));
  const begins = answers.map((_, place) => answers.slice(0, place + 1).join(" ")).reverse();
  const known = begins.find((one) => Object.hasOwn(guide.ahead, one));
  return known === undefined ? [] : (guide.ahead[known] ?? []);
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
 * @throws ScenarioMissing where it leads to a scenario that has to be loaded first
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
  const { chart, adviser } = session;
  const [way] = chart.getTransitionData(session.snapshot, sent as never);
  if (!way) {
    if (event.type === "answered") return refuse("unknown-answer");
    return refuse(event.type === "measured" ? "unreadable" : "not-now");
  }
  const advice = adviser && adviceAfter(adviser, memoryOf(session), way, sent, toward);
  const [snapshot] = transition(chart, session.snapshot, { ...sent, ...(advice && { advice }) } as never);
  const log = { ...session.log, events: [...session.log.events, event] };
  const next = { ...session, log, snapshot };
  const { value } = snapshot;
  const leadsOn = typeof value === "string" && session.guide.scenarios.includes(value);
  return { session: leadsOn ? enterScenario(next, value, sent, toward) : next, refusal: null };
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
 * @throws ScenarioMissing where it leads to a scenario that has to be loaded first
 */
export function replay(guide: Guide, log: Log): { session: Session; dropped: number } {
  let session = startSession(guide, log.started, log.model, log.water);
  for (const [at, event] of log.events.entries()) {
    const next = recordToward(session, event, log.events.slice(at + 1));
    if (next.refusal) return { session, dropped: log.events.length - at };
    session = next.session;
  }
  return { session, dropped: 0 };
}

/** Takes an event and goes where the log went, as far as that is allowed; else where today's advice leads. */
function recordToward(session: Session, event: LogEvent, later: LogEvent[]): Recorded {
  const following = later.find((one) => "turn" in one);
  if (!following) return record(session, event);
  const check = checkOf(following.turn);
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
  const { session: back } = replay(session.guide, log);
  return record(back, { type: "session-resumed", at }).session;
}
