import { type Log, parseLog } from "../../src/session/index.ts";
import { flow } from "./expected.ts";

/** Where the gates lead back to. They have a tap closed again: what needs water comes after the turn that opens it. */
export function turnAgain(left: string): string {
  const [check = "", turn = ""] = left.split(".");
  const { gates = [], turns = {} } = flow.checks[check] ?? {};
  const closes = gates.some((gate) => flow.gates[gate]?.leaves?.water === "closed");
  if (!closes || !turns[turn]?.needs) return left;
  const opening = Object.keys(turns).find((id) =>
    Object.values(turns[id]?.answers ?? {}).some(({ to, leaves }) => to === turn && leaves?.water === "open"),
  );
  return `${check}.${opening}`;
}

const WEEK_MS = 7 * 86_400_000;

/** A log as if it had been kept a moment before `now`, where it was longer ago than a panel goes on with by itself. */
export function keptLately(log: Log, now: number): Log {
  const by = now - Date.parse(log.events.at(-1)?.at ?? log.started);
  if (by <= WEEK_MS) return log;
  const later = (at: string) => new Date(Date.parse(at) + by).toISOString();
  return {
    ...log,
    started: later(log.started),
    events: log.events.map((event) => ({ ...event, at: later(event.at) })),
  };
}

/** The events of a kept log, without their instants. */
export function eventsIn(log: string | null): object[] {
  return (parseLog(JSON.parse(log ?? "null"))?.events ?? []).map(({ at: _, ...event }) => event);
}
