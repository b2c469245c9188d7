import { policies, type Results } from "./run.ts";
import type { Summary } from "./tally.ts";

/** What is shown, a column each: its head in two lines, and the goal for ours where there is one. */
type Column = {
  head: [string, string];
  of: (summary: Summary) => number;
  write: (number: number) => string;
  goal?: (list: Summary) => { at: number; words: string };
};

const whole = (number: number) => number.toFixed(0);
const percent = (digits: number) => (share: number) => `${(100 * share).toFixed(digits)} %`;
const half = (of: (summary: Summary) => number) => (list: Summary) => ({
  at: of(list) / 2,
  words: "half the list's",
});
const fixed = (at: number, words: string) => () => ({ at, words });
const minutes = (summary: Summary) => summary.minutes;
const hours = (summary: Summary) => summary.hours;

const columns: Column[] = [
  { head: ["Minutes of", "attention"], of: minutes, write: whole, goal: half(minutes) },
  { head: ["Hours", "waited"], of: hours, write: whole, goal: half(hours) },
  {
    head: ["Ended", "right"],
    of: ({ right }) => right,
    write: percent(0),
    goal: fixed(0.8, "80 % or more"),
  },
  {
    head: ["Wrong part", "bought"],
    of: ({ wrongPart }) => wrongPart,
    write: percent(1),
    goal: fixed(0.02, "under 2 %"),
  },
  {
    head: ["Needless", "call-out"],
    of: ({ needlessCall }) => needlessCall,
    write: percent(1),
    goal: fixed(0.16, "under 16 %"),
  },
  { head: ["Cost, in", "minutes"], of: ({ cost }) => cost, write: whole },
];

const names = 226;
const cell = 110;
const bar = 92;
const row = 46;
const top = 64;
const width = names + columns.length * cell;
const height = top + policies.length * row + 40;

/** It lies on a card of its own, so that it can be read on any page; whoever has it dark at home gets a dark card. */
const style = `
  text { font: 13px system-ui, -apple-system, "Segoe UI", sans-serif; fill: #1f2328 }
  .card { fill: #fff; stroke: #d1d9e0 } .bar { fill: #848d97 } .ours { fill: #0a5fb4 }
  .strong { font-weight: 600 } .soft { fill: #59636e; font-size: 12px } path { stroke: #59636e; stroke-width: 1.5 }
  @media (prefers-color-scheme: dark) {
    text { fill: #e6edf3 } .card { fill: #0d1117; stroke: #3d444d } .bar { fill: #6e7681 } .ours { fill: #58a6ff }
    .soft { fill: #9198a1 } path { stroke: #9198a1 }
  }`;

/**
 * The results as an SVG document: a row a policy, a column a measure, the number written above each bar, so that
 * nothing hangs on colour, and a line across our bar where the goal is.
 */
export function drawHouseholds({ all, homes }: Results): string {
  const text = (x: number, y: number, words: string, kind = "") =>
    `<text x="${x}" y="${y}"${kind && ` class="${kind}"`}>${words}</text>`;
  const heads = columns.flatMap(({ head }, at) =>
    head.map((words, line) => text(names + at * cell, 28 + 17 * line, words, "strong")),
  );
  const rows = policies.map(({ id, name }, at) => {
    const y = top + at * row;
    const kind = id === "ours" ? "strong" : "";
    const cells = columns.map(({ of, write }, column) => {
      const x = names + column * cell;
      const length = Math.max(1, Math.round(lengthOf(of(all[id]), of, all)));
      const shape = `<rect x="${x}" y="${y + 20}" width="${length}" height="12" rx="2" class="${id === "ours" ? "ours" : "bar"}"/>`;
      return text(x, y + 15, write(of(all[id])), kind) + shape;
    });
    return text(20, y + 31, name, kind) + cells.join("");
  });
  const bottom = top + policies.length * row;
  const goals = columns.flatMap(({ of, goal }, column) => {
    const wanted = goal?.(all["list-calls"]);
    if (!wanted) return [];
    const x = names + column * cell + lengthOf(wanted.at, of, all);
    return `<path d="M${x.toFixed(1)} ${bottom - row + 18}v16"/>${text(names + column * cell, bottom + 16, wanted.words, "soft")}`;
  });
  const said = `${homes} simulated homes: the trade's fixed list with either end, the list of the scenario, and ours`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${said}">`,
    `<style>${style}\n</style>`,
    `<rect x=".5" y=".5" width="${width - 1}" height="${height - 1}" rx="8" class="card"/>`,
    ...heads,
    ...rows,
    text(20, bottom + 16, "the goal for ours", "soft"),
    ...goals,
    "</svg>\n",
  ].join("\n");
}

/** Bars of a column share a scale: the longest fills it. */
function lengthOf(value: number, of: (summary: Summary) => number, all: Results["all"]): number {
  const most = Math.max(...policies.map(({ id }) => of(all[id])), Number.MIN_VALUE);
  return (bar * value) / most;
}
