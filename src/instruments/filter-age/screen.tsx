import { useState } from "preact/hooks";
import { fullYear, readNumber } from "../../measuring/index.ts";
import type { ScreenProps } from "../../panel/frame/index.ts";
import {
  MeasureChoices,
  MeasureForm,
  showDay,
  useEntries,
  useEntry,
  useKept,
} from "../../panel/screens/reading/index.ts";
import type { Texts } from "../../turn/index.ts";
import type { NeedOf } from "../index.ts";
import { checkFilterUse, checkFittedWhen } from "./check.ts";
import { entriesOf, type Fitted, FittedFields, keptFitted } from "./fitted-fields.tsx";
import type { FilterAgeReading, FilterUse, FittedWhen } from "./reading.ts";
import { FilterLife } from "./result.tsx";

type Props = ScreenProps & { need: NeedOf<"filter-age"> };
type Habit = "unknown" | FilterUse["habit"];

const habits: Habit[] = ["unknown", "ice", "glasses", "all"];

/** How old the water filter is and how much ran through it, said as well as the person knows. */
export function Screen(props: Props) {
  const {
    need,
    texts,
    turn: { turn },
    services: { draft },
  } = props;
  const [fitted, setFitted] = useState(() => keptFitted(draft.read(turn)));
  const [habit, setHabit] = useKept<Habit>(props, "habit", "unknown", habits);
  const { refusal, refuse } = useEntry();
  const use = useEntries<"people" | "capacity", FilterAgeReading>("people", props);
  const { accepted, accept, edit } = use;
  const change = (part: Partial<Fitted>) =>
    edit(() => {
      refuse("");
      for (const [name, entered] of Object.entries(part)) draft.keep(turn, name, entered);
      setFitted((before) => ({ ...before, ...part }));
    });

  function check() {
    const found = readFitted(fitted, need, texts);
    if (typeof found === "string") return refuse(found);
    // In full, so that nobody has to guess how '25' was taken.
    setFitted((before) => ({ ...before, year: fullYear(before.year.trim(), need.today) }));
    const drawn = habit === "unknown" ? undefined : readUse(habit);
    if (drawn !== null) accept({ kind: "filter-age", fitted: found, ...(drawn ? { use: drawn } : {}) });
  }

  function readUse(known: FilterUse["habit"]): FilterUse | null {
    const typed = use.read("people");
    const print = typed && (use.isEmpty("capacity") ? {} : use.read("capacity"));
    if (!typed || !print) return null;
    const drawn: FilterUse = { ...typed, habit: known, ...print };
    const problem = checkFilterUse(drawn, need.limits);
    if (problem) use.refuseRange(problem, problem.field);
    return problem ? null : drawn;
  }

  return (
    <MeasureForm
      onSent={check}
      result={accepted && <FilterLife {...props} reading={accepted} />}
      ask={texts("measure.show-age")}
      texts={texts}
    >
      <MeasureChoices
        legend="fitted-how"
        values={Object.keys(entriesOf) as FittedWhen["by"][]}
        named={(by) => `by-${by}`}
        chosen={fitted.by}
        onChosen={(by) => change({ by })}
        texts={texts}
      />
      <FittedFields
        order={need.region["date-order"]}
        fitted={fitted}
        change={change}
        refusal={refusal}
        texts={texts}
      />
      <MeasureChoices
        legend="habit"
        values={habits}
        named={(each) => `habit-${each}`}
        chosen={habit}
        onChosen={(chosen) => edit(() => setHabit(chosen))}
        texts={texts}
      />
      {habit !== "unknown" && (
        <>
          {use.field("people", { label: texts("measure.people-label"), keys: "numeric" })}
          {use.field("capacity", {
            label: texts("measure.capacity-label", { litres: need.limits.litres }),
            unit: texts("measure.unit-l"),
          })}
        </>
      )}
    </MeasureForm>
  );
}

/** What was typed as a day, month or season, or in words why it cannot be one. */
function readFitted(
  fitted: Fitted,
  { today, earliestYear: year }: Props["need"],
  texts: Texts,
): FittedWhen | string {
  const { by, season } = fitted;
  let date = "";
  for (const entry of entriesOf[by]) {
    const typed = fitted[entry];
    const read = readNumber(typed);
    if (read.kind === "empty") return texts(`measure.${by}-empty`);
    const isYear = entry === "year";
    // As it was typed: '05' is a year of two digits.
    const text =
      read.kind === "value" && !(isYear && /^\s*\d\d\s*$/.test(typed)) ? `${read.value}` : typed.trim();
    const digits = isYear ? fullYear(text, today) : text;
    if (!/^\d{1,4}$/.test(digits)) return texts("measure.unreadable-date", { typed });
    // Largest first, as ISO 8601 wants it.
    date = digits.padStart(isYear ? 4 : 2, "0") + (date && "-") + date;
  }
  const when: FittedWhen =
    by === "date" ? { by, date } : by === "season" ? { by, season, year: Number(date) } : { by, month: date };
  const problem = checkFittedWhen(when, today, { earliest: `${year}-01-01` });
  return problem ? texts(`measure.date-${problem.code}`, { today: showDay(texts, today), year }) : when;
}
