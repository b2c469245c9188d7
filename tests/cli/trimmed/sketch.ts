import fc from "fast-check";
import type { useEffect } from "preact/hooks";

/** What draws: preact as published, or as the trimmed script has it. */
export type Drawing = Pick<typeof import("preact"), "Fragment" | "h"> &
  Pick<typeof import("preact/hooks"), "useEffect" | "useId" | "useLayoutEffect" | "useRef" | "useState">;

/** One thing to draw: its kind, its key, what is in it, and what its properties come from. */
export type Sketch = { kind: number; key: number; inner: Sketch[]; word: string; on: boolean };

/** Anything that a screen might draw, so many levels deep. */
export const sketchOf = (levels: number): fc.Arbitrary<Sketch> =>
  fc.record({
    kind: fc.nat(12),
    key: fc.nat(4),
    inner: levels > 1 ? fc.array(sketchOf(levels - 1), { maxLength: 4 }) : fc.constant([]),
    word: fc.constantFrom("", "one", "two", "3"),
    on: fc.boolean(),
  });

type Undo = ReturnType<Parameters<typeof useEffect>[0]>;

/**
 * Makes the function that turns a sketch into what preact draws.
 * @param told is told when each component comes, changes and goes
 */
export function createDrawer({ Fragment, h, ...hooks }: Drawing, told: string[]) {
  const { useEffect, useId, useLayoutEffect, useRef, useState } = hooks;

  function Counter({ word, children }: { word: string; children?: unknown }) {
    const [count, setCount] = useState(0);
    const [sum, setSum] = useState(() => 10);
    const button = useRef<HTMLButtonElement>(null);
    useLayoutEffect((): Undo => {
      told.push(`laid ${word} ${count} ${button.current?.localName}`);
      return () => void told.push(`unlaid ${word}`);
    }, [word]);
    useEffect((): Undo => {
      told.push(`done ${count}`);
      if (count === 1) setSum((before) => before + 5);
      return () => void told.push(`undone ${count}`);
    }, [count]);
    const props = { ref: button, id: useId(), onClick: () => setCount(count + 1) };
    return h("p", null, h("button", props, `${count} ${sum}`), children as never);
  }

  function Broken({ word }: { word: string }): string {
    if (word) throw new Error(word);
    return "sound";
  }

  const draw = ({ kind, key, inner, word, on }: Sketch): unknown => {
    const drawn = inner.map(draw) as never[];
    const keyed = { key: key || undefined };
    const kinds = [
      () => h("div", { ...keyed, class: word, hidden: on }, drawn),
      () => h(Fragment, keyed, drawn),
      () => h(Counter, { ...keyed, word }, drawn),
      () =>
        h("input", { ...keyed, type: on ? "checkbox" : "text", value: word, checked: on, disabled: !word }),
      () =>
        h("svg", { ...keyed, viewBox: "0 0 1 1" }, h("g", { "stroke-width": 2, class: word, key: 1 }, drawn)),
      () => h("p", { ...keyed, style: on ? { "--wide": word, color: "red" } : `width: ${word}px` }, drawn),
      () => h("textarea", { ...keyed, value: word, rows: on ? 2 : undefined }),
      () => h("ol", { ...keyed, start: 2, tabIndex: on ? -1 : 0, "aria-busy": on }, drawn),
      () => h("select", { ...keyed, value: word }, h("option", null, "one"), h("option", null, "two")),
      () => drawn,
      () => word,
      () => (on ? null : 7),
      // Rare, for what is thrown ends the drawing.
      () => (key === 4 && on ? h(Broken, { word }) : null),
    ];
    return kinds[kind]?.();
  };
  return draw;
}
