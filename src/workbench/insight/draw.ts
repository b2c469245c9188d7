import { outcomes, type Row, type ScenarioSummary, type Summary } from "./summary.ts";
import { headOf, listsOf, minutesOf, missingHeading, number, percent } from "./words.ts";

/** Whatever stands in a file is text. */
export function escapeText(text: string): string {
  const signs: Record<string, string> = {
    "&": "&amp;",
    "<": "&lt;",
    ">": "&gt;",
    '"': "&quot;",
    "'": "&#39;",
  };
  return text.replace(/[&<>"']/g, (sign) => signs[sign] ?? sign);
}

/** From good to grave, apart in lightness as well, for those who see no colours. */
const fills = {
  fixed: "#0b5d3b",
  later: "#5a9e6f",
  part: "#c8873a",
  professional: "#7a86a8",
  stopped: "#a4262c",
} as const;

/** In pixels: the page, the bars, and how many turns a drawing names. */
const [width, left, bar, gap, mostTurns] = [760, 190, 20, 14, 12];

/** How searches ended in each scenario, and where people gave up, as a drawing without script. */
export function drawSummary(summary: Summary): string {
  const ended = summary.scenarios.filter(({ endings }) => endings > 0);
  const gaveUp = summary.scenarios
    .flatMap(({ id, gaveUp }) => gaveUp.map((row) => ({ ...row, id: `${row.id} (${id})` })))
    .sort((one, other) => other.count - one.count)
    .slice(0, mostTurns);
  let y = 30;
  const pieces: string[] = [];
  const write = (text: string, x: number, at: number, more = "") =>
    pieces.push(`<text x="${x}" y="${at}"${more}>${escapeText(text)}</text>`);
  const [began, spoilt = ""] = headOf(summary).split(/(?<=\.) /);
  write(began ?? "", 20, y, ' font-weight="bold"');
  y += 22;
  if (spoilt) write(spoilt, 20, y);
  y += spoilt ? 34 : 12;
  let x = 20;
  for (const outcome of outcomes) {
    pieces.push(`<rect x="${x}" y="${y - 11}" width="12" height="12" fill="${fills[outcome]}"/>`);
    write(outcome, x + 18, y);
    x += 40 + outcome.length * 8;
  }
  y += 24;
  for (const one of ended) {
    write(short(one.id, 22), 20, y + 15);
    let at = left;
    for (const { id, count, share } of one.ended) {
      const wide = share * (width - left - 200);
      pieces.push(
        `<rect x="${round(at)}" y="${y}" width="${round(wide)}" height="${bar}" fill="${fills[id]}"><title>${id}: ${number(count)}, ${percent(share)}</title></rect>`,
      );
      at += wide;
    }
    write(`${number(one.endings)}, ${minutesOf(one)}`, width - 190, y + 15);
    y += bar + gap;
  }
  if (gaveUp.length) {
    y += 28;
    write("Where people gave up", 20, y, ' font-weight="bold"');
    y += 16;
    const top = gaveUp[0]?.count ?? 1;
    for (const { id, count } of gaveUp) {
      write(short(id, 48), 20, y + 15);
      const wide = (count / top) * (width - 470);
      pieces.push(
        `<rect x="400" y="${y}" width="${round(wide)}" height="${bar}" fill="${fills.professional}"/>`,
      );
      write(number(count), 408 + wide, y + 15);
      y += bar + 8;
    }
  }
  const height = y + 20;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="14" fill="#1b2430" role="img"><title>${escapeText(headOf(summary))}</title><rect width="${width}" height="${height}" fill="#fff"/>${pieces.join("")}</svg>\n`;
}

const round = (value: number) => Math.round(value * 10) / 10;

const short = (id: string, most: number) => (id.length > most ? `${id.slice(0, most - 1)}…` : id);

const style = `:root{color-scheme:light dark}body{font:16px/1.5 system-ui,sans-serif;max-width:800px;margin:2rem auto;padding:0 1rem}
svg{max-width:100%;height:auto;border-radius:8px}table{border-collapse:collapse;margin:0 0 1.5rem}
caption{text-align:left;white-space:nowrap;font-weight:600;padding:.4rem 0}th,td{text-align:left;padding:.2rem 1.2rem .2rem 0;border-top:1px solid #8886;font-weight:400}
td{text-align:right;font-variant-numeric:tabular-nums}`;

/** The same as a page of its own: drawing and tables, nothing fetched, no script. */
export function summaryPage(summary: Summary): string {
  const table = (caption: string, rows: (Row & { share?: number })[]) => {
    const lines = rows.map(
      ({ id, count, share }) =>
        `<tr><th scope="row">${escapeText(id)}</th><td>${number(count)}</td>${share === undefined ? "" : `<td>${percent(share)}</td>`}</tr>`,
    );
    return rows.length ? `<table><caption>${escapeText(caption)}</caption>${lines.join("")}</table>` : "";
  };
  const section = (one: ScenarioSummary) =>
    `<h2>${escapeText(one.id)}</h2>${table(`${number(one.endings)} ended, ${minutesOf(one)}`, one.ended)}${listsOf(
      one,
    )
      .map(({ heading, rows }) => table(heading, rows))
      .join("")}`;
  return `<!doctype html>
<html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>How searches went</title><style>${style}</style></head>
<body><h1>How searches went</h1><p>${escapeText(headOf(summary))}</p>
${drawSummary(summary)}${summary.scenarios.map(section).join("\n")}
${table(missingHeading, summary.missing)}</body></html>
`;
}
