import { useState } from "preact/hooks";
import { assessFilterAge, checkFittedWhen, type FittedWhen, readNumber } from "../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import { Form, useEntry } from "./entry.tsx";
import { entriesOf, type Fitted, FittedFields } from "./fitted-fields.tsx";
import { showDay, showNumber } from "./format.ts";
import { Result } from "./result.tsx";

type Need = Extract<ReadingNeed, { instrument: "filter-age" }>;

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
    const low = showNumber(texts, months.low);
    const high = showNumber(texts, months.high ?? 0);
    const age = texts(`measure.age-${months.high === null ? "open" : low === high ? "exact" : "between"}`, {
      low,
      high,
    });
    const day = showDay(texts, dueOn.latest ?? today);
    return (
      <Result
        instrument="filter-age"
        verdict={verdict}
        said={`${texts("measure.age-said", { age, limit })} ${texts(`measure.due-${verdict}`, { day })}`}
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
        options={(Object.keys(entriesOf) as FittedWhen["by"][]).map((by) => [by, texts(`measure.by-${by}`)])}
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
function readFitted(fitted: Fitted, { today, earliestYear: year }: Need, texts: Texts): FittedWhen | string {
  const { by, season } = fitted;
  let date = "";
  for (const entry of entriesOf[by]) {
    const typed = fitted[entry];
    const read = readNumber(typed);
    if (read.kind === "empty") return texts(`measure.${by}-empty`);
    const digits = read.kind === "value" ? `${read.value}` : typed;
    if (!/^\d{1,4}$/.test(digits)) return texts("measure.unreadable-date", { typed });
    // Largest first, as ISO 8601 wants it.
    date = digits.padStart(entry === "year" ? 4 : 2, "0") + (date && "-") + date;
  }
  const when: FittedWhen =
    by === "date" ? { by, date } : by === "season" ? { by, season, year: Number(date) } : { by, month: date };
  const problem = checkFittedWhen(when, today, { earliest: `${year}-01-01` });
  return problem ? texts(`measure.date-${problem.code}`, { today: showDay(texts, today), year }) : when;
}
