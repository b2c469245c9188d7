import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

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
