import { useEffect, useRef, useState } from "preact/hooks";
import type { Texts } from "../../../turn/index.ts";
import { printEnding } from "./print.ts";

/** Shares, copies and prints an ending. Where the page may not copy, the text is shown selected so that a long press can. */
export function TakeAlong({ text, texts }: { text: string; texts: Texts }) {
  const [state, setState] = useState<"" | "copied" | "shown">("");
  const area = useRef<HTMLTextAreaElement>(null);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state === "shown") area.current?.select();
  }, [state]);
  async function copy() {
    try {
      await navigator.clipboard.writeText(text);
      setState("copied");
    } catch {
      setState("shown");
    }
  }
  async function share() {
    try {
      await navigator.share({ text });
    } catch (problem) {
      // Somebody who closes the sheet wants nothing else.
      if ((problem as Error).name !== "AbortError") await copy();
    }
  }
  return (
    <div class="summary" ref={box}>
      <p class="take-along">
        {"share" in navigator && (
          <button type="button" onClick={share}>
            {texts("part.share")}
          </button>
        )}
        <button type="button" onClick={copy}>
          {texts("part.copy")}
        </button>
        <button type="button" onClick={() => printEnding(box.current?.closest(".ending"), texts("ui.title"))}>
          {texts("part.print")}
        </button>
      </p>
      <p role="status" class="small">
        {state && texts(`part.${state}`)}
      </p>
      {state === "shown" && (
        <textarea ref={area} readOnly rows={8} aria-label={texts("part.summary")} value={text} />
      )}
    </div>
  );
}
