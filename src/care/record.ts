import { addDays } from "../measuring/index.ts";
import type { FilterDue, Handover, Texts } from "../turn/index.ts";
import type { Kept } from "./kept.ts";

/** What is kept of a machine on a page, in words; without parts where that is nothing. */
export function recordOf({ model, serial, filterDue, searches }: Kept, texts: Texts, now: string): Handover {
  const dates = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" });
  const day = (at: string) => dates.format(Date.parse(at.length > 10 ? at : `${at}T12:00`));
  const [last] = searches.filter(({ readings }) => readings[0]);
  const due = filterOf(filterDue, now);
  const parts: [heading: string, lines: string[]][] = [
    [
      texts("carry.part.machine"),
      [model ? `${texts("part.model")} ${model}` : "", serial ? texts("carry.serial", { serial }) : ""],
    ],
    [
      texts("care.filter.title"),
      [due ? texts(due.isOver ? "care.filter.over" : "care.filter.due", { day: day(due.day) }) : ""],
    ],
    [texts("care.machine.searches"), searches.map(({ at, said }) => `${day(at)}: ${said.join(" · ")}`)],
    [texts("care.machine.readings"), last ? last.readings : []],
  ];
  return {
    title: day(now),
    parts: parts.flatMap(([heading, all]) => {
      const lines = all.filter(Boolean);
      return lines[0] ? [{ heading, lines }] : [];
    }),
  };
}

/** Until when a filter is good, as of now; both RFC 3339 or the day alone. */
export const filterOf = (due: string | null, now: string): FilterDue =>
  due === null ? null : { day: due, isOver: now.slice(0, 10) >= due };

/** Whether a filter that is due then is to be spoken of by now. @param days before it is due */
export const isFilterNear = (due: string | null, now: string, days: number): boolean =>
  due !== null && now.slice(0, 10) >= addDays(due, -days);
