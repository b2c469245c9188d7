import type { Adviser, Steps } from "../advice/index.ts";
import { type Advice, type ChartContext, type ChartEvent, type Note, remember } from "../chart/index.ts";

/** The way that a chart would take, as its own data says. */
type Way = {
  target?: readonly { id: string }[] | undefined;
  actions: readonly unknown[];
};

/**
 * The word of the adviser that goes with an event; null where the event leads to no choice and calls nobody. The chart notes down the
 * event before it chooses, so the adviser is asked about the memory after that.
 * @param toward the check that a replayed log goes on with
 */
export function* adviceAfter(
  adviser: Adviser,
  memory: ChartContext,
  { target, actions }: Way,
  event: ChartEvent,
  toward?: string,
): Steps<Advice | null> {
  const notes = (actions as { params: Note }[]).map(({ params }) => params);
  const after = () => notes.reduce((before, note) => remember(before, note, event), memory);
  if (notes.some(({ calls }) => calls)) return { check: null, part: null, call: adviser.call(after()) };
  return target?.[0]?.id.endsWith("/choosing") ? yield* adviceAt(adviser, after(), toward) : null;
}

/** The word of the adviser; where a replayed log went on with a check, that check, without asking. */
export function* adviceAt(adviser: Adviser, memory: ChartContext, toward?: string): Steps<Advice> {
  if (toward === undefined) return yield* adviser.advising(memory);
  // A log leads to no part that is not advised.
  const part = toward === "part" ? (yield* adviser.advising(memory)).part : null;
  return { check: toward, part, led: true, ...(toward === "later" ? { later: true } : {}) };
}
