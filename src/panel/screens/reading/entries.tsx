import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { RangeProblem } from "../../../measurement/index.ts";
import type { Texts } from "../../../turn/index.ts";
import { Choices } from "./choices.tsx";
import { Form, readTyped, useEntry } from "./entry.tsx";
import { Field } from "./field.tsx";
import { showNumber } from "./format.ts";

type FieldOptions = { label: string; unit?: string; keys?: "decimal" | "numeric" | "text" };

/**
 * Several typed numbers of one form, with the reading that they come to once accepted. What is wrong stands beside
 * the entry that is, and what was typed stays.
 */
export function useEntries<Name extends string, Reading>(first: Name, texts: Texts) {
  const [typed, setTyped] = useState<Partial<Record<Name, string>>>({});
  const [wrong, setWrong] = useState(first);
  const { refusal, refuse, accepted, accept, edit } = useEntry<Reading>();
  // From what was typed last, not from what is on screen: a phone may fill two fields before the next drawing.
  const type = (name: Name, text: string) => edit(() => setTyped((before) => ({ ...before, [name]: text })));
  return {
    accepted,
    accept,
    edit,
    type,
    isEmpty: (name: Name) => !typed[name]?.trim(),
    /** The number in an entry, or null once it was refused. */
    read(name: Name): number | null {
      setWrong(name);
      return readTyped(typed[name] ?? "", texts(`measure.${name}-empty`), { refuse, texts });
    },
    /** Refuses a number that cannot be right, with its range; `own` where the entry has words of its own for it. */
    refuseRange({ code, value, min, max }: RangeProblem, name: Name, { unit = "", own = false } = {}) {
      setWrong(name);
      const show = (number: number) => showNumber(texts, number);
      const shown = { value: show(value), min: show(min), max: show(max), unit };
      refuse(texts(`measure.${own ? `${name}-${code}` : "out-of-range"}`, shown));
    },
    field: (name: Name, { label, unit, keys = "decimal" }: FieldOptions) => (
      <Field
        label={label}
        typed={typed[name] ?? ""}
        onTyped={(text) => type(name, text)}
        refusal={wrong === name ? refusal : undefined}
        keys={keys}
        unit={unit ?? ""}
        short
      />
    ),
  };
}

type UnitsProps<Unit extends string> = {
  units: readonly Unit[];
  chosen: Unit;
  onChosen(unit: Unit): void;
  texts: Texts;
};

/** The units in which something may be measured. */
export function Units<Unit extends string>({ units, chosen, onChosen, texts }: UnitsProps<Unit>) {
  return (
    <Choices
      legend={texts("measure.measured-in")}
      options={units.map((each) => [each, texts(`measure.unit-${each}`)])}
      chosen={chosen}
      onChosen={onChosen}
    />
  );
}

type MeasureProps = {
  onSent(): void;
  /** The result, once there is one; a button asks for it before. */
  result: ComponentChildren;
  ask?: string;
  texts: Texts;
  children: ComponentChildren;
};

/** The form of an instrument: what is entered, then a button, then what it means. */
export function MeasureForm({ onSent, result, ask = "", texts, children }: MeasureProps) {
  return (
    <Form onSent={onSent}>
      {children}
      {result ?? (
        <button type="submit" class="main">
          {ask || texts("measure.show-result")}
        </button>
      )}
    </Form>
  );
}
