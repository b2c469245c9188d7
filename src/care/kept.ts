/** A search that has ended: when (RFC 3339), how, and that in words, as they were said then. */
export type KeptSearch = { at: string; outcome: string; said: string[]; readings: string[] };

/** What is kept of one machine beyond its searches; it lies apart from them, so that 'start again' leaves it. */
export type Kept = {
  model: string | null;
  serial: string | null;
  /** 'YYYY-MM-DD'; the day on which the water filter is due, the earliest of several. */
  filterDue: string | null;
  /** The newest first. */
  searches: KeptSearch[];
  /** What was said when it was last asked: of which search, by its `at`, and when. */
  asked: { of: string; answer: string; at: string } | null;
};

/** What is kept of a machine, at most; all of it judgement. */
export const keptBounds = {
  /** Searches that have ended; a machine with more is past mending. */
  searches: 10,
  /** Readings of one search. */
  lines: 12,
  /** Characters of a line. */
  text: 400,
  /** Characters of an instant. */
  time: 40,
  /** Characters of all of it. Far more than the above hold: anything longer was not written here. */
  whole: 60_000,
} as const;

export const nothingKept: Kept = { model: null, serial: null, filterDue: null, searches: [], asked: null };

/** Reads what was kept, by hand: it is drawn as text and decides nothing. Anything else counts as nothing. Never throws. */
export function parseKept(text: string | null): Kept {
  try {
    if (text === null || text.length > keptBounds.whole) return nothingKept;
    const { model, serial, filterDue, searches, asked } = JSON.parse(text);
    return {
      model: textIn(model),
      serial: textIn(serial),
      filterDue: isDay(filterDue) ? filterDue : null,
      searches: (Array.isArray(searches) ? searches : []).slice(0, keptBounds.searches).flatMap(searchIn),
      asked:
        isInstant(asked?.of) && isInstant(asked.at) && textIn(asked.answer)
          ? { of: asked.of, answer: asked.answer, at: asked.at }
          : null,
    };
  } catch {
    return nothingKept;
  }
}

function searchIn(value: unknown): KeptSearch[] {
  const { at, outcome, said, readings } = (value ?? {}) as Record<string, unknown>;
  return isInstant(at) && textIn(outcome)
    ? [{ at, outcome: outcome as string, said: linesIn(said), readings: linesIn(readings) }]
    : [];
}

const linesIn = (value: unknown): string[] =>
  Array.isArray(value) ? value.slice(0, keptBounds.lines).flatMap((one) => textIn(one) ?? []) : [];

/** A text that could have been written here; else null. */
const textIn = (value: unknown): string | null =>
  typeof value === "string" && value.length > 0 && value.length <= keptBounds.text ? value : null;

const isDay = (value: unknown): value is string =>
  typeof value === "string" && /^\d{4}-\d\d-\d\d$/.test(value) && !Number.isNaN(Date.parse(value));

const isInstant = (value: unknown): value is string =>
  typeof value === "string" && value.length <= keptBounds.time && !Number.isNaN(Date.parse(value));
