import { filterDueOn } from "../instruments/index.ts";
import { addMonths } from "../measuring/index.ts";
import { memoryOf, metaOf, type Session } from "../session/index.ts";
import { type Evidence, type Texts, turnOf } from "../turn/index.ts";
import { type Kept, type KeptSearch, keptBounds } from "./kept.ts";
import type { CareRules } from "./rules.ts";

/** When the search ended: the instant of the last thing that somebody did. RFC 3339. */
export function endedAt({ log }: Session): string {
  const ofItself = ["wait-ended", "session-resumed", "prepared-left", "water-left", "trouble-returned"];
  return log.events.findLast(({ type }) => !ofItself.includes(type))?.at ?? log.started;
}

/** What is kept once a search has ended: how, its readings, the model number, and until when the filter is good. */
export function noteEnding(
  kept: Kept,
  session: Session,
  rules: CareRules,
  texts: Texts,
  serial: string | undefined,
): Kept {
  const { outcome } = metaOf(session);
  if (!outcome) return kept;
  const at = endedAt(session);
  const { heading, ending } = turnOf(session, texts, at);
  const model = memoryOf(session).model;
  const said = [heading, ending?.cause ?? "", ending?.part?.name ?? ""];
  const search: KeptSearch = {
    at,
    outcome,
    said: [...new Set(said.filter(Boolean))].map(cut),
    readings: readingsIn(session, ending?.evidence ?? [])
      .slice(-keptBounds.lines)
      .map(cut),
  };
  return {
    ...kept,
    ...(model && { model: cut(model) }),
    ...(serial && { serial: cut(serial) }),
    filterDue: filterDueBy(session, rules, at) ?? kept.filterDue,
    searches: [search, ...kept.searches.filter((one) => one.at !== at)].slice(0, keptBounds.searches),
  };
}

/** The readings of a search in words, each as it was last taken. */
function readingsIn(session: Session, evidence: readonly Evidence[]): string[] {
  const { findings } = memoryOf(session);
  return evidence.flatMap(({ turn, check, found }) =>
    findings[turn]?.reading ? [`${check}: ${found}`] : [],
  );
}

/** The day on which the filter is due after this search, where it was changed or its age was told; else null. */
function filterDueBy(session: Session, rules: CareRules, endedAt: string): string | null {
  const { filter } = rules;
  if (!filter) return null;
  const { fitted, cause, findings } = memoryOf(session);
  const isFixed = metaOf(session).outcome === "fixed";
  const isNew = [...fitted, ...(isFixed && cause ? [cause] : [])].some(
    (id) => session.flow.causes[id]?.part === filter.part,
  );
  if (isNew) return filterUntil(endedAt, rules, session);
  for (const { reading, at } of Object.values(findings)) {
    const due = reading ? filterDueOn(reading, session.flow.limits, at) : null;
    if (due) return due;
  }
  return null;
}

const cut = (text: string) => text.slice(0, keptBounds.text);

/** Until when a filter is good that is changed today; `now` RFC 3339. Null where the flow says nothing of filters. */
export function filterUntil(now: string, { filter }: CareRules, { flow }: Session): string | null {
  const months = filter ? flow.limits[filter.months]?.value : undefined;
  return months === undefined ? null : addMonths(now.slice(0, 10), months);
}
