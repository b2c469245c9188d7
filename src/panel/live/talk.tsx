import { useState } from "preact/hooks";
import type { Live, LiveRoom, Services, Texts } from "../../turn/index.ts";

/** Where what is typed and not sent yet lies among the drafts. */
const place = "live.talk";

/** So much of a line is read. */
const most = 400;

/** So many lines are shown. */
const shown = 30;

type Props = { room: LiveRoom; names: string; live: Live; services: Services; texts: Texts };

/** What both wrote, and a field to write more. */
export function Talk({ room: { lines, isPaused }, names, live, services: { draft }, texts }: Props) {
  const [typed, setTyped] = useState(draft.read(place)["line"] ?? "");
  const type = (text: string) => {
    draft.keep(place, "line", text);
    setTyped(text);
  };
  return (
    <div class="talk">
      <div role="log" aria-label={texts("live.talk")}>
        {lines.slice(-shown).map(({ id, name, text }) => (
          <p key={id} class={name === null ? "own-line" : ""}>
            <span class="from">{name ?? texts("live.you")}</span> <bdi>{text}</bdi>
          </p>
        ))}
      </div>
      {names && (
        <form
          class="write"
          onSubmit={(event) => {
            event.preventDefault();
            if (typed.trim() && live.write(typed.trim())) type("");
          }}
        >
          <input
            type="text"
            enterkeyhint="send"
            autocomplete="off"
            maxLength={most}
            value={typed}
            aria-label={texts("live.write", { names })}
            placeholder={texts("live.write", { names })}
            onInput={({ currentTarget: { value } }) => type(value.slice(0, most))}
          />
          <button type="submit" aria-disabled={isPaused || !typed.trim()}>
            {texts("live.send")}
          </button>
        </form>
      )}
    </div>
  );
}
