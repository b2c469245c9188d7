import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { type Adviser, finish, type Steps } from "../advice/index.ts";
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
import { createLog, type Log, type LogEvent, type WaterLeft } from "./log.ts";

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
  water?: WaterLeft,
): Session {
  const { flow, opening } = guide;
  const memory = createMemory(model, water);
  const [snapshot] = initialTransition(opening, { memory } as never);
  return { guide, flow, chart: opening, adviser: null, log: createLog(started, model), snapshot };
}

/** The session in the chart of the scenario that its opening has led to, with the memory that it has. */
function* enterScenario(
  session: Session,
  scenario: string,
  event: ChartEvent,
  toward?: string,
): Steps<Session> {
  const loaded = session.guide.loaded.get(scenario);
  if (!loaded) throw new ScenarioMissing(scenario);
  const { flow, chart } = loaded;
  const memory = memoryOf(session);
  const adviser = session.guide.advisers(loaded, memory);
  yield;
  const advice = yield* adviceAt(adviser, memory, toward);
  yield;
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
 * @throws ScenarioMissing where it leads to a scenario that has to be loaded first
 */
export function record(session: Session, event: LogEvent, toward?: string): Recorded {
  return finish(recording(session, event, toward));
}

/** The same in steps. */
export function* recording(session: Session, event: LogEvent, toward?: string): Steps<Recorded> {
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
  const { chart, adviser } = session;
  const [way] = chart.getTransitionData(session.snapshot, sent as never);
  if (!way) {
    if (event.type === "answered") return refuse("unknown-answer");
    return refuse(event.type === "measured" ? "unreadable" : "not-now");
  }
  const advice = adviser && (yield* adviceAfter(adviser, memoryOf(session), way, sent, toward));
  yield;
  const [snapshot] = transition(chart, session.snapshot, { ...sent, ...(advice && { advice }) } as never);
  const log = { ...session.log, events: [...session.log.events, event] };
  const next = { ...session, log, snapshot };
  const { value } = snapshot;
  const leadsOn = typeof value === "string" && session.guide.scenarios.includes(value);
  if (!leadsOn) return { session: next, refusal: null };
  yield;
  return { session: yield* enterScenario(next, value, sent, toward), refusal: null };
}

function chartEvent(event: Exclude<LogEvent, { type: "water-left" }>): ChartEvent {
  const { at } = event;
  if (event.type === "answered") return { type: `answered.${event.answer}`, at };
  if (event.type === "measured") return { type: "measured", at, reading: event.reading };
  if (event.type === "model-given") return { type: "model-given", at, code: event.code };
  if (event.type === "danger-reported") return { type: `danger-reported.${event.danger}`, at };
  return { type: event.type, at };
}
