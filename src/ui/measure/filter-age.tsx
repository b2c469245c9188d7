import { useState } from "preact/hooks";
import { assessFilterAge, checkFittedWhen, type FittedWhen, readNumber } from "../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import type { Refusal } from "./field.tsx";
import { type Fitted, FittedFields } from "./fitted-fields.tsx";
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
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [when, setWhen] = useState<FittedWhen | null>(null);

  function edit(change: Partial<Fitted>) {
    setFitted({ ...fitted, ...change });
    setRefusal(null);
    setWhen(null);
  }

  function check() {
    const found = readFitted(fitted, need, texts);
    if ("text" in found) setRefusal(found);
    else setWhen(found);
  }

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        check();
      }}
    >
      <Choices
        legend={texts("measure.fitted-how")}
        options={(["date", "month", "season", "since-moving"] as const).map((by) => [
          by,
          texts(`measure.by-${by}`),
        ])}
        chosen={fitted.by}
        onChosen={(by) => edit({ by, month: by === "date" ? "" : fitted.month })}
      />
      <FittedFields fitted={fitted} edit={edit} refusal={refusal} texts={texts} />
      {!when && (
        <button type="submit" class="main">
          {texts("measure.show-age")}
        </button>
      )}
      {when && (
        <AgeResult when={when} need={need} texts={texts}>
          <button
            type="button"
            class="main"
            aria-disabled={busy}
            onClick={() => actions.measure(turn.turn, { kind: "filter-age", fitted: when })}
          >
            {texts("measure.use-age")}
          </button>
        </AgeResult>
      )}
    </form>
  );
}

/** What was typed as a day, month or season, or why it cannot be one. */
function readFitted(
  { by, day, month, year, season }: Fitted,
  need: Need,
  texts: Texts,
): FittedWhen | Refusal {
  const numbers = [by === "date" ? day : "1", by === "season" ? "1" : month, year];
  const read = numbers.map(readNumber);
  if (read.some((each) => each.kind === "empty")) return { text: texts(`measure.${by}-empty`) };
  const wrong = numbers.find((_, index) => {
    const each = read[index];
    return each?.kind !== "value" || each.value < 0 || !Number.isInteger(each.value);
  });
  if (wrong !== undefined) return { text: texts("measure.unreadable-date", { typed: wrong }) };
  const [d = "", m = "", y = ""] = read.map((each, index) =>
    `${each.kind === "value" ? each.value : ""}`.padStart(index === 2 ? 4 : 2, "0"),
  );
  const when: FittedWhen =
    by === "date"
      ? { by, date: `${y}-${m}-${d}` }
      : by === "season"
        ? { by, season, year: Number(y) }
        : { by, month: `${y}-${m}` };
  const problem = checkFittedWhen(when, need.today, { earliest: `${need.earliestYear}-01-01` });
  if (!problem) return when;
  return {
    text: texts(`measure.date-${problem.code}`, {
      typed: numbers.slice(by === "date" ? 0 : 2).join(" "),
      today: showDay(texts, need.today),
      year: need.earliestYear,
    }),
  };
}

type ResultProps = { when: FittedWhen; need: Need; texts: Texts; children: preact.ComponentChildren };

function AgeResult({ when, need: { today, limitMonths }, texts, children }: ResultProps) {
  const { months, verdict, dueOn } = assessFilterAge(
    { kind: "filter-age", fitted: when },
    today,
    limitMonths,
  );
  const [low, high] = [
    showNumber(texts, months.low),
    months.high === null ? "" : showNumber(texts, months.high),
  ];
  const age = texts(`measure.age-${high === "" ? "open" : low === high ? "exact" : "between"}`, {
    low,
    high,
  });
  const due = dueOn.latest
    ? ` ${texts(`measure.due-${verdict}`, { day: showDay(texts, dueOn.latest) })}`
    : "";
  return (
    <Result
      instrument="filter-age"
      verdict={verdict}
      said={texts("measure.age-said", { age, limit: limitMonths }) + due}
      scale={{
        from: 0,
        to: Math.max(2 * limitMonths, 1.2 * (months.high ?? months.low + limitMonths)),
        limit: limitMonths,
        better: "below",
        low: months.low,
        high: months.high,
        limitText: texts("measure.age-limit", { count: limitMonths }),
        valueText: age,
      }}
      texts={texts}
    >
      {children}
    </Result>
  );
}
