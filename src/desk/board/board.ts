import type { Session } from "../../session/index.ts";
import type { Texts } from "../../turn/index.ts";
import { type CauseRow, causesOf } from "./causes.ts";
import { type ChartCheck, chartChecksOf, foundAt } from "./chart-checks.ts";
import { type Sayable, sayableIn } from "./facts.ts";
import { type NextCheck, nextChecksOf } from "./suggesting.ts";

/** What is known of a conversation, and what may be suggested in it. */
export type Board = {
  found: Record<string, string>;
  causes: CauseRow[];
  chart: ChartCheck[];
  next: NextCheck[];
  sayable: Sayable[];
};

/** A session never changes, and neither does what is known by it. */
const known = new WeakMap<Session, Board>();

export function boardOf(session: Session, texts: Texts): Board {
  const board = known.get(session) ?? {
    found: foundAt(session, texts),
    causes: causesOf(session, texts),
    chart: chartChecksOf(session, texts),
    next: nextChecksOf(session, texts),
    sayable: sayableIn(session, texts),
  };
  known.set(session, board);
  return board;
}
