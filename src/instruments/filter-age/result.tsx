import { calendarFile } from "../../measuring/index.ts";
import type { ScreenProps } from "../../panel/frame/index.ts";
import { Bar, Reminder, Result, showDay, showNumber } from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { rangeText } from "../range.ts";
import { assessFilterLife } from "./assess.ts";
import type { FilterAgeReading } from "./reading.ts";

type Props = ScreenProps & { need: NeedOf<"filter-age">; reading: FilterAgeReading };

/** What is left of a filter's life: a verdict, a bar, a date, and that date for the person's own calendar. */
export function FilterLife({ need: { today, limits }, ...props }: Props) {
  const { reading, services, texts } = props;
  const { months, verdict, dueOn, litres, used, by } = assessFilterLife(reading, today, limits);
  const limit = limits.months;
  const [low, high] = [showNumber(texts, months.low), showNumber(texts, months.high ?? 0)];
  const form = months.high === null ? "open" : low === high ? "exact" : "between";
  const age = texts(`measure.age-${form}`, { low, high });
  const [least, most] = [showNumber(texts, litres?.low ?? 0, 0), showNumber(texts, litres?.high ?? 0, 0)];
  const said = [
    texts("measure.age-said", { age, limit }),
    litres &&
      texts(litres.high === null ? "measure.litres-open" : "measure.litres-said", {
        low: least,
        range: rangeText(texts, least, most),
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
      {...props}
      {...months}
      name="filter-age"
      verdict={verdict}
      shown={{}}
      said={said.filter(Boolean).join(" ")}
      limit={limit}
      better="below"
      limitText={texts("measure.age-limit", { count: limit })}
      valueText={age}
    >
      <Bar {...used} start={texts("measure.life-new")} end={texts("measure.life-due")} />
      {remindOn && <Reminder file={fileOf} name="filter" texts={texts} />}
    </Result>
  );
}
