import { layersOf } from "./layers.ts";
import { measures, widthOf } from "./measures.ts";
import type { TurnBox } from "./turn-boxes.ts";

export type Point = { x: number; y: number };
export type PlacedTurn = TurnBox & { x: number; y: number; width: number; height: number; layer: number };
/** A line from an exit of one turn to another turn, with only upright and level stretches. */
export type Route = { from: string; to: string; events: string[]; points: Point[] };
export type PlacedCheck = { turns: PlacedTurn[]; routes: Route[]; width: number; height: number };

const { line, title, pad } = measures;
const between = 14;
const margin = 22;
const track = 8;

/** Places the turns of a check in layers from left to right, and the lines between them in the gaps. */
export function placeTurns(boxes: TurnBox[]): PlacedCheck {
  const numberOf = new Map(boxes.map(({ id }, at) => [id, at]));
  const links = boxes.flatMap(({ exits }, from) =>
    exits.flatMap((exit, row) => {
      const to = numberOf.get(exit.to);
      return to === undefined ? [] : [{ from, to, row, events: exit.events }];
    }),
  );
  const layers = layersOf(boxes.length, links);
  const last = Math.max(0, ...layers);
  const gap = (left: number) =>
    margin * 2 +
    track * links.filter(({ from, to }) => layers[from] === left || (layers[to] ?? 0) - 1 === left).length;
  const columns: number[] = [];
  // Before the first layer there is a gap too where some line comes back to it.
  let x = links.some(({ to }) => layers[to] === 0) ? gap(-1) : 0;
  const turns: PlacedTurn[] = [];
  for (let layer = 0; layer <= last; layer++) {
    columns.push(x);
    let y = 0;
    let widest = 0;
    for (const [at, box] of boxes.entries()) {
      if (layers[at] !== layer) continue;
      const width = widthOf([box.title, ...box.exits.map(({ text }) => `${text}  next`)]);
      const height = title + box.exits.length * line + pad;
      turns[at] = { ...box, x, y, width, height, layer };
      y += height + between;
      widest = Math.max(widest, width);
    }
    x += widest + (layer < last ? gap(layer) : 0);
  }
  const bottom = Math.max(0, ...turns.map(({ y, height }) => y + height));
  return drawRoutes(turns, links, { columns, bottom, right: x });
}

type Link = { from: number; to: number; row: number; events: string[] };
type Frame = { columns: number[]; bottom: number; right: number };

function drawRoutes(turns: PlacedTurn[], links: Link[], { columns, bottom, right }: Frame): PlacedCheck {
  const used = new Map<number, number>();
  let lanes = 0;
  let rightmost = right;
  /** The next free upright track in the gap left of a layer, counted from its right. */
  const nextTrack = (layer: number) => {
    const count = used.get(layer) ?? 0;
    used.set(layer, count + 1);
    const edge = columns[layer] ?? right + margin * 2 + track * links.length;
    const x = edge - margin - count * track;
    rightmost = Math.max(rightmost, x);
    return x;
  };
  const routes = links.map(({ from, to, row, events }): Route => {
    const [source, target] = [turns[from] as PlacedTurn, turns[to] as PlacedTurn];
    const start = { x: source.x + source.width, y: source.y + title + row * line + line / 2 };
    const end = { x: target.x, y: target.y + title / 2 };
    const out = nextTrack(source.layer + 1);
    const bends =
      target.layer === source.layer + 1
        ? [
            { x: out, y: start.y },
            { x: out, y: end.y },
          ]
        : detour(out, nextTrack(target.layer), start.y, end.y, bottom + between + track * lanes++);
    return { from: source.id, to: target.id, events, points: [start, ...bends, end] };
  });
  const height = bottom + (lanes ? between + track * lanes : 0);
  return { turns, routes, width: rightmost, height };
}

/** Down into a lane below all turns, along it, and up again: no line crosses a turn. */
function detour(out: number, back: number, from: number, to: number, lane: number): Point[] {
  return [
    { x: out, y: from },
    { x: out, y: lane },
    { x: back, y: lane },
    { x: back, y: to },
  ];
}
