/**
 * Now, as RFC 3339 with the person's own offset: the log keeps both the instant and the person's day. To the
 * millisecond, because a stopwatch reads it too: a whole second would be a tenth of the usual run.
 */
export function localNow(now: Date = new Date()): string {
  const offset = -now.getTimezoneOffset();
  const pad = (value: number) => String(Math.trunc(Math.abs(value))).padStart(2, "0");
  const shifted = new Date(now.getTime() + offset * 60_000).toISOString().slice(0, 23);
  return `${shifted}${offset < 0 ? "-" : "+"}${pad(offset / 60)}:${pad(offset % 60)}`;
}
