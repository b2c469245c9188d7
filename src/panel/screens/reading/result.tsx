import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Texts, Verdicts } from "../../../turn/index.ts";
import { Scale, type ScaleProps } from "./scale.tsx";

type Props = ScaleProps & {
  /** Where its texts are: `measure.<instrument>-<verdict>`. */
  instrument: string;
  verdict: Verdicts;
  /** The reading and the limit in a sentence. */
  said: string;
  busy: boolean;
  texts: Texts;
  onUsed(): void;
  /** What may be done instead; comes first when it is too close to call. */
  instead?: ComponentChildren;
  children?: ComponentChildren;
};

const cross = "M7 7l10 10M17 7L7 17";
/** A tick, a cross, or two waves for 'about': the shape tells, not only the colour. */
export const marks: Record<Verdicts, string> = {
  passes: "M6 12l4 4 8-9",
  fails: cross,
  unclear: "M5 10q3.5-4 7 0t7 0M5 16q3.5-4 7 0t7 0",
  "too-strong": "M12 19V5M6 11l6-6 6 6",
  demand: "M6 9h12M6 15h12",
  corner: cross,
  "in-the-way": cross,
};

/** A verdict before it is used: one of three in words, the numbers in a sentence, and the same as a drawing. */
export function Result(props: Props) {
  const { instrument, verdict, said, busy, texts, onUsed, instead, children } = props;
  const unclear = verdict === "unclear";
  // Read at once, and in sight at once: the button that asked for it is gone, and so is a phone's keyboard.
  const heard = useRef<HTMLParagraphElement>(null);
  useEffect(() => heard.current?.focus(), []);
  return (
    <div class={`card ${instrument} ${verdict}`}>
      <p class="verdict" ref={heard} tabIndex={-1}>
        <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
          <path d={marks[verdict]} />
        </svg>
        {texts(`measure.${instrument}-${verdict}`)}
      </p>
      <p>{said}</p>
      <Scale {...props} />
      {unclear && <p>{texts(`measure.${instrument}-again`)}</p>}
      {children}
      <div class="answers">
        {unclear && instead}
        <button type="button" class={unclear && instead ? "" : "main"} aria-disabled={busy} onClick={onUsed}>
          {texts("measure.use")}
        </button>
        {!unclear && instead}
      </div>
    </div>
  );
}
