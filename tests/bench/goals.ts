import { type Files, isScript, sizeOf } from "./built.ts";
import type { Measured } from "./report.ts";
import { inKilobytes, inMilliseconds, medianOf } from "./table.ts";

/**
 * What may have to come, in bytes of brotli: one file before the first question, script until the first check stands
 * on screen, script and data (texts, flow, drawings, styles) of a whole journey to a part, in one language.
 */
const goal = { firstFile: 12_000, firstCheck: 70_000, journey: 90_000, data: 40_000 };

/** What the script weighs at most as it is, so that nothing grows unseen while goals are not met. */
export const budget = {
  firstFile: 15_020,
  firstCheck: 81_240,
  journey: 119_690,
  journeyData: 51_380,
  words: 25_000,
  model: 68_000,
  desk: 118_720,
  /** Fetched once somebody asks for a person: what speaks to the relay, and all of it with screens, texts and rules. */
  live: 3000,
  livePerson: 10_700,
};

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
  const weigh = (names: string[]) =>
    names.reduce((sum, name) => sum + sizeOf(files.get(name) as Buffer).brotli, 0);
  const arrived = (ours[0]?.arrived ?? []).filter(({ name }) => files.has(name));
  const script = arrived.filter(({ name }) => isScript(name));
  const early = script.filter((each) => each.early).map(({ name }) => name);
  const first = weigh(early);
  // What comes in idle time is no part of what the first check has to wait for.
  const check = weigh([...early, ...script.map(({ name }) => name).filter((name) => /engine-/.test(name))]);
  const all = weigh(script.map(({ name }) => name));
  // Of the scenarios a journey needs one, the others come in idle time: the heaviest counts.
  const scenario = /^parts\/(?!words-)[a-z-]+-[a-z]{2}-[A-Z]{2}-[\da-f]{8}\.json$/;
  // Of the drawings it needs those of its turns, the others come ahead, once all else is there.
  const shown = new Set(ours[0]?.drawings);
  const isAhead = (name: string) => {
    const [, id] = /^parts\/picture-[a-z]{2}-[A-Z]{2}-(.+)-[\da-f]{8}\.json$/.exec(name) ?? [];
    return id !== undefined && !shown.has(id);
  };
  const besides = arrived.map(({ name }) => name).filter((name) => /^parts\/.*\.(json|css)$/.test(name));
  const ahead = weigh(besides.filter(isAhead));
  const named = besides.filter((name) => !isAhead(name));
  const scenarios = named.filter((name) => scenario.test(name)).map((name) => weigh([name]));
  const data = weigh(named.filter((name) => !scenario.test(name))) + Math.max(0, ...scenarios);
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
      met: early.length === 1 && staticImports.length === 0 && first <= goal.firstFile,
      says: `the first question is drawn by one file of ${inKilobytes(goal.firstFile)} brotli at most, without static imports: ${early.length} file, ${inKilobytes(first)}, ${staticImports.length} imports`,
    },
    {
      met: check <= goal.firstCheck,
      says: `script until the first check stands on screen ${inKilobytes(goal.firstCheck)} at most: ${inKilobytes(check)}`,
    },
    {
      met: all <= goal.journey,
      says: `script of a journey to a part ${inKilobytes(goal.journey)} at most: ${inKilobytes(all)}`,
    },
    {
      met: data <= goal.data,
      says: `texts, flow, drawings and styles of such a journey ${inKilobytes(goal.data)} at most: ${inKilobytes(data)}; ${inKilobytes(ahead)} of drawings for other turns come ahead besides`,
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
