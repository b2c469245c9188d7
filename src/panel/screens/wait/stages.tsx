import type { Texts, Wait } from "../../../turn/index.ts";
import { marks } from "../reading/index.ts";

type Props = {
  stages: Wait["inside"];
  /** Instants in milliseconds. */
  now: number;
  until: number;
  format(instant: number): string;
  texts: Texts;
};

/** What goes on in the machine during a wait, one stage after the other: what is over, what is now, what is to come. */
export function Stages({ stages, now, until, format, texts }: Props) {
  if (!stages[0]) return null;
  const begun = now < until ? stages.filter(({ from }) => Date.parse(from) <= now).length : stages.length + 1;
  return (
    <>
      <h3>{texts("measure.wait-inside")}</h3>
      <ol class="stages">
        {stages.map(({ text, from }, index) => {
          const isOver = index < begun - 1;
          const isNow = index === begun - 1;
          return (
            <li key={text} class={isOver ? "over" : ""} aria-current={isNow ? "step" : undefined}>
              <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
                {isOver && <path d={marks.passes} />}
              </svg>
              <p>
                <b>{isNow ? texts("measure.wait-now") : format(Date.parse(from))}</b>
                {isOver && <span class="visually-hidden"> {texts("measure.wait-done")}</span>}
                <span> {text}</span>
              </p>
            </li>
          );
        })}
      </ol>
    </>
  );
}
