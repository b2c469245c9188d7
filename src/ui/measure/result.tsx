import type { ComponentChildren } from "preact";
import type { Verdict } from "../../measurement/index.ts";
import type { Texts } from "../../session/index.ts";
import { Scale, type ScaleProps } from "./scale.tsx";

type Props = {
  instrument: "flow" | "temperature" | "filter-age";
  verdict: Verdict;
  /** The reading and the limit in a sentence. */
  said: string;
  scale: ScaleProps;
  children: ComponentChildren;
  texts: Texts;
};

/** A verdict before it is used: one of three in words, the numbers in a sentence, and the same as a drawing. */
export function Result({ instrument, verdict, said, scale, children, texts }: Props) {
  return (
    <div class={`result ${verdict}`}>
      <div role="status">
        <p class="verdict">
          <Mark verdict={verdict} />
          {texts(`measure.${instrument}-${verdict}`)}
        </p>
        <p>{said}</p>
      </div>
      <Scale {...scale} />
      {verdict === "unclear" && <p>{texts(`measure.${instrument}-again`)}</p>}
      <div class="answers">{children}</div>
    </div>
  );
}

/** A tick, a cross, or two waves for 'about': the shape tells, not only the colour. */
function Mark({ verdict }: { verdict: Verdict }) {
  const shapes = {
    passes: "M6 12l4 4 8-9",
    fails: "M7 7l10 10M17 7L7 17",
    unclear: "M5 10q3.5-4 7 0t7 0M5 16q3.5-4 7 0t7 0",
  };
  return (
    <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
      <path d={shapes[verdict]} />
    </svg>
  );
}
