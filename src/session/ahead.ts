import type { ChartContext } from "../chart/index.ts";
import type { LogEvent } from "./log.ts";
import { memoryOf, type Session } from "./session.ts";

/** An answer that was chosen, as it stands in a log. */
export type Answered = Extract<LogEvent, { type: "answered" }>;

/**
 * What an answer leads to, where the same answer was recorded before at another instant, `then`. What a chart does and an
 * adviser says follows from the order of instants and not from how far they lie apart, except where a wait ends, which
 * no answer does: so the instant alone is put in. Readings are not for this: their verdict goes by their day.
 * @param before the session at which both answer
 * @param then at a gate, with all that is to be confirmed there
 * @param led where `then` has led from `before`
 * @returns null where the order of instants is another, or the answer is
 */
export function sameLater(before: Session, then: Answered, led: Session, event: Answered): Session | null {
  const isSameAnswer =
    then.turn === event.turn &&
    then.answer === event.answer &&
    (then.items ?? []).every((item) => event.items?.includes(item));
  const latest = latestOf(memoryOf(before));
  if (!isSameAnswer || !(Date.parse(then.at) > latest) || !(Date.parse(event.at) > latest)) return null;
  const put = (instant: string) => (instant === then.at ? event.at : instant);
  const memory = memoryOf(led);
  const context: ChartContext = {
    ...memory,
    findings: mapped(memory.findings, (one) => (one.at === then.at ? { ...one, at: event.at } : one)),
    waits: mapped(memory.waits, put),
  };
  const log = { ...led.log, events: [...before.log.events, event] };
  return { ...led, log, snapshot: { ...led.snapshot, context } as never };
}

/** Milliseconds; the latest instant that a memory knows. */
function latestOf({ findings, waits }: ChartContext): number {
  const instants = [...Object.values(findings).map(({ at }) => at), ...Object.values(waits)];
  return Math.max(Number.NEGATIVE_INFINITY, ...instants.map((at) => Date.parse(at)));
}

const mapped = <Value>(record: Record<string, Value>, change: (value: Value) => Value) =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
