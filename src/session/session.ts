import { initialTransition, type SnapshotFrom, transition } from "xstate";
import type { ChartContext, ChartEvent, TurnMeta } from "../chart/index.ts";
import { type Chart, type Charts, createCharts } from "../compile/index.ts";
import type { Flow } from "../guide/index.ts";
import { createLog, type Log, type LogEvent, type WaterLeft } from "./log.ts";

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
  water?: WaterLeft,
): Session {
  const chart = charts(scenario);
  const [snapshot] = initialTransition(chart, { model, water } as never);
  return { flow, charts, chart, log: createLog(started, model), snapshot };
}

/** The tap as a session leaves it to the one that follows, where we had it closed: no new start opens it. */
export function waterLeftBy(session: Session): WaterLeft | undefined {
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
  if (event.type === "water-left") {
    const log = { ...session.log, events: [...session.log.events, event] };
    const context = { ...memoryOf(session), water: event.water };
    return {
      session: { ...session, log, snapshot: { ...session.snapshot, context } as never },
      refusal: null,
    };
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
    const fresh = startSession(flow, log.started, log.model, charts, snapshot.value, waterLeftBy(session));
    const led = log.events.reduce(
      (before, one) => record(before, one, one === event ? toward : undefined).session,
      fresh,
    );
    return { session: led, refusal: null };
  }
  return { session: { ...session, log, snapshot }, refusal: null };
}

function chartEvent(event: Exclude<LogEvent, { type: "water-left" }>): ChartEvent {
  const { at } = event;
  if (event.type === "answered") return { type: `answered.${event.answer}`, at };
  if (event.type === "measured") return { type: "measured", at, reading: event.reading };
  if (event.type === "model-given") return { type: "model-given", at, code: event.code };
  if (event.type === "danger-reported") return { type: `danger-reported.${event.danger}`, at };
  return { type: event.type, at };
}
