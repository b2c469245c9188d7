import type { TurnMeta } from "../chart/index.ts";
import {
  cubesLimits,
  filterLimits,
  flowLimits,
  iceLimits,
  limitOf,
  sealLimits,
  supplyLimits,
  temperatureLimits,
} from "../guide/index.ts";
import {
  assessFlow,
  assessSupply,
  assessTemperature,
  type Estimate,
  type Reading,
} from "../measurement/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { ReadingNeed } from "./turn.ts";

/**
 * What the instrument of a turn needs to know, all numbers from flows/limits.yaml; null where nothing is measured.
 * @param now RFC 3339; only its day matters
 */
export function readingNeedOf(session: Session, meta: TurnMeta, now: string): ReadingNeed | null {
  const { limits } = session.flow;
  switch (meta.instrument) {
    case "flow": {
      const supply = readingAt(session, meta.against ?? [], "supply");
      return {
        instrument: "flow",
        seconds: limitOf(limits, "flow-seconds"),
        limits: flowLimits(limits),
        supply: supply && assessSupply(supply, supplyLimits(limits)).verdict,
        before: readingAt(session, meta.against ?? [], "flow")?.runs ?? null,
        muchShare: limitOf(limits, "filter-share-much"),
      };
    }
    case "supply":
      return { instrument: "supply", limits: supplyLimits(limits) };
    case "temperature":
      return {
        instrument: "temperature",
        place: meta.place ?? "freezer",
        targetC: limitOf(limits, "freezer-target"),
        limits: temperatureLimits(limits),
      };
    case "filter-age":
      return {
        instrument: "filter-age",
        today: now.slice(0, 10),
        earliestYear: limitOf(limits, "earliest-year"),
        limits: filterLimits(limits),
      };
    case "ice":
      return { instrument: "ice", limits: iceLimits(limits), ...conditionsOf(session, meta.against ?? []) };
    case "cubes":
      return { instrument: "cubes", limits: cubesLimits(limits) };
    case "seal":
      return { instrument: "seal", limits: sealLimits(limits) };
    default:
      return null;
  }
}

/** The first of some turns that was measured, as a reading of a kind. */
function readingAt<Kind extends Reading["kind"]>(session: Session, turns: readonly string[], kind: Kind) {
  const { findings } = memoryOf(session);
  for (const turn of turns) {
    const reading = findings[turn]?.reading;
    if (reading?.kind === kind) return reading as Extract<Reading, { kind: Kind }>;
  }
  return null;
}

/** How cold it is and how much water runs, as far as it was measured: what a day's ice hangs on. */
function conditionsOf(
  session: Session,
  against: readonly string[],
): { celsius: Estimate | null; perSecond: Estimate | null } {
  const { limits } = session.flow;
  const cold = readingAt(session, against, "temperature");
  const flow = readingAt(session, against, "flow");
  return {
    celsius: cold && assessTemperature(cold, temperatureLimits(limits)).celsius,
    perSecond: flow && assessFlow(flow, flowLimits(limits)).perSecond,
  };
}
