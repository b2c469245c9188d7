import { useState } from "preact/hooks";
import { assessFilterAge, checkFittedWhen, type FittedWhen, readNumber } from "../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import { Form, useEntry } from "./entry.tsx";
import { type Fitted, FittedFields } from "./fitted-fields.tsx";
import { showDay, showNumber } from "./format.ts";
import { Result } from "./result.tsx";

type Need = Extract<ReadingNeed, { instrument: "filter-age" }>;

const ways = ["date", "month", "season", "since-moving"] as const;

/** How old the water filter is, said as well as the person knows it. */
export function FilterAge({ need, turn, actions, texts, busy }: ScreenProps & { need: Need }) {
  const [fitted, setFitted] = useState<Fitted>({
    by: "month",
    day: "",
    month: "",
    year: "",
    season: "spring",
  });
  const { refusal, refuse, accepted, accept, edit } = useEntry<FittedWhen>();
  const change = (part: Partial<Fitted>) => edit(() => setFitted({ ...fitted, ...part }));

  function check() {
    const found = readFitted(fitted, need, texts);
    if (typeof found === "string") refuse(found);
    else accept(found);
  }

  function resultOf(when: FittedWhen) {
    const { today, limitMonths: limit } = need;
    const { months, verdict, dueOn } = assessFilterAge({ kind: "filter-age", fitted: when }, today, limit);
    const [low, high] = [months.low, months.high ?? 0].map((each) => showNumber(texts, each));
    const kind = months.high === null ? "open" : low === high ? "exact" : "between";
    const age = texts(`measure.age-${kind}`, { low: low ?? "", high: high ?? "" });
    const day = showDay(texts, dueOn.latest ?? today);
    return (
      <Result
        instrument="filter-age"
        verdict={verdict}
        said={`${texts("measure.age-said", { age, limit })} ${texts(`measure.due-${verdict}`, { day })}`}
        from={0}
        to={Math.max(2 * limit, 1.2 * (months.high ?? months.low + limit))}
        limit={limit}
        better="below"
        {...months}
        limitText={texts("measure.age-limit", { count: limit })}
        valueText={age}
        texts={texts}
        busy={busy}
        onUsed={() => actions.measure(turn.turn, { kind: "filter-age", fitted: when })}
      />
    );
  }

  return (
    <Form onSent={check}>
      <Choices
        legend={texts("measure.fitted-how")}
        options={ways.map((by) => [by, texts(`measure.by-${by}`)])}
        chosen={fitted.by}
        onChosen={(by) => change({ by })}
      />
      <FittedFields fitted={fitted} change={change} refusal={refusal} texts={texts} />
      {accepted ? (
        resultOf(accepted)
      ) : (
        <button type="submit" class="main">
          {texts("measure.show-age")}
        </button>
      )}
    </Form>
  );
}

/** What was typed as a day, month or season, or in words why it cannot be one. */
function readFitted({ by, season, ...typed }: Fitted, need: Need, texts: Texts): FittedWhen | string {
  const asked = { date: [typed.day, typed.month, typed.year], season: [typed.year] };
  const entries = by === "date" || by === "season" ? asked[by] : [typed.month, typed.year];
  const numbers: number[] = [];
  for (const entry of entries) {
    const read = readNumber(entry);
    if (read.kind === "empty") return texts(`measure.${by}-empty`);
    if (read.kind === "unreadable" || !/^\d{1,4}$/.test(`${read.value}`))
      return texts("measure.unreadable-date", { typed: entry });
    numbers.unshift(read.value);
  }
  // Largest first, as ISO 8601 wants it.
  const date = numbers.map((number, index) => `${number}`.padStart(index ? 2 : 4, "0")).join("-");
  const when: FittedWhen =
    by === "date" ? { by, date } : by === "season" ? { by, season, year: Number(date) } : { by, month: date };
  const problem = checkFittedWhen(when, need.today, { earliest: `${need.earliestYear}-01-01` });
  return problem
    ? texts(`measure.date-${problem.code}`, { today: showDay(texts, need.today), year: need.earliestYear })
    : when;
}
