import type { Line, Texts } from "../../../turn/index.ts";
import { Ask } from "../../frame/index.ts";

type Props = { line: Line; texts: Texts; act(): void; close(): void };

/** Says what becomes of later answers before an earlier one is changed, and shows all of what was typed. */
export function Changing({ line: { drops, words }, texts, act, close }: Props) {
  return (
    <Ask text={drops ? texts("ui.drops", { count: drops }) : texts("thread.change-ask")}>
      {words && (
        <p class="sent">
          <b>
            <bdi>{words}</bdi>
          </b>
        </p>
      )}
      <button
        type="button"
        class="main"
        onClick={() => {
          close();
          act();
        }}
      >
        {texts("ui.change-anyway")}
      </button>
      <button type="button" onClick={close}>
        {texts("ui.keep")}
      </button>
    </Ask>
  );
}
