import { careRules, careTexts } from "virtual:care";
import {
  answered,
  daysSince,
  endedAt,
  filterOf,
  filterUntil,
  isFilterNear,
  isForMachine,
  type Kept,
  noteEnding,
  nothingKept,
  parseKept,
  questionOf,
  recordOf,
  stepsOf,
} from "../care/index.ts";
import type { FlowSlice } from "../chart/index.ts";
import { metaOf, type Session } from "../session/index.ts";
import type { Actions, Care, Draft, Texts, View } from "../turn/index.ts";

/** What is shown after an ending, and the record of the machine: a file of its own with its texts. */
export { AfterCare, MachinePage } from "../panel/care/index.ts";
export { careTexts };

export type CareMeans = {
  /** Where the record lies in the browser's own storage. */
  key: string;
  /** Of the opening, which every session starts with. */
  flow: Pick<FlowSlice, "greets" | "limits">;
  /** The session that is shown, and its turn. */
  session(): Session;
  turn(): string;
  draft(): Draft;
  texts: Texts;
  now(): string;
  actions(): Pick<Actions, "reportIce" | "reportTrouble">;
  /** Told what somebody answered a day or more after an ending. */
  lasted(works: boolean, days: number): void;
};

export type OpenedCare = {
  /** What the screens ask of it. */
  care: Care;
  /** Keeps what the search that has ended adds, once. */
  keep(): void;
  remind(view: View): View;
  /** Forgets all of it. Returns what brings it back. */
  clear(): () => void;
};

/** The record of one machine, what is asked a day after an ending, and what keeps the machine well. */
export function openCare({
  key,
  flow,
  session,
  turn,
  draft,
  texts,
  now,
  actions,
  lasted,
}: CareMeans): OpenedCare {
  const kept = createKept(key, () => localStorage);
  const care: Care = {
    question: () => questionOf(kept.read(), session(), texts, now()),
    answer(answer) {
      const shown = session();
      kept.write(answered(kept.read(), shown, answer, now()));
      if (answer === "not-yet") return;
      lasted(answer === "yes", daysSince(shown, now()));
      if (answer === "no") actions().reportTrouble();
      else if (metaOf(shown).outcome !== "fixed") actions().reportIce();
    },
    steps: (time) => stepsOf(careRules, time, session(), texts),
    filter: () => filterOf(kept.read().filterDue, now()),
    hasFilter: () => careRules.filter !== null && isForMachine(careRules.filter, session()),
    filterChanged: () => kept.write({ ...kept.read(), filterDue: filterUntil(now(), careRules, session()) }),
    machine: () => recordOf(kept.read(), texts, now()),
  };
  return {
    care,
    keep() {
      const [before, shown] = [kept.read(), session()];
      if (!metaOf(shown).outcome || before.searches.some(({ at }) => at === endedAt(shown))) return;
      kept.write(noteEnding(before, shown, careRules, texts, draft().read(turn()).serial));
    },
    remind(view) {
      const days = flow.limits["filter-remind-days"]?.value ?? 0;
      const { filterDue } = view.turn?.turn === flow.greets ? kept.read() : nothingKept;
      const due = isFilterNear(filterDue, now(), days) ? filterOf(filterDue, now()) : null;
      if (!due) return view;
      const dates = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" });
      const day = dates.format(Date.parse(`${due.day}T12:00`));
      const text = texts(due.isOver ? "care.filter.over" : "care.filter.due", { day });
      return { ...view, notices: [...view.notices, { id: "filter-due", text }] };
    },
    clear() {
      const before = kept.read();
      kept.write(nothingKept);
      return () => kept.write(before);
    },
  };
}

/** The browser's own storage, with a copy in memory for where it is denied. */
function createKept(key: string, place: () => Storage) {
  let copy: Kept | null = null;
  return {
    read(): Kept {
      if (copy) return copy;
      try {
        return parseKept(place().getItem(key));
      } catch {
        return nothingKept;
      }
    },
    write(next: Kept): void {
      try {
        if (next === nothingKept) place().removeItem(key);
        else place().setItem(key, JSON.stringify(next));
        copy = null;
      } catch {
        copy = next;
      }
    },
  };
}
