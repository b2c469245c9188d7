import { useState } from "preact/hooks";
import { calendarFile } from "../../measuring/index.ts";
import type { Care, Texts } from "../../turn/index.ts";
import { Reminder, showDay } from "../screens/reading/index.ts";

type Props = { care: Care; now(): string; texts: Texts };

/** Until when the water filter is good, with that day for the person's own calendar, and that it was changed today. */
export function FilterLine({ care, now, texts }: Props) {
  const [, redraw] = useState(0);
  const due = care.filter();
  if (!care.hasFilter()) return null;
  const fileOf = () =>
    calendarFile({
      uid: `filter-${due?.day}@fridgeside`,
      stamp: now(),
      starts: { day: due?.day ?? now().slice(0, 10) },
      title: texts("measure.reminder-filter"),
      notes: texts("measure.reminder-filter-notes"),
    });
  return (
    <details>
      <summary>{texts("care.filter.title")}</summary>
      <p role="status">
        {due
          ? texts(due.isOver ? "care.filter.over" : "care.filter.due", { day: showDay(texts, due.day) })
          : texts("care.filter.unknown")}
      </p>
      {due && !due.isOver && <Reminder file={fileOf} name="filter" texts={texts} />}
      <button
        type="button"
        onClick={() => {
          care.filterChanged();
          redraw((times) => times + 1);
        }}
      >
        {texts("care.filter.changed")}
      </button>
    </details>
  );
}
