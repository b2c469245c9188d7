import type { Texts } from "../../../turn/index.ts";
import { Sharing } from "../sharing/index.ts";
import { printEnding } from "./print.ts";

/** Shares, copies and prints an ending. */
export function TakeAlong({ text, texts }: { text: string; texts: Texts }) {
  const labels = { share: texts("part.share"), copy: texts("part.copy"), text: texts("part.summary") };
  const print = ({ currentTarget }: { currentTarget: HTMLElement }) =>
    printEnding(currentTarget.closest(".ending"), texts("ui.title"));
  return (
    <Sharing text={text} labels={labels} texts={texts}>
      <button type="button" onClick={print}>
        {texts("part.print")}
      </button>
    </Sharing>
  );
}
