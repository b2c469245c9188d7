import { useId } from "preact/hooks";
import type { FittedWhen, Season } from "../../measurement/index.ts";
import type { Texts } from "../../session/index.ts";
import { Choices } from "./choices.tsx";
import { Field, type Refusal } from "./field.tsx";
import { localeOf } from "./format.ts";

/** What was typed or picked for 'when was it fitted', kept whichever way of saying it is shown. */
export type Fitted = { by: FittedWhen["by"]; day: string; month: string; year: string; season: Season };

const seasons: Season[] = ["spring", "summer", "autumn", "winter"];

type Props = { fitted: Fitted; change(part: Partial<Fitted>): void; refusal: Refusal; texts: Texts };

/** The entries that one way of saying when needs, in the order of the reader's country. */
export function FittedFields({ fitted, change, refusal, texts }: Props) {
  const number = (part: "day" | "month" | "year", refused: Refusal | undefined) => (
    <Field
      key={part}
      label={texts(`measure.${part}`)}
      typed={fitted[part]}
      onTyped={(text) => change({ [part]: text })}
      refusal={refused}
      keys="numeric"
      short
    />
  );
  if (fitted.by === "season") {
    return (
      <>
        <Choices
          legend={texts("measure.season")}
          options={seasons.map((each) => [each, texts(`measure.${each}`)] as const)}
          chosen={fitted.season}
          onChosen={(season) => change({ season })}
        />
        {number("year", refusal)}
      </>
    );
  }
  if (fitted.by === "date") {
    const order = new Intl.DateTimeFormat(localeOf(texts))
      .formatToParts(0)
      .flatMap(({ type }) => (type === "day" || type === "month" || type === "year" ? [type] : []));
    return (
      <div class="row date">
        {order.map((part, index) => number(part, index === 0 ? refusal : undefined))}
      </div>
    );
  }
  return (
    <div class="row date two">
      <MonthField month={fitted.month} onChosen={(month) => change({ month })} texts={texts} />
      {number("year", refusal)}
    </div>
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
  const { format } = new Intl.DateTimeFormat(localeOf(texts), { month: "long", timeZone: "UTC" });
  return (
    <div class="field">
      <label for={id}>{texts("measure.month")}</label>
      <select id={id} value={Number(month) || ""} onChange={(event) => onChosen(event.currentTarget.value)}>
        <option value="">{texts("measure.month-pick")}</option>
        {Array.from({ length: 12 }, (_, index) => (
          <option key={index} value={`${index + 1}`}>
            {format(Date.UTC(2024, index))}
          </option>
        ))}
      </select>
    </div>
  );
}
