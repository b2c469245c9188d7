import { type Files, isScript, sizeOf } from "./built.ts";
import type { Measured } from "./report.ts";
import { inKilobytes, inMilliseconds, medianOf } from "./table.ts";

/** What the script may weigh, in bytes of brotli. */
export const budget = { firstFile: 12_000, allScript: 90_000 };

/**
 * What a person may have to wait, in milliseconds. A tap that is answered in 200 ms is the web's own 'good' (Interaction
 * to Next Paint, web.dev); a task over 50 ms is a long one (W3C Long Tasks).
 */
const patience = { overFloor: 100, task: 100, longTasks: 3, medianTap: 2, worstTap: 200 };

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
  const long = Math.max(...ours.map((visit) => visit.longTasks.length));
  const shift = Math.max(...ours.map((visit) => visit.shift.all));
  const taps = ours.flatMap((visit) => visit.taps);
  const fewest = Math.min(...ours.map((visit) => visit.taps.length));
  const [ratio, worst] = [medianOf(taps) / medianOf(floor.flatMap((visit) => visit.taps)), Math.max(...taps)];
  const atOnce = medianOf(ours.map((visit) => visit.firstTap));
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
      met: task <= patience.task && long <= patience.longTasks,
      says: `after the first question no task over ${patience.task} ms and ${patience.longTasks} over 50 ms at most: ${inMilliseconds(task)}, ${long} in a session`,
    },
    { met: shift < 0.0005, says: `layout shift without input 0.000: ${shift.toFixed(3)}` },
    {
      met: atOnce <= patience.worstTap,
      says: `a tap made at once answered in ${patience.worstTap} ms: ${inMilliseconds(atOnce)}`,
    },
    {
      met: fewest >= 15 && ratio <= patience.medianTap && worst <= patience.worstTap,
      says: `next question at most ${patience.medianTap} times as long after a tap as the floor's in the median, ${patience.worstTap} ms at worst: ${ratio.toFixed(1)}, ${inMilliseconds(worst)} (${fewest} taps a session)`,
    },
  ];
}
