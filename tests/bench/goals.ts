import { type Files, isScript, sizeOf } from "./built.ts";
import type { Measured } from "./report.ts";
import { inKilobytes, inMilliseconds, medianOf } from "./table.ts";

/** What the script may weigh, in bytes of brotli. */
export const budget = { firstFile: 12_000, allScript: 90_000, journeyData: 42_000 };

/** What a person may have to wait, in milliseconds. */
const patience = { overFloor: 100, task: 50, medianTap: 50, worstTap: 100 };

/** Each goal in words, with what was measured. A goal about the worst looks at every run, not at the median. */
export function goalsOf(
  files: Files,
  { ours, floor }: Measured,
  staticImports: string[],
): { met: boolean; says: string }[] {
  const weigh = (name: string) => sizeOf(files.get(name) as Buffer).brotli;
  const script = (ours[0]?.arrived ?? []).filter(({ name }) => isScript(name));
  const early = script.filter((each) => each.early);
  const all = script.reduce((sum, { name }) => sum + weigh(name), 0);
  const first = early.reduce((sum, { name }) => sum + weigh(name), 0);
  const [mine, least] = [ours, floor].map((visits) => medianOf(visits.map((visit) => visit.firstQuestion)));
  const over = (mine ?? Number.NaN) - (least ?? Number.NaN);
  const task = Math.max(0, ...ours.flatMap((visit) => visit.longTasks));
  // While loading: what moves when a countdown ends by itself is the next step, and stands in its own row.
  const shift = Math.max(...ours.map((visit) => visit.shift.loading));
  const taps = ours.flatMap((visit) => visit.taps);
  const fewest = Math.min(...ours.map((visit) => visit.taps.length));
  const [median, worst] = [medianOf(taps), Math.max(...taps)];
  return [
    {
      met: early.length === 1 && staticImports.length === 0 && first <= budget.firstFile,
      says: `the first question is drawn by one file of ${inKilobytes(budget.firstFile)} brotli at most, without static imports: ${early.length} file, ${inKilobytes(first)}, ${staticImports.length} imports`,
    },
    {
      met: all <= budget.allScript,
      says: `all script of a session ${inKilobytes(budget.allScript)} brotli at most: ${inKilobytes(all)}`,
    },
    {
      met: over <= patience.overFloor,
      says: `first question at most ${patience.overFloor} ms after the floor's: ${inMilliseconds(over)}`,
    },
    {
      met: task <= patience.task,
      says: `no task over ${patience.task} ms: ${task ? inMilliseconds(task) : "none"}`,
    },
    { met: shift < 0.0005, says: `layout shift while loading 0.000: ${shift.toFixed(3)}` },
    {
      met: fewest >= 15 && median <= patience.medianTap && worst <= patience.worstTap,
      says: `next question ${patience.medianTap} ms after a tap in the median, ${patience.worstTap} ms at worst: ${inMilliseconds(median)}, ${inMilliseconds(worst)} (${fewest} taps a session)`,
    },
  ];
}
