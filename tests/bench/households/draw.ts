import { policies, type Results } from "./run.ts";
import type { Summary } from "./tally.ts";

const panels: { title: string; of: (summary: Summary) => number; write: (number: number) => string }[] = [
  { title: "Minutes of attention", of: ({ minutes }) => minutes, write: (n) => n.toFixed(0) },
  { title: "Hours waited", of: ({ hours }) => hours, write: (n) => n.toFixed(0) },
  { title: "Ended right", of: ({ right }) => right, write: (n) => `${(100 * n).toFixed(0)} %` },
  { title: "Wrong part bought", of: ({ wrongPart }) => wrongPart, write: (n) => `${(100 * n).toFixed(1)} %` },
  {
    title: "Needless call-out",
    of: ({ needlessCall }) => needlessCall,
    write: (n) => `${(100 * n).toFixed(1)} %`,
  },
  { title: "Expected cost, in minutes", of: ({ cost }) => cost, write: (n) => n.toFixed(0) },
];

const names = 230;
const bars = 300;
const line = 22;
const panelHeight = policies.length * line + 40;
const width = names + bars + 80;

/**
 * The results as an SVG document: one panel a measure, one bar a policy, the number written at each bar, so that
 * nothing hangs on colour. Black on white whatever the page around it.
 */
export function drawHouseholds({ all, homes }: Results): string {
  const height = panels.length * panelHeight + 20;
  const drawn = panels.map(({ title, of, write }, at) => {
    const most = Math.max(...policies.map(({ id }) => of(all[id])), Number.MIN_VALUE);
    const rows = policies.map(({ id, name }, row) => {
      const length = Math.round((bars * of(all[id])) / most);
      const y = 36 + row * line;
      const fill = id.startsWith("ours") ? "#00508c" : "#8a8f98";
      return [
        `<text x="${names - 8}" y="${y + 12}" text-anchor="end">${name}</text>`,
        `<rect x="${names}" y="${y}" width="${length}" height="16" fill="${fill}"/>`,
        `<text x="${names + length + 6}" y="${y + 12}">${write(of(all[id]))}</text>`,
      ].join("");
    });
    return `<g transform="translate(0 ${at * panelHeight})"><text x="16" y="24" font-weight="bold">${title}</text>${rows.join("")}</g>`;
  });
  const said = `${homes} simulated homes: the trade's fixed list, the list of the scenario, and ours`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${said}">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    `<g font-family="system-ui, sans-serif" font-size="13" fill="#1a1a1a">${drawn.join("")}</g>`,
    "</svg>\n",
  ].join("\n");
}
