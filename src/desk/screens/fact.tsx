import { suggestionBounds } from "../../cobrowse/client/index.ts";
import { type Board, matching, type Sayable } from "../board/index.ts";
import type { RoomProps } from "./props.ts";

/** So many are listed at once; another word makes them fewer. */
const most = 6;

/** Notes what the householder said by voice: an answer, found by its words, and their own words with it. */
export function AddFact({ desk, acts, texts, board }: RoomProps & { board: Board }) {
  const { key, drafts } = acts.room;
  const typed = drafts["fact"] ?? "";
  const found = matching(board.sayable, typed).slice(0, most);
  const send = ({ turn, answer }: Sayable) => {
    const words = (drafts["heard"] ?? "").trim();
    if (!desk.suggest(key, { kind: "told", facts: [{ turn, answer }], words })) return;
    desk.draft(key, "fact", "");
    desk.draft(key, "heard", "");
  };
  const field = (name: "fact" | "heard", label: string) => (
    <label>
      {label}
      <input
        type="text"
        autocomplete="off"
        maxLength={suggestionBounds.text}
        value={drafts[name] ?? ""}
        onInput={({ currentTarget }) => desk.draft(key, name, currentTarget.value)}
      />
    </label>
  );
  return (
    <details>
      <summary>{texts("desk.suggest.fact")}</summary>
      {field("heard", texts("desk.suggest.heard"))}
      {field("fact", texts("desk.suggest.find"))}
      {typed.trim() && !found[0] && <p class="none">{texts("desk.suggest.none-found")}</p>}
      <div class="sugs">
        {found.map((fact) => (
          <button key={`${fact.turn}.${fact.answer}`} type="button" class="sug" onClick={() => send(fact)}>
            <b>{fact.text}</b>
            <small>{fact.title}</small>
          </button>
        ))}
      </div>
    </details>
  );
}
