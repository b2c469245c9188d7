import type { ChartConfig } from "../../chart/index.ts";
import { measures } from "./measures.ts";
import { columns, type Page, type PlacedGroup, type PlacedRow } from "./place-page.ts";
import { arrow, box, drawRoute, drawTurn, hazardMark, label, pill } from "./svg-pieces.ts";
import { element } from "./xml.ts";

const style = `
text { font: ${measures.font}px sans-serif; fill: #000; }
.name { font-weight: bold; }
.title { font-size: 18px; font-weight: bold; }
.page { fill: #fff; }
.turn { fill: #fff; stroke: #000; }
.station { fill: none; stroke: #000; stroke-dasharray: 2 4; }
.way, .spine { fill: none; stroke: #000; }
.hazard { fill: none; stroke: #000; stroke-width: 1.5; stroke-linejoin: round; }
`;

const { line } = measures;
const { spine } = columns;

/** Writes a placed page as SVG: black on white, every meaning in shape or words and none in colour. */
export function writeSvg(page: Page, config: ChartConfig): string {
  const { width, height, scenario } = page;
  const head = element(
    "marker",
    { id: "head", viewBox: "0 0 8 8", refX: 8, refY: 4, markerWidth: 8, markerHeight: 8, orient: "auto" },
    [element("path", { d: "M0 0 L8 4 L0 8 Z" })],
  );
  const about = `The chart of ${scenario}: the opening, its checks by station in the order of the trade, and the endings.`;
  const body = [
    `<title>${scenario}</title>`,
    `<desc>${about}</desc>`,
    `<style>${style}</style>`,
    element("defs", {}, [head]),
    box(0, 0, width, height, { class: "page" }),
    label(columns.when, 22, scenario, { class: "title" }),
    ...drawStart(page),
    ...page.groups.map((group) => drawGroup(group, page)),
    ...drawEndings(page, config),
  ];
  const size = { width, height, viewBox: `0 0 ${width} ${height}` };
  return `${element("svg", { xmlns: "http://www.w3.org/2000/svg", role: "img", ...size }, body)}\n`;
}

function drawStart({ scenario, when, proofs, top, endings }: Page): string[] {
  const hub = 76 + line * when.length;
  return [
    pill("opening", "opening", spine, 38),
    arrow([
      { x: spine, y: 62 },
      { x: spine, y: hub },
    ]),
    ...when.map((text, at) => label(columns.check + 24, 50 + at * line, text)),
    pill(`${scenario}/choosing`, "next check", spine, hub),
    ...proofs.map((text, at) => label(columns.check + 24, hub + 12 + (at + 1) * line, text)),
    label(columns.check + 24, hub + 12, "A proof ends the search before any further check:", {
      class: "name",
    }),
    element("path", { d: `M${spine} ${hub + 24} V${Math.max(top, endings)}`, class: "spine" }),
  ];
}

function drawGroup({ station, y, height, width, rows }: PlacedGroup, { scenario }: Page): string {
  const frame = box(columns.check - 12, y, width + 24, height, { class: "station", rx: 8 });
  const name = label(columns.check, y + line / 2 + 6, station, { class: "name" });
  return element("g", { "data-station": station }, [
    frame,
    name,
    ...rows.map((row) => drawRow(row, scenario)),
  ]);
}

function drawRow(row: PlacedRow, scenario: string): string {
  const { y, when, number, heading, hazards, turns, inset, check } = row;
  const middle = y + line / 2;
  const first = turns?.turns[0];
  const target = first?.id ?? `${scenario}/${check}`;
  const parts = [
    label(columns.when, middle, `${number}.`, { class: "name" }),
    ...when.map((text, at) => label(columns.when + 24, middle + at * line, text)),
    arrow(
      [
        { x: spine, y: middle },
        { x: columns.check - 2, y: middle },
      ],
      { "data-from": `${scenario}/choosing`, "data-to": target },
    ),
    label(columns.check, middle, heading, { class: "name" }),
  ];
  if (hazards)
    parts.push(hazardMark(columns.check, middle + line), label(columns.check + 20, middle + line, hazards));
  if (turns) {
    const own = new Set(turns.turns.map(({ id }) => id));
    const inner = [...turns.routes.map(drawRoute), ...turns.turns.map((turn) => drawTurn(turn, own))];
    parts.push(element("g", { transform: `translate(${columns.check} ${y + inset})` }, inner));
  }
  return element("g", { "data-check": check }, parts);
}

function drawEndings({ endings, otherwise, scenario }: Page, config: ChartConfig): string[] {
  const names = ["fixed", "part", "professional", "stopped"];
  const middle = (name: string) => columns.check + 55 + names.indexOf(name) * 150;
  const pills = names.map((name) => pill(name, name, middle(name), endings + 24));
  const way = { "data-from": `${scenario}/choosing`, "data-to": "professional" };
  const ask = config.states.part?.states?.model
    ? "part: asks for the model code first, where the page gave none"
    : "";
  const everywhere = [
    ask,
    "from every turn: danger reported \u2192 stopped; help asked \u2192 professional; ice came back \u2192 fixed",
    "behind a gate: coming back later, or taking an answer back, leads to the first gate of the check",
    "an answer without an arrow leads where it says; \u201cnext\u201d is the next check",
  ];
  return [
    arrow(
      [
        { x: spine, y: endings },
        { x: spine, y: endings + 10 },
        { x: middle("professional"), y: endings + 10 },
        { x: middle("professional"), y: endings + 24 },
      ],
      way,
    ),
    label(columns.check, endings, otherwise),
    ...pills,
    ...everywhere.filter(Boolean).map((text, at) => label(columns.check, endings + 72 + at * line, text)),
  ];
}
