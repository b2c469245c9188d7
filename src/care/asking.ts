import { metaOf, type Session } from "../session/index.ts";
import type { CareAnswer, CareQuestion, Texts } from "../turn/index.ts";
import type { Kept } from "./kept.ts";
import { endedAt } from "./note.ts";

/** What can be said to each ending that is asked about, and the text of each answer. */
const answers: Record<string, Partial<Record<CareAnswer, string>>> = {
  fixed: { yes: "yes", no: "again" },
  part: { yes: "now", no: "no", "not-yet": "not-yet" },
  professional: { yes: "now", "not-yet": "not-yet" },
};

const HOUR_MS = 3_600_000;

/** What is asked of an ending once so many hours have passed since it, or since it was put off; null for nothing. */
export function questionOf(kept: Kept, session: Session, texts: Texts, now: string): CareQuestion | null {
  const { outcome = "" } = metaOf(session);
  const can = Object.hasOwn(answers, outcome) ? answers[outcome] : undefined;
  if (!can) return null;
  const of = endedAt(session);
  const asked = kept.asked?.of === of ? kept.asked : null;
  if (asked && asked.answer !== "not-yet") return null;
  const hours = session.flow.limits["ask-again-hours"]?.value ?? Number.POSITIVE_INFINITY;
  if (!(Date.parse(now) - Date.parse(asked?.at ?? of) >= hours * HOUR_MS)) return null;
  const day = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" }).format(Date.parse(of));
  return {
    ask: texts(`care.ask.${outcome}`, { day }),
    answers: Object.entries(can).map(([id, text]) => ({
      id: id as CareAnswer,
      text: texts(`care.ask.${text}`),
    })),
  };
}

/** The same with what was answered. */
export function answered(kept: Kept, session: Session, answer: CareAnswer, now: string): Kept {
  return { ...kept, asked: { of: endedAt(session), answer, at: now } };
}

/** Whole days since the search ended, 0 and above. */
export const daysSince = (session: Session, now: string) =>
  Math.max(0, Math.floor((Date.parse(now) - Date.parse(endedAt(session))) / (24 * HOUR_MS)) || 0);
