import { readSuggestion, suggestionBounds } from "../../cobrowse/client/index.ts";
import { fateOf, suggestionText } from "../board/index.ts";
import type { RoomProps } from "./props.ts";

/** What was said and suggested, what became of each, what waits to be sent, and the field to write to them. */
export function Said({ desk, acts, texts }: RoomProps) {
  const { room } = acts;
  const { shared, followed, drafts, key, over } = room;
  const open = followed?.view.turn?.turn;
  const waiting = acts.waiting("carried").flatMap(({ kind, body }) => readSuggestion(kind, body) ?? []);
  const typed = drafts["line"] ?? "";
  const nameOf = (id: string) => shared.people.find((one) => one.id === id)?.name ?? texts("desk.said.them");
  return (
    <div class="said">
      <h2>{texts("desk.said.title")}</h2>
      {!shared.said[0] && !waiting[0] && <p class="none">{texts("desk.said.none")}</p>}
      <ol>
        {shared.said.map((one) => {
          if (one.by === "householder")
            return (
              <li key={one.seq} class="theirs">
                <b>{texts("desk.said.them")}</b> <span>{one.text}</span>
              </li>
            );
          const { what, why } = suggestionText(one.suggestion, texts);
          return (
            <li key={one.seq} class={one.is ?? "open"}>
              <b>{one.from === room.me ? texts("desk.said.you") : nameOf(one.from)}</b> <span>{what}</span>
              {why && <q>{why}</q>} <em>{texts(fateOf(one, open))}</em>
            </li>
          );
        })}
        {waiting.map((suggestion, place) => {
          const { what, why } = suggestionText(suggestion, texts);
          return (
            <li key={`waiting ${place}`} class="waiting">
              <b>{texts("desk.said.you")}</b> <span>{what}</span>
              {why && <q>{why}</q>} <em>{texts("desk.fate.waiting")}</em>
            </li>
          );
        })}
      </ol>
      {!over && !shared.isEnded && (
        <form
          class="write"
          onSubmit={(event) => {
            event.preventDefault();
            const text = typed.trim();
            if (text && desk.suggest(key, { kind: "line", text })) desk.draft(key, "line", "");
          }}
        >
          <input
            type="text"
            aria-label={texts("desk.said.write")}
            placeholder={texts("desk.said.write")}
            autocomplete="off"
            maxLength={suggestionBounds.text}
            value={typed}
            onInput={({ currentTarget }) => desk.draft(key, "line", currentTarget.value)}
          />
          <button type="submit" class="main">
            {texts("desk.said.send")}
          </button>
        </form>
      )}
    </div>
  );
}
