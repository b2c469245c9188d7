import { useId } from "preact/hooks";
import type { DateOrder } from "../../measuring/index.ts";
import { Field, localeOf, MeasureChoices, type Refusal } from "../../panel/screens/reading/index.ts";
import { monthNames, type Texts } from "../../turn/index.ts";
import type { FittedWhen, Season } from "./reading.ts";

type Entry = "day" | "month" | "year";

/** What was typed or picked for 'when was it fitted', kept whichever way of saying it is shown. */
export type Fitted = { by: FittedWhen["by"]; season: Season } & Record<Entry, string>;

/** The entries that each way of saying when needs, smallest first. */
export const entriesOf: Record<FittedWhen["by"], readonly Entry[]> = {
  date: ["day", "month", "year"],
  month: ["month", "year"],
  season: ["year"],
  "since-moving": ["month", "year"],
};

const seasons: Season[] = ["spring", "summer", "autumn", "winter"];

/** What was said of it before a reload, as far as it still can be said. */
export function keptFitted(kept: Partial<Record<string, string>>): Fitted {
  const { by = "", day = "", month = "", year = "", season } = kept;
  return {
    by: Object.hasOwn(entriesOf, by) ? (by as Fitted["by"]) : "month",
    day,
    month,
    year,
    season: seasons.find((each) => each === season) ?? "spring",
  };
}

type Props = {
  order: DateOrder;
  fitted: Fitted;
  change(part: Partial<Fitted>): void;
  refusal: Refusal;
  texts: Texts;
};

/** The entries that one way of saying when needs, in the order of the reader's region. */
export function FittedFields({ order: all, fitted, change, refusal, texts }: Props) {
  const { by } = fitted;
  const order = (all.split(" ") as Entry[]).filter((each) => entriesOf[by].includes(each));
  return (
    <>
      {by === "season" && (
        <MeasureChoices
          legend="season"
          values={seasons}
          named={(each) => each}
          chosen={fitted.season}
          onChosen={(season) => change({ season })}
          texts={texts}
        />
      )}
      <div class="side-by-side">
        {order.map((entry) =>
          entry === "month" && by !== "date" ? (
            <MonthField key={by} month={fitted.month} onChosen={(month) => change({ month })} texts={texts} />
          ) : (
            <Field
              key={entry}
              label={texts(`measure.${entry}`)}
              typed={fitted[entry]}
              onTyped={(typed) => change({ [entry]: typed })}
              refusal={entry === order[0] || by !== "date" ? refusal : undefined}
              keys="numeric"
              short
            />
          ),
        )}
      </div>
    </>
  );
}

function MonthField({
  month,
  onChosen,
  texts,
}: {
  month: string;
  onChosen(month: string): void;
  texts: Texts;
}) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{texts("measure.month")}</label>
      <select id={id} value={Number(month) || ""} onChange={(event) => onChosen(event.currentTarget.value)}>
        <option value="">{texts("measure.month-pick")}</option>
        {monthNames(localeOf(texts)).map((name, index) => (
          <option key={name} value={index + 1}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}
