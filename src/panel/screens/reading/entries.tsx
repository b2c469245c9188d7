import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { RangeProblem } from "../../../measuring/index.ts";
import type { Texts } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Form, readTyped, useEntry } from "./entry.tsx";
import { Field } from "./field.tsx";
import { showRange } from "./format.ts";

type FieldOptions = { label: string; note?: string; unit?: string; keys?: "decimal" | "numeric" | "text" };

/**
 * Several typed numbers of one form, with the reading that they come to once accepted. What is wrong stands beside
 * the entry that is, and what was typed stays, over a reload as well.
 * @param filled what is known already; it can be typed over
 */
export function useEntries<Name extends string, Reading>(
  first: Name,
  { turn: { turn }, services: { draft }, texts }: Pick<ScreenProps, "turn" | "services" | "texts">,
  filled: Partial<Record<Name, string>> = {},
) {
  const [typed, setTyped] = useState<Partial<Record<Name, string>>>(() => ({
    ...filled,
    ...draft.read(turn),
  }));
  const [wrong, setWrong] = useState(first);
  const { refusal, refuse, accepted, accept, edit } = useEntry<Reading>();
  // From what was typed last, not from what is on screen: a phone may fill two fields before the next drawing.
  const type = (name: Name, text: string) => {
    draft.keep(turn, name, text);
    edit(() => setTyped((before) => ({ ...before, [name]: text })));
  };
  return {
    accepted,
    accept,
    edit,
    type,
    isEmpty: (name: Name) => !typed[name]?.trim(),
    /** The numbers in some entries, in their order, or null once one of them was refused. */
    read<Each extends Name>(...names: Each[]): Record<Each, number> | null {
      const numbers = {} as Record<Each, number>;
      for (const name of names) {
        setWrong(name);
        const number = readTyped(typed[name] ?? "", texts(`measure.${name}-empty`), { refuse, texts });
        if (number === null) return null;
        numbers[name] = number;
      }
      return numbers;
    },
    /** Refuses a number that cannot be right, with its range; `own` where the entry has words of its own for it. */
    refuseRange(problem: RangeProblem, name: Name, { unit = "", own = false } = {}) {
      setWrong(name);
      const key = own ? `${name}-${problem.code}` : "out-of-range";
      refuse(texts(`measure.${key}`, { ...showRange(texts, problem), unit }));
    },
    field: (name: Name, { label, note = "", unit, keys = "decimal" }: FieldOptions) => (
      <Field
        label={label}
        note={note}
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
