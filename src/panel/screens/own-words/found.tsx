import { suggest } from "../../../turn/index.ts";
import { Answers, type ScreenProps } from "../../frame/index.ts";
import { Wrong } from "../reading/index.ts";

type Props = Pick<ScreenProps, "turn" | "actions" | "texts" | "busy"> & { typed: string };

/**
 * What is found for somebody's own words: some of the turn's answers, as buttons of their own. It chooses nothing. Words
 * of danger are answered by the way to report it; where they come before all else, an answer would only lead away from it.
 */
export function FoundInWords({ typed, turn, actions, texts, busy }: Props) {
  const own = turn.answers.filter(({ role }) => role === "own");
  const words = () => own.map(({ id }) => [id, texts(`described.words.${id}`)]);
  // Nothing is scored while the question is being drawn.
  const found = typed.trim()
    ? suggest(typed, {
        shortForms: texts("described.short-forms"),
        words: { danger: texts("described.danger"), ...Object.fromEntries(words()) },
      })
    : [];
  const isDangerous = found.includes("danger");
  const answers =
    found[0] === "danger" ? [] : found.flatMap((id) => own.filter((answer) => answer.id === id));
  const said = answers.length ? "found" : isDangerous ? "" : "none";
  const notSure = turn.answers.find(({ role }) => role === "not-sure")?.text ?? "";
  return (
    <>
      <div role="status">
        {isDangerous && <Wrong text={texts("ui.own-words-danger", { danger: texts("ui.danger") })} />}
        {typed.trim() && said && <p>{texts(`ui.own-words-${said}`, { count: answers.length, notSure })}</p>}
      </div>
      <Answers answers={answers} busy={busy} give={(id) => actions.answer(turn.turn, id)} />
    </>
  );
}
