import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Reading } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Scale, type ScaleProps } from "./scale.tsx";

/** A tick, a cross, or two waves for 'about': the shape tells, not only the colour. */
export const marks = {
  passes: "M6 12l4 4 8-9",
  fails: "M7 7l10 10M17 7L7 17",
  unclear: "M5 10q3.5-4 7 0t7 0M5 16q3.5-4 7 0t7 0",
};

type CardProps = Pick<ScreenProps, "turn" | "actions" | "texts" | "busy"> & {
  /** What is answered with, once it is used. */
  reading: Reading;
  verdict: string;
  /** The verdict in words. */
  heading: string;
  /** The sign of a verdict of the instrument's own; a cross unless said. */
  mark?: string | undefined;
  look: string;
  /** Using it is not the first choice. */
  doubted?: boolean | undefined;
  /** What may be done instead; comes first where using it is not the first choice. */
  instead?: ComponentChildren;
  /** It was there before a reload: a page that loads moves no focus. */
  still?: boolean | undefined;
  children: ComponentChildren;
};

/** A verdict before it is used, with its sign, and the button that uses it. */
export function VerdictCard(props: CardProps) {
  const { turn, actions, texts, busy, reading, verdict, heading, look, doubted, instead, still, children } =
    props;
  const mark = props.mark ?? marks[verdict as keyof typeof marks] ?? marks.fails;
  // Read at once, and in sight at once: the button that asked for it is gone, and so is a phone's keyboard.
  const heard = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (!still) heard.current?.focus();
  }, []);
  return (
    <div class={`card ${look}`}>
      <p class="verdict" ref={heard} tabIndex={-1}>
        <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
          <path d={mark} />
        </svg>
        {heading}
      </p>
      {children}
      <div class="answers">
        {doubted && instead}
        <button
          type="button"
          class={doubted ? "" : "main"}
          aria-disabled={busy}
          onClick={() => actions.measure(turn.turn, reading)}
        >
          {texts("measure.use")}
        </button>
        {!doubted && instead}
      </div>
    </div>
  );
}

type Props = Omit<CardProps, "heading" | "look" | "doubted" | "children"> &
  Omit<ScaleProps, "limitText" | "valueText"> & {
    /** Where its texts are: `measure.<name>-<verdict>`. */
    name: string;
    /** What its texts name. */
    shown: Record<string, string>;
    /** The reading and the limit in a sentence, and each in short; by its name unless said. */
    said?: string;
    limitText?: string;
    valueText?: string;
    children?: ComponentChildren;
  };

/** A verdict on a number: in words, the numbers in a sentence, and the same as a drawing around its limit. */
export function Result({ name, shown, said, limitText, valueText, children, ...props }: Props) {
  const { verdict, texts, instead } = props;
  const unclear = verdict === "unclear";
  const text = (part: string) => texts(`measure.${name}-${part}`, shown);
  return (
    <VerdictCard
      {...props}
      heading={texts(`measure.${name}-${verdict}`)}
      look={`${name} ${verdict}`}
      doubted={unclear && !!instead}
    >
      <p>{said ?? text("said")}</p>
      <Scale {...props} limitText={limitText ?? text("limit")} valueText={valueText ?? text("value")} />
      {unclear && <p>{texts(`measure.${name}-again`)}</p>}
      {children}
    </VerdictCard>
  );
}
