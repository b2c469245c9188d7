import type { Line, Texts } from "../../../turn/index.ts";
import { Ask } from "../../frame/index.ts";

type Props = { line: Line; texts: Texts; act(): void; close(): void };

/** Says what becomes of later answers before an earlier one is changed. */
export function Changing({ line, texts, act, close }: Props) {
  return (
    <Ask text={texts("ui.drops", { count: line.drops })}>
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
