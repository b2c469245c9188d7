import { useRef, useState } from "preact/hooks";
import { suggestionBounds } from "../../cobrowse/client/index.ts";
import type { FoundModel } from "../../turn/index.ts";
import type { RoomProps } from "./props.ts";

/** Proposes another model number: looked up first, and where it may be several, picked among those that look alike. */
export function Correct({ desk, acts, texts, parts }: RoomProps) {
  const { key, drafts } = acts.room;
  const [found, setFound] = useState<FoundModel | "fault" | "unchecked" | null>(null);
  const latest = useRef(0);
  const typed = drafts["model"] ?? "";

  async function look(): Promise<void> {
    latest.current += 1;
    const mine = latest.current;
    if (!typed.trim()) return;
    const next = parts.canLookUp ? await parts.findModel(typed).catch(() => "fault" as const) : "unchecked";
    if (latest.current === mine) setFound(next);
  }

  function send(model: string): void {
    if (!desk.suggest(key, { kind: "correct", model, why: "" })) return;
    desk.draft(key, "model", "");
    setFound(null);
  }

  const pick = (model: string, marks: readonly boolean[] = []) => (
    <button key={model} type="button" class="sug" onClick={() => send(model)}>
      <code>{[...model].map((one, place) => (marks[place] ? <mark>{one}</mark> : one))}</code>
      <small>{texts("desk.suggest.propose")}</small>
    </button>
  );

  return (
    <details>
      <summary>{texts("desk.suggest.correct")}</summary>
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          look();
        }}
      >
        <input
          type="text"
          class="code"
          aria-label={texts("desk.suggest.model")}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={suggestionBounds.code}
          value={typed}
          onInput={({ currentTarget }) => {
            latest.current += 1;
            setFound(null);
            desk.draft(key, "model", currentTarget.value);
          }}
        />
        <button type="submit">{texts("desk.suggest.check-model")}</button>
      </form>
      <div role="status">
        {found && <p class="small">{saidOf(found, texts)}</p>}
        <div class="sugs">
          {found === "unchecked" && pick(typed.trim())}
          {typeof found === "object" && found?.kind === "exact" && pick(found.model.code)}
          {typeof found === "object" &&
            found?.kind === "near" &&
            found.candidates.map(({ model, marks }) => pick(model.code, marks))}
        </div>
      </div>
    </details>
  );
}

function saidOf(found: FoundModel | "fault" | "unchecked", texts: RoomProps["texts"]): string {
  if (found === "fault") return texts("desk.parts.fault");
  if (found === "unchecked") return texts("desk.suggest.model-unchecked");
  return texts(`desk.suggest.model-${found.kind}`, { model: found.kind === "exact" ? found.model.code : "" });
}
