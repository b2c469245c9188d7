import { measures } from "./measures.ts";
import type { PlacedTurn, Point, Route } from "./place-turns.ts";
import { element, escapeXml } from "./xml.ts";

type Attributes = Record<string, string | number>;

/** One line of text; `y` is its middle. */
export function label(x: number, y: number, text: string, more: Attributes = {}): string {
  const attributes = Object.entries({ x, y: y + measures.font * 0.35, ...more });
  const written = attributes.map(([key, value]) => ` ${key}="${escapeXml(String(value))}"`).join("");
  return `<text${written}>${escapeXml(text)}</text>`;
}

/** A name in a frame with round ends: where a session starts, is decided and ends. */
export function pill(state: string, name: string, middle: number, y: number): string {
  const [width, height] = [110, 24];
  const text = label(middle, y + height / 2, name, { class: "name", "text-anchor": "middle" });
  return element("g", { "data-state": state }, [
    box(middle - width / 2, y, width, height, { class: "turn", rx: 12 }),
    text,
  ]);
}

export function box(x: number, y: number, width: number, height: number, more: Attributes = {}): string {
  return element("rect", { x, y, width, height, ...more });
}

/** A line through points, with an arrowhead at its end. */
export function arrow(points: Point[], more: Attributes = {}): string {
  const d = points.map(({ x, y }, at) => `${at ? "L" : "M"}${x} ${y}`).join(" ");
  return element("path", { d, class: "way", "marker-end": "url(#head)", ...more });
}

/** The general warning sign's shape, drawn: a triangle with a stroke and a dot, so that no font is needed for it. */
export function hazardMark(x: number, y: number): string {
  const d = `M${x} ${y + 6} L${x + 7} ${y - 6} L${x + 14} ${y + 6} Z M${x + 7} ${y - 2} V${y + 2} M${x + 7} ${y + 3.5} V${y + 4.5}`;
  return element("path", { d, class: "hazard" });
}

/** A turn with its answers; a gate has a double frame. What leads out of the check is named behind the answer. */
export function drawTurn(turn: PlacedTurn, own: ReadonlySet<string>): string {
  const { id, x, y, width, height, title, isGate, exits } = turn;
  const frame = box(x, y, width, height, { class: "turn", rx: 4 });
  const inner = isGate ? [box(x + 2.5, y + 2.5, width - 5, height - 5, { class: "turn", rx: 2 })] : [];
  const rows = exits.map(({ text, to, events }, at) => {
    const middle = y + measures.title + at * measures.line + measures.line / 2;
    const words = own.has(to) ? text : `${text} \u2192 ${placeName(to)}`;
    const ways = own.has(to) ? {} : { "data-from": id, "data-to": to, "data-events": events.join(" ") };
    return label(x + measures.pad, middle, words, ways);
  });
  const head = label(x + measures.pad, y + measures.title / 2, title, { class: "name" });
  return element("g", { "data-state": id }, [frame, ...inner, head, ...rows]);
}

export function drawRoute({ from, to, events, points }: Route): string {
  return arrow(points, { "data-from": from, "data-to": to, "data-events": events.join(" ") });
}

/** Where an answer leads, in a word: back to the choice of the next check, or an ending. */
function placeName(to: string): string {
  return to.endsWith("/choosing") ? "next" : to;
}
