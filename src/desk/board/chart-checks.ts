import { movesAt } from "../../advice/index.ts";
import type { TurnMeta } from "../../chart/index.ts";
import { memoryOf, metaOf, type Session } from "../../session/index.ts";
import { linesOf, type Texts, titleOf } from "../../turn/index.ts";
import { subjectOf } from "./subject-of.ts";

/** A check of the chart: `open` may be asked now, `shut` may not, for something else comes first or rules it out. */
export type ChartCheck = {
  id: string;
  name: string;
  is: "now" | "done" | "open" | "shut";
  /** What was answered at it, in order. */
  found: { title: string; answer: string }[];
  /** Its place on the way so far, from 1; 0 where the way has not come to it. */
  step: number;
};

/** What a state of a chart says of its turn, in the order of the chart. */
export function* metasIn(states: Session["chart"]["states"]): Generator<TurnMeta> {
  for (const { meta, states: inner } of Object.values(states)) {
    if (meta) yield meta as TurnMeta;
    yield* metasIn(inner as typeof states);
  }
}

/** What was last found at each station of the ice path, in a few words, and where they are looking now. */
export function foundAt(session: Session, texts: Texts): Record<string, string> {
  const stations = new Map([...metasIn(session.chart.states)].map(({ turn, station }) => [turn, station]));
  const { station: here } = metaOf(session);
  const found = linesOf(session, texts).flatMap(({ turn, answer }) => {
    const station = turn.includes(".gate-") ? undefined : stations.get(turn);
    return station ? [[station, answer] as const] : [];
  });
  return Object.fromEntries([...found, ...(here ? [[here, texts("desk.path.now")] as const] : [])]);
}

/** The check that a turn is of; in the opening, which is one, the turn itself. Null for what ends a chart. */
function placeOf({ check, turn, outcome, kind }: TurnMeta): string | null {
  return check ?? (outcome || kind === "model" ? null : turn);
}

/** The checks of the chart that a session is in, in the chart's order, with where it is and which way it came. */
export function chartChecksOf(session: Session, texts: Texts): ChartCheck[] {
  const subject = subjectOf(session);
  const memory = memoryOf(session);
  const here = placeOf(metaOf(session));
  const checks = new Set([...metasIn(session.chart.states)].flatMap((meta) => placeOf(meta) ?? []));
  const open = new Set(subject ? movesAt(subject, memory).map(({ check }) => check) : []);
  const lines = linesOf(session, texts);
  const of = (turn: string) => (checks.has(turn) ? turn : (turn.split(".")[0] ?? ""));
  const way = [...new Set(lines.map(({ turn }) => of(turn)))];
  const isDone = (id: string) => memory.done.includes(id) || (!subject && way.includes(id));
  return [...checks].map((id) => ({
    id,
    name: texts(`checks.${id}.name`) || titleOf(id, texts),
    is: id === here ? "now" : isDone(id) ? "done" : open.has(id) ? "open" : "shut",
    found: lines.flatMap(({ turn, title, answer }) => (of(turn) === id ? [{ title, answer }] : [])),
    step: way.indexOf(id) + 1,
  }));
}
