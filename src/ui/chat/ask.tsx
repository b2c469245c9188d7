import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** A question in place, never a browser dialog. The words get the focus, so that they are read before a button is. */
export function Ask({ children, text }: { children: ComponentChildren; text: string }) {
  const words = useRef<HTMLParagraphElement>(null);
  useEffect(() => words.current?.focus(), []);
  return (
    <div class="ask">
      <p ref={words} tabIndex={-1}>
        {text}
      </p>
      {children}
    </div>
  );
}
