import { memoryOf, metaOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { showList } from "./formats.ts";
import type { PathMark } from "./turn.ts";

/**
 * The ice path as far as the findings tell: the last mark on each station stands, but a fault that was found and
 * not put right keeps its station suspect, and what was put right stays marked so.
 */
export function pathOf(session: Session, texts: Texts): PathMark[] {
  const { marks, causes } = memoryOf(session);
  const { station: here } = metaOf(session);
  const { order, above } = session.flow.stations;
  // A machine with a tank has no tap: what no cause of this search is at, it does not have.
  const own = new Set(
    session.adviser?.chances(memoryOf(session)).map(({ cause }) => session.flow.causes[cause]?.station),
  );
  const has = ({ station, state, here }: PathMark) =>
    own.size === 0 || own.has(station) || here || state !== "unseen";
  const mark = (station: string): PathMark => {
    const known = marks.filter((mark) => mark.station === station).map((mark) => mark.state);
    const open = Object.entries(causes).some(
      ([cause, state]) => state === "found" && session.flow.causes[cause]?.station === station,
    );
    const state = known.reduce<PathMark["state"]>(
      (before, next) => (next === "clear" && before === "fixed" ? before : next),
      "unseen",
    );
    return {
      station,
      name: texts(`stations.${station}`),
      state: open ? "suspect" : state,
      here: station === here,
      above: above.includes(station),
    };
  };
  return order.map(mark).filter(has);
}

/** The picture as a sentence or two, for a screen reader: where we are, what is suspect, put right, in order. */
export function pathText(path: PathMark[], texts: Texts): string {
  const say = (key: string, marks: PathMark[]) =>
    marks.length
      ? [
          texts(`path.${key}`, {
            stations: showList(
              texts("ui.locale"),
              marks.map(({ name }) => name),
            ),
          }),
        ]
      : [];
  return [
    `${texts("path.title")}.`,
    ...say(
      "here",
      path.filter(({ here }) => here),
    ),
    ...(["suspect", "fixed", "clear"] as const).flatMap((state) =>
      say(
        state,
        path.filter((mark) => mark.state === state),
      ),
    ),
  ].join(" ");
}
