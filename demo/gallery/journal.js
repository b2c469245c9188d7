const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/**
 * The steps that lead to a place of the gallery, the first of all first. Places share the beginning of their ways: each
 * step names the one that it comes after.
 * @param {import("./journal.d.ts").Gallery} gallery
 * @param {number | null} last the number of the last step, counted from 0; null for none
 */
export function stepsTo(gallery, last) {
  const steps = [];
  for (let at = last; at !== null; ) {
    const [after, minute, event] = gallery.steps[at];
    steps.unshift({ minute, event });
    at = after;
  }
  return steps;
}

/**
 * A journal as a panel keeps it, of a session that was left at a place of the gallery a moment before `now`.
 * @param {import("./journal.d.ts").Gallery} gallery
 * @param {number | null} last as for `stepsTo`
 * @param {number} now milliseconds since 1970
 */
export function journalAt(gallery, last, now) {
  const steps = stepsTo(gallery, last);
  const began = Date.parse(gallery.began);
  const later = now - began - (steps.at(-1)?.minute ?? 0) * MINUTE_MS;
  const instant = (minute) => new Date(began + later + minute * MINUTE_MS).toISOString();
  return {
    format: 2,
    model: null,
    started: instant(0),
    entries: steps.map(({ minute, event }, place) => ({
      id: `log-${place + 1}`,
      at: instant(minute),
      event: moveDates(event, Math.round(later / DAY_MS)),
      seq: place + 1,
      by: "householder",
    })),
  };
}

/** Dates that somebody gave, such as when a filter was fitted, lie as far back as on the day that the gallery was written. */
function moveDates(given, days) {
  if (typeof given === "string" && /^\d{4}-\d\d-\d\d$/.test(given))
    return new Date(Date.parse(given) + days * DAY_MS).toISOString().slice(0, 10);
  if (Array.isArray(given)) return given.map((each) => moveDates(each, days));
  if (given === null || typeof given !== "object") return given;
  return Object.fromEntries(Object.entries(given).map(([name, each]) => [name, moveDates(each, days)]));
}
