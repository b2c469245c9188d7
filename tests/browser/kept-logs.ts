import { journalOf, type Log, parseJournal, standingOf } from "../../src/session/index.ts";
import { flow } from "./expected.ts";

/** Where the gates lead back to. They have a tap closed again: what needs water comes after the turn that opens it. */
export function turnAgain(left: string): string {
  const [check = "", turn = ""] = left.split(".");
  const { gates = [], turns = {} } = flow.checks[check] ?? {};
  const closes = gates.some((gate) => flow.gates[gate]?.leaves?.water === "closed");
  if (!closes || turns[turn]?.needs?.water !== "open") return left;
  const opening = Object.keys(turns).find((id) =>
    Object.values(turns[id]?.answers ?? {}).some(({ to, leaves }) => to === turn && leaves?.water === "open"),
  );
  return `${check}.${opening}`;
}

/** The answer of a turn that leads on to another of its check; empty where none does. */
export function openerOf(turn: string, left: string): string {
  const [check = "", opener = ""] = turn.split(".");
  const answers = flow.checks[check]?.turns[opener]?.answers ?? {};
  return Object.keys(answers).find((id) => answers[id]?.to === left.split(".")[1]) ?? "";
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

/** The text under which a browser keeps a session with this log. */
export const keptText = (log: object) => JSON.stringify(journalOf(log as Log));

/** The events of a kept journal that are in force, without their instants. */
export function eventsIn(text: string | null): object[] {
  const journal = parseJournal(JSON.parse(text ?? "null"));
  return journal ? actsOf(standingOf(journal).log) : [];
}

/** What was done, without the instants and without which entry an answer repeats. */
export function actsOf({ events }: Log): object[] {
  return events.map(({ at: _, ...event }) => ({ ...event, kept: undefined }));
}
