import type { TurnMeta } from "../chart/index.ts";
import { needOf, type ReadingNeed } from "../instruments/index.ts";
import { askLimits } from "../measuring/index.ts";
import { memoryOf, type Session } from "../session/index.ts";

/**
 * What the instrument of a turn needs to know, all numbers from flows/limits.yaml; null where nothing is measured.
 * @param now RFC 3339; only its day matters
 */
export function readingNeedOf(session: Session, meta: TurnMeta, now: string): ReadingNeed | null {
  if (!meta.instrument) return null;
  const { findings, waits } = memoryOf(session);
  const [check] = meta.turn.split(".");
  return needOf(meta.instrument, {
    of: askLimits(session.flow.limits),
    region: session.flow.region,
    place: meta.place,
    now,
    since: Object.entries(waits).find(([turn]) => turn.startsWith(`${check}.`))?.[1] ?? null,
    earlier: (meta.against ?? []).flatMap((turn) => findings[turn]?.reading ?? []),
  });
}
