import { assessFilterLife, calendarFile, type FilterAgeReading } from "../../../measurement/index.ts";
import type { ReadingNeed } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Bar } from "./bar.tsx";
import { showDay, showNumber } from "./format.ts";
import { Reminder } from "./reminder.tsx";
import { Result } from "./result.tsx";

type Props = ScreenProps & {
  need: Extract<ReadingNeed, { instrument: "filter-age" }>;
  reading: FilterAgeReading;
};

/** What is left of a filter's life: a verdict, a bar, a date, and that date for the person's own calendar. */
export function FilterLife({ need, reading, turn, actions, services, texts, busy }: Props) {
  const { today, limits } = need;
  const { months, verdict, dueOn, litres, used, by } = assessFilterLife(reading, today, limits);
  const limit = limits.months;
  const [low, high] = [showNumber(texts, months.low), showNumber(texts, months.high ?? 0)];
  const form = months.high === null ? "open" : low === high ? "exact" : "between";
  const age = texts(`measure.age-${form}`, { low, high });
  const said = [
    texts("measure.age-said", { age, limit }),
    litres &&
      texts(litres.high === null ? "measure.litres-open" : "measure.litres-said", {
        low: showNumber(texts, litres.low, 0),
        high: showNumber(texts, litres.high ?? 0, 0),
        limit: reading.use?.capacity ?? limits.litres,
      }),
    !litres && texts("measure.litres-unknown"),
    dueOn.latest && texts(`measure.due-${verdict}`, { day: showDay(texts, dueOn.latest) }),
    litres && texts(`measure.first-${by}`),
  ];
  // A reminder too early is a filter too soon; one too late is stale water: the earliest day that is still to come.
  const remindOn = [dueOn.earliest, dueOn.latest].find((day) => day !== null && day > today);
  const fileOf = () =>
    calendarFile({
      uid: `filter-${remindOn}@fridgeside`,
      stamp: services.now(),
      starts: { day: remindOn ?? today },
      // Litres run at another pace each time: only months come round by the calendar.
      ...(by === "months" ? { everyMonths: limit } : {}),
      title: texts("measure.reminder-filter"),
      notes: texts("measure.reminder-filter-notes"),
    });
  return (
    <Result
      instrument="filter-age"
      verdict={verdict}
      said={said.filter(Boolean).join(" ")}
      limit={limit}
      better="below"
      {...months}
      limitText={texts("measure.age-limit", { count: limit })}
      valueText={age}
      texts={texts}
      busy={busy}
      onUsed={() => actions.measure(turn.turn, reading)}
    >
      <Bar {...used} start={texts("measure.life-new")} end={texts("measure.life-due")} />
      {remindOn && <Reminder file={fileOf} name="filter" texts={texts} />}
    </Result>
  );
}
