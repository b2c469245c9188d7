import { useEffect, useState } from "preact/hooks";
import { showPrice } from "../../panel/screens/reading/index.ts";
import { type ChartCheck, journalRowsOf, modelIn } from "../board/index.ts";
import type { Followed } from "../follow.ts";
import type { PartRow } from "../shop-parts.ts";
import type { DeskProps, RoomProps } from "./props.ts";

/** The chart's checks in its order: what was done, where they are, what may come next and what may not. */
export function Chart({ chart, texts }: { chart: ChartCheck[]; texts: DeskProps["texts"] }) {
  return (
    <ol class="chart">
      {chart.map(({ id, name, is, found, step }) => (
        <li key={id} class={is} aria-current={is === "now" ? "step" : undefined}>
          <i aria-hidden="true">{is === "done" ? "✓" : is === "now" ? "●" : ""}</i>
          <b>{name}</b>
          <em>
            {texts(`desk.chart.${is}`)}
            {step > 0 && `, ${texts("desk.chart.step", { count: step })}`}
          </em>
          {found.map(({ title, answer }) => (
            <span key={title + answer}>{texts("desk.found", { title, answer })}</span>
          ))}
        </li>
      ))}
    </ol>
  );
}

/** What was said, when, and what of it was taken back or said by voice. */
export function Record({ followed, texts }: RoomProps & { followed: Followed }) {
  const rows = journalRowsOf(followed.journal, followed.session, texts);
  if (!rows[0]) return <p class="none">{texts("desk.journal.none")}</p>;
  return (
    <table>
      <thead>
        <tr>
          {["time", "what", "answer"].map((column) => (
            <th key={column} scope="col">
              {texts(`desk.journal.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, at, title, answer, words, isBack, isVoice }) => (
          <tr key={id} class={isBack ? "back" : ""}>
            <td>
              <time dateTime={at}>{clockTime(at)}</time>
            </td>
            <td>{isBack ? <s>{title}</s> : title}</td>
            <td>
              {isBack ? <s>{answer}</s> : answer}
              {isBack && <small>{texts("desk.journal.taken-back")}</small>}
              {isVoice && <small class="voice">{texts("desk.journal.voice")}</small>}
              {words && <small>{texts("desk.journal.words", { words })}</small>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Hours and minutes as the householder's own clock had them: they stand in the text. */
const clockTime = (at: string) => at.slice(11, 16);

/** What the shop has for the model that the householder has confirmed. */
export function Parts({ followed, texts, parts }: RoomProps & { followed: Followed }) {
  const model = modelIn(followed.session);
  const kinds = Object.keys(followed.session.flow.parts);
  const asked = `${model} ${kinds.join()}`;
  const [found, setFound] = useState<{ of: string; rows: PartRow[] | "fault" } | null>(null);
  useEffect(() => {
    if (!model || !parts.canLookUp) return;
    let isWanted = true;
    const tell = (rows: PartRow[] | "fault") => isWanted && setFound({ of: asked, rows });
    parts.partsFor(model, kinds).then(tell, () => tell("fault"));
    return () => {
      isWanted = false;
    };
  }, [asked]);
  if (!parts.canLookUp) return <p class="none">{texts("desk.parts.no-catalogue")}</p>;
  if (!model) return <p class="none">{texts("desk.parts.no-model")}</p>;
  const rows = found?.of === asked ? found.rows : null;
  if (!rows) return <p class="none">{texts("desk.parts.looking")}</p>;
  if (rows === "fault") return <p class="none">{texts("desk.parts.fault")}</p>;
  return (
    <>
      <p class="small">{texts("desk.parts.model", { model })}</p>
      {!rows[0] && <p class="none">{texts("desk.parts.none")}</p>}
      <ul class="parts">
        {rows.map(({ kind, found: part }) => (
          <li key={kind}>
            <b>{texts(`parts.${kind}.name`)}</b>
            {part.kind === "part" ? (
              <>
                <span>
                  {part.part.name}, <code>{part.part.number}</code>
                </span>
                <em>
                  {showPrice(texts, part.part.price)}, {texts(`desk.parts.${part.part.stock}`)}
                </em>
              </>
            ) : (
              part.kind === "unread" && <span>{texts(`desk.parts.plate-${part.about}`)}</span>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
