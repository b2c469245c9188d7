import type { ChartContext } from "../chart/index.ts";
import { limitOf } from "../guide/index.ts";
import type { LogEvent } from "./log.ts";
import { memoryOf, type Session } from "./session.ts";

/** An answer that was chosen, as it stands in a log. */
export type Answered = Extract<LogEvent, { type: "answered" }>;

/**
 * What an answer leads to, where the same answer was recorded before at another instant, `then`. What a chart does and an
 * adviser says follows from the order of instants and not from how far they lie apart, except where a wait ends, which
 * no answer does, and while a gate is asked in short: so the instant alone is put in. Readings are not for this: their verdict goes by their day.
 * @param before the session at which both answer
 * @param then at a gate, with all that is to be confirmed there
 * @param led where `then` has led from `before`
 * @returns null where the order of instants is another, or the answer is, or a gate has to be asked in full by now
 */
export function sameLater(before: Session, then: Answered, led: Session, event: Answered): Session | null {
  const isSameAnswer =
    then.turn === event.turn &&
    then.answer === event.answer &&
    (then.items ?? []).every((item) => event.items?.includes(item));
  const latest = latestOf(memoryOf(before));
  if (!isSameAnswer || !(Date.parse(then.at) > latest) || !(Date.parse(event.at) > latest)) return null;
  const put = (instant: string) => (instant === then.at ? event.at : instant);
  if (endsShort(before, then.at, event.at)) return null;
  const memory = memoryOf(led);
  const context: ChartContext = {
    ...memory,
    findings: mapped(memory.findings, (one) => (one.at === then.at ? { ...one, at: event.at } : one)),
    waits: mapped(memory.waits, put),
    prepared: mapped(memory.prepared, (one) => ({ ...one, since: put(one.since) })),
    confirmed: mapped(memory.confirmed, (one) => ({ ...one, at: put(one.at) })),
  };
  const log = { ...led.log, events: [...before.log.events, event] };
  return { ...led, log, snapshot: { ...led.snapshot, context } as never };
}

/** True where a gate could still be asked in short at `then`, and no more at `at`. */
function endsShort(session: Session, then: string, at: string): boolean {
  const most = limitOf(session.flow.limits, "gate-short-minutes") * 60_000;
  return Object.values(memoryOf(session).confirmed).some((one) => {
    const end = Date.parse(one.at) + most;
    return Date.parse(then) <= end && Date.parse(at) > end;
  });
}

/** Milliseconds; the latest instant that a memory knows. */
function latestOf({ findings, waits }: ChartContext): number {
  const instants = [...Object.values(findings).map(({ at }) => at), ...Object.values(waits)];
  return Math.max(Number.NEGATIVE_INFINITY, ...instants.map((at) => Date.parse(at)));
}

const mapped = <Value>(record: Record<string, Value>, change: (value: Value) => Value) =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
