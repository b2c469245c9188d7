import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Texts } from "../../../turn/index.ts";

type Props = {
  text: string;
  /** Whether the text is an address as a whole: a share sheet then offers what it has for those. */
  isLink?: boolean;
  /** The words of the buttons, and of the text where it has to be shown. */
  labels: Record<"share" | "copy" | "text", string>;
  texts: Texts;
  /** More buttons beside these. */
  children?: ComponentChildren;
};

/** Shares and copies a text. Where the page may not copy, the text is shown selected so that a long press can. */
export function Sharing({ text, isLink, labels, texts, children }: Props) {
  const [state, setState] = useState<"" | "copied" | "shown">("");
  const area = useRef<HTMLTextAreaElement>(null);
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
      await navigator.share(isLink ? { url: text } : { text });
    } catch (problem) {
      // Somebody who closes the sheet wants nothing else.
      if ((problem as Error).name !== "AbortError") await copy();
    }
  }
  return (
    <div class="summary">
      <p class="take-along">
        {"share" in navigator && (
          <button type="button" onClick={share}>
            {labels.share}
          </button>
        )}
        <button type="button" onClick={copy}>
          {labels.copy}
        </button>
        {children}
      </p>
      <p role="status" class="small">
        {state && texts(`part.${state}`)}
      </p>
      {state === "shown" && <textarea ref={area} readOnly rows={8} aria-label={labels.text} value={text} />}
    </div>
  );
}
