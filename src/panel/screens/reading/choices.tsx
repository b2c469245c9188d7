import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { Texts } from "../../../turn/index.ts";
import { type Place, useKept } from "./kept.ts";

type Props<Value extends string> = {
  legend: string;
  options: readonly (readonly [value: Value, text: ComponentChildren])[];
  /** Undefined where nobody has chosen yet. */
  chosen: Value | undefined;
  onChosen(value: Value): void;
};

/** A few options of which one holds, as a radio group; arrow keys work by themselves. */
export function Choices<Value extends string>({ legend, options, chosen, onChosen }: Props<Value>) {
  const name = useId();
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class={`choices ${options.length > 2 ? "many" : ""}`}>
        {options.map(([value, text]) => (
          <label key={value}>
            <input type="radio" name={name} checked={value === chosen} onChange={() => onChosen(value)} />
            <span>{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

type MeasureChoicesProps<Value extends string> = Pick<Props<Value>, "chosen" | "onChosen"> & {
  /** The last part of the legend's key under `measure.` */
  legend: string;
  values: readonly Value[];
  /** The last part of an option's key. */
  named(value: Value): string;
  texts: Texts;
};

/** Options of an instrument, by the keys of their texts. */
export function MeasureChoices<Value extends string>({
  legend,
  values,
  named,
  texts,
  ...rest
}: MeasureChoicesProps<Value>) {
  const options = values.map((value) => [value, texts(`measure.${named(value)}`)] as const);
  return <Choices {...rest} legend={texts(`measure.${legend}`)} options={options} />;
}

/**
 * The units in which something may be measured: the one that is chosen, its name, and the options to draw.
 * @param units those that are offered, the usual one first
 * @param name where a screen has two such choices
 */
export function useUnits<Unit extends string>(
  units: readonly Unit[],
  { texts, ...place }: Place & { texts: Texts },
  edit: (change: () => void) => void,
  name = "unit",
) {
  const [unit, setUnit] = useKept(place, name, units[0] as Unit, units);
  const named = (each: Unit) => `unit-${each}`;
  return {
    unit,
    unitName: texts(`measure.${named(unit)}`),
    unitChoices: (
      <MeasureChoices
        legend="measured-in"
        values={units}
        named={named}
        chosen={unit}
        onChosen={(chosen) => edit(() => setUnit(chosen))}
        texts={texts}
      />
    ),
  };
}
