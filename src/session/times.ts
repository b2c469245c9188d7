import type { Log } from "./log.ts";

const MINUTE_MS = 60_000;

/**
 * The log with times that can be true: none later than `now`, none before the one it follows. No event is dropped.
 * A clock that ran ahead moves as a whole run, so that what lay between two events stays as long as it was; the last
 * of the run comes to lie at the next event that can be true, or at `now`.
 * @param now RFC 3339
 * @param slip minutes by which a clock is set right every day; so little moves the whole log
 */
export function straightenTimes(log: Log, now: string, slip = 0): Log {
  const latest = Date.parse(now);
  const texts = [log.started, ...log.events.map(({ at }) => at)];
  const written = texts.map((text) => Date.parse(text));
  const ahead = Math.max(...written) - latest;
  const held =
    ahead <= slip * MINUTE_MS ? written.map((time) => time - Math.max(0, ahead)) : pullBack(written, latest);
  let before = 0;
  const times = held.map((time) => {
    before = Math.max(before, time);
    return before;
  });
  if (times.every((time, place) => time === written[place])) return log;
  const [started = log.started, ...ats] = times.map((time, place) =>
    time === written[place] ? (texts[place] as string) : writeTime(time, texts[place] as string),
  );
  return {
    ...log,
    started,
    events: log.events.map((event, place) => ({ ...event, at: ats[place] ?? event.at })),
  };
}

/** Times after `latest`, run by run, moved so far back that the last of each run lies where it can. */
function pullBack(written: number[], latest: number): number[] {
  const times = [...written];
  let bound = latest;
  let shift: number | null = null;
  for (let place = times.length - 1; place >= 0; place--) {
    const time = times[place] as number;
    if (time <= latest) {
      bound = time;
      shift = null;
      continue;
    }
    shift ??= time - bound;
    times[place] = Math.min(time - shift, bound);
  }
  return times;
}

/** An instant as RFC 3339, with the offset of `like`: the person's own day stays theirs. */
function writeTime(time: number, like: string): string {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(like) ?? [];
  const offset = (sign === "-" ? -1 : 1) * (Number(hours ?? 0) * 60 + Number(minutes ?? 0));
  const local = new Date(time + offset * MINUTE_MS).toISOString().slice(0, -1);
  return `${local}${sign ? `${sign}${hours}:${minutes}` : "Z"}`;
}
