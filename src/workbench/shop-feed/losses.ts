/** Why something of a feed cannot be used. A `row` is left out, or one `model` of it; with a `note` all is kept. */
export type LossOf = "row" | "model" | "note";

/** One reason, how often, and the first places; `found` is what stands there, shortened. */
export type Loss = {
  of: LossOf;
  message: string;
  count: number;
  places: { line: number; found: string }[];
};

/** Reasons, each once. */
export type Losses = {
  readonly all: readonly Loss[];
  add(of: LossOf, message: string, line: number, found?: string): void;
};

const mostPlaces = 3;
const longestFound = 60;
/** Reasons beyond this are one reason: their texts come from the feed. */
const mostReasons = 200;

export function createLosses(): Losses {
  const all: Loss[] = [];
  const byReason = new Map<string, Loss>();
  return {
    all,
    add(of, message, line, found = "") {
      const key = `${of}\0${message}`;
      let loss = byReason.get(key) ?? byReason.get(`${of}\0`);
      if (!loss) {
        const isMany = all.length >= mostReasons;
        loss = { of, message: isMany ? "Other reasons." : message, count: 0, places: [] };
        byReason.set(isMany ? `${of}\0` : key, loss);
        all.push(loss);
      }
      loss.count++;
      const shown = found.length > longestFound ? `${found.slice(0, longestFound)}…` : found;
      if (loss.places.length < mostPlaces) loss.places.push({ line, found: shown.replace(/\s+/g, " ") });
    },
  };
}
