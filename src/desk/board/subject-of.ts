import type { Subject } from "../../advice/index.ts";
import type { Session } from "../../session/index.ts";

/** The scenario that a session is in, as its adviser sees it; null in the opening. */
export function subjectOf({ guide, chart }: Session): Subject | null {
  return [...guide.loaded.values()].find((loaded) => loaded.chart === chart) ?? null;
}
