import { type Files, isScript, sizeOf } from "./built.ts";
import { inKilobytes, inMilliseconds, medianOf, tableOf } from "./table.ts";
import type { device, Visit } from "./visit.ts";

/** What was measured of both pages, run by run. */
export type Measured = { ours: Visit[]; floor: Visit[] };

/** How the numbers came about, in a few lines before them; `busy` is the tasks that each processor had before. */
export function meaningOfNumbers(
  settings: typeof device,
  runs: number,
  { version, busy }: { version: string; busy: number },
): string {
  const { width, height, cpuSlowDown, roundTripMs, downKbps, upKbps } = settings;
  return [
    `Chromium ${version}, ${width}x${height}, processor slowed down ${cpuSlowDown} times; slow 4G: ${roundTripMs} ms before each answer,`,
    `${downKbps / 1000} Mbps down, ${upKbps} kbps up (Lighthouse's mobile numbers). Medians of ${runs} visits, nothing kept`,
    "between them. The floor is plain preact with two questions written into the code, on the same page.",
    ...(busy > 0.7
      ? [
          `This machine was busy (${busy.toFixed(1)} tasks for each processor beforehand): times are too long.`,
        ]
      : []),
  ].join("\n");
}

/** Bytes by file, script and data apart, of all that one visit fetched. */
export function bytesReport(files: Files, measured: Measured): string {
  const rows = [["file", "raw", "gzip", "brotli", "when"]];
  const add = (label: string, arrived: Visit["arrived"]) => {
    if (arrived.length === 0) return;
    const sizes = arrived.map(({ name }) => sizeOf(files.get(name) as Buffer));
    if (label) {
      const sum = (kind: "raw" | "gzip" | "brotli") =>
        inKilobytes(sizes.reduce((total, size) => total + size[kind], 0));
      rows.push([label, sum("raw"), sum("gzip"), sum("brotli"), ""]);
      return;
    }
    for (const [place, { name, early }] of arrived.entries()) {
      const { raw, gzip, brotli } = sizes[place] as ReturnType<typeof sizeOf>;
      rows.push([
        `  ${name}`,
        inKilobytes(raw),
        inKilobytes(gzip),
        inKilobytes(brotli),
        early ? "first" : "later",
      ]);
    }
  };
  for (const [name, [visit]] of [["Ours", measured.ours] as const, ["Floor", measured.floor] as const]) {
    if (!visit) continue;
    const script = visit.arrived.filter((each) => isScript(each.name));
    const data = visit.arrived.filter((each) => files.has(each.name) && isData(each.name));
    rows.push([`${name}, script`, "", "", "", ""]);
    add("", script);
    add(
      "  before the first question",
      script.filter(({ early }) => early),
    );
    add("  in all", script);
    if (data.length === 0) continue;
    rows.push([`${name}, data (texts, flow, styles, drawings; the shop's catalogue)`, "", "", "", ""]);
    add("", data);
    add("  in all", data);
  }
  return tableOf(rows);
}

/** The page's own document and style are the same on both and count for neither. */
const isData = (name: string) => !isScript(name) && !/\.html$|^page\.css$/.test(name);

/** Times and shifts, ours beside the floor. */
export function timesReport({ ours, floor }: Measured): string {
  const row = (name: string, number: (visit: Visit) => number, write = inMilliseconds) => {
    const [a, b] = [medianOf(ours.map(number)), medianOf(floor.map(number))];
    return [name, write(a), write(b), write(a - b), b > 0 ? `x ${(a / b).toFixed(1)}` : ""];
  };
  const plain = (count: number) => `${count}`;
  const shifted = (shift: number) => shift.toFixed(3);
  return tableOf([
    ["", "ours", "floor", "difference", "ratio"],
    row("time to the first question", (visit) => visit.firstQuestion),
    row("a tap made at once, to the second question", (visit) => visit.firstTap),
    row("tap to the next question, median", (visit) => medianOf(visit.taps)),
    row("tap to the next question, worst", (visit) => Math.max(...visit.taps)),
    row("taps in a session", (visit) => visit.taps.length, plain),
    row("tasks over 50 ms after the first question", (visit) => visit.longTasks.length, plain),
    row("worst task over 50 ms", (visit) => Math.max(0, ...visit.longTasks)),
    row("layout shift while loading", (visit) => visit.shift.loading, shifted),
    row("layout shift without input, whole session", (visit) => visit.shift.all, shifted),
  ]);
}
