import type { PathMark, Turn } from "../../turn/index.ts";
import { saysSomething, stationsOf } from "../pictures/index.ts";
import type { CutOpenDrawing, Place } from "./drawing.ts";

/** A shape as it is drawn: its classes and its path. */
export type Shape = { tone: string; path: string };

/** The name of a station beside the drawing. `at` is on the part, `foot` the middle of the name's height. */
export type Label = Pick<PathMark, "station" | "name" | "state" | "here"> &
  Pick<Place, "side" | "at"> & { foot: number };

export type Scene = { shapes: Shape[]; labels: Label[] };

/** A machine with one of these, and no tank, is drawn with all of them. */
const plumbing = ["stop-tap", "supply-line", "filter", "inlet-valve"];

/** How far names stand from each other and from the edge, in the drawing's pixels: two lines on the narrowest. */
const [gap, margin] = [46, 26];

/**
 * What of the drawing holds at a turn: this machine's parts, in copper the one that the turn is about, the line dry
 * below a tap that we had closed, and the names of stations, as the path has them. What acts on the water from outside
 * is named once something is known of it. While there is nothing to show inside, it is shut and without names.
 */
export function sceneOf(
  { path: whole, changed }: Pick<Turn, "path" | "changed">,
  { groups, places, frame }: CutOpenDrawing,
): Scene {
  const path = stationsOf({ path: whole });
  if (!saysSomething({ path })) {
    const shut = groups.filter(({ where }) => where.includes("closed"));
    return { shapes: shut.flatMap(({ shapes }) => shapes.map(shapeOf)), labels: [] };
  }
  const has = (stations: string[]) => path.some(({ station }) => stations.includes(station));
  const stations = new Set(path.map(({ station }) => station));
  // What was cleared stays on the path, and may be none of this machine's: a tank tells more than a valve.
  if (has(["tank"])) stations.add("tank-fed");
  else if (has(plumbing)) stations.add("tap-fed");
  const ours = new Set(changed.map(({ id }) => id));
  const holds = ({ where }: { where: string[] }) =>
    where.every((one) => {
      const id = one.slice(1);
      return one[0] === "-" ? ours.has(id) : one[0] === "+" ? !ours.has(id) : stations.has(one);
    });
  const here = new Set(path.filter((mark) => mark.here).map(({ station }) => station));
  const isDry = ours.has("water");
  const shapes = groups.filter(holds).flatMap(({ at = "", plain = "s", shapes }) =>
    shapes.flatMap((shape) => {
      const { tone: kind, path } = shapeOf(shape);
      const isCopper = here.has(at);
      if (kind === "pf") {
        // Above the tap there is water, whatever we closed.
        const line = isDry && at !== "stop-tap" ? "pd" : "pf";
        const tone = isCopper && at !== "stop-tap" ? `${line} pk` : line;
        return [
          { tone, path },
          { tone: `${line}i`, path },
        ];
      }
      return [{ tone: kind[0] === "k" && !isCopper ? plain + kind.slice(1) : kind, path }];
    }),
  );
  const named = path.flatMap(({ station, name, state, here, above }) => {
    const place = places.findLast((one) => one.station === station && holds(one));
    if (!place || (above && !here && state === "unseen")) return [];
    return [{ station, name, state, here, side: place.side, at: place.at }];
  });
  const labels = (["left", "right"] as const).flatMap((side) =>
    spread(
      named.filter((one) => one.side === side),
      frame.height,
    ),
  );
  return { shapes, labels };
}

/** Puts names beside their parts, from the top down, without one on another. */
function spread(labels: Omit<Label, "foot">[], height: number): Label[] {
  const sorted = labels.toSorted((one, other) => one.at[1] - other.at[1]);
  let next = margin;
  const down = sorted.map((label) => {
    const foot = Math.max(next, label.at[1]);
    next = foot + gap;
    return { ...label, foot };
  });
  let last = height - margin;
  return down
    .toReversed()
    .map((label) => {
      const foot = Math.min(last, label.foot);
      last = foot - gap;
      return { ...label, foot };
    })
    .toReversed();
}

function shapeOf(shape: string): Shape {
  const end = shape.indexOf(" ");
  return { tone: shape.slice(0, end), path: shape.slice(end + 1) };
}
