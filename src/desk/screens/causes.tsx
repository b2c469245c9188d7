import type { CauseRow, Ground } from "../board/index.ts";
import type { DeskProps } from "./props.ts";

const signs: Record<Ground["is"], string> = {
  for: "M4 11l4 4 8-10",
  against: "M5 5l10 10M15 5L5 15",
  untried: "M4 10h12",
};
const words: Record<Ground["is"], string> = { for: "for", against: "against", untried: "not-tried" };

/** What it may be, each cause with its belief as a tube, and what that rests on. */
export function Causes({ causes, texts }: { causes: CauseRow[]; texts: DeskProps["texts"] }) {
  if (!causes[0]) return <p class="none">{texts("desk.causes.none")}</p>;
  return (
    <ul class="causes">
      {causes.map(({ id, name, percent, grounds }) => (
        <li key={id} class="cause">
          <b>{name}</b>
          <u class="tube" aria-hidden="true" style={{ "--v": `${percent}%` }} />
          <output>{texts("desk.causes.percent", { count: percent })}</output>
          {grounds[0] && (
            <ul class="grounds">
              {grounds.map(({ is, text }) => (
                <li key={is + text} class={is}>
                  <svg viewBox="0 0 20 20" aria-hidden="true">
                    <path d={signs[is]} />
                  </svg>
                  <span class="visually-hidden">{texts(`desk.causes.${words[is]}`)} </span>
                  {text}
                </li>
              ))}
            </ul>
          )}
        </li>
      ))}
    </ul>
  );
}
