import type { SealReading } from "./reading.ts";

/** How the paper felt, in the order of the buttons. */
export const answers = ["grips", "drags", "slips"] as const;

export type Door = SealReading["door"];

/** A place of the survey; what was skipped is not asked for again. */
export type Spot = (typeof answers)[number] | "skipped" | "untried";

const shapes: Record<Spot, string> = {
  grips: "M7 12.5l3.5 3.5 6.5-8",
  drags: "M12 3a9 9 0 0 1 0 18z",
  slips: "M8 8l8 8M16 8l-8 8",
  skipped: "M9 12h6",
  untried: "",
};

/** So many places from a text with a word for each; whatever is none was not tried. */
export function readSpots(text: string, count: number): Spot[] {
  const words = text.split(" ");
  return Array.from({ length: count }, (_, place) => {
    const word = words[place] ?? "";
    return Object.hasOwn(shapes, word) ? (word as Spot) : "untried";
  });
}

/**
 * The places of a second survey: those that held are carried over as they were found, those that slipped are asked
 * again. What was left out is asked again only where the first survey could say nothing without it. Null where that asks
 * for no place: then all are asked.
 */
export function carry(before: SealReading["spots"], verdict: string, count: number): Spot[] | null {
  const spots = Array.from({ length: count }, (_, place): Spot => {
    const found = before[place] ?? (verdict === "unclear" ? "untried" : "skipped");
    return found === "slips" ? "untried" : found;
  });
  return spots.includes("untried") ? spots : null;
}

/** The sign of a place: a tick, half a disc, a cross, a dash or an empty ring, each with a fill of its own. */
export function Sign({ spot }: { spot: Spot }) {
  return (
    <svg class={`sign ${spot}`} viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="9" />
      <path d={shapes[spot]} />
    </svg>
  );
}
