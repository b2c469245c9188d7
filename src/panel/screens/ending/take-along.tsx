import type { Texts } from "../../../turn/index.ts";
import { printPage, Sharing } from "../sharing/index.ts";

/** Shares, copies and prints an ending. */
export function TakeAlong({ text, texts }: { text: string; texts: Texts }) {
  const labels = { share: texts("part.share"), copy: texts("part.copy"), text: texts("part.summary") };
  const print = ({ currentTarget }: { currentTarget: HTMLElement }) =>
    printPage(currentTarget.closest(".ending"), texts("ui.title"));
  return (
    <Sharing text={text} labels={labels} texts={texts}>
      <button type="button" onClick={print}>
        {texts("part.print")}
      </button>
    </Sharing>
  );
}
