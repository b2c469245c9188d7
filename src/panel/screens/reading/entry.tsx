import type { ComponentChildren, RefObject } from "preact";
import { useState } from "preact/hooks";
import { readNumber } from "../../../measuring/index.ts";
import type { Texts } from "../../../turn/index.ts";
import type { Refusal } from "./field.tsx";

/**
 * An answer on its way: refused, or accepted and shown with what it means, until anything is edited.
 * @param first what is accepted already
 */
export function useEntry<Value>(first: Value | null = null) {
  const [refusal, setRefusal] = useState<Refusal>({ text: "" });
  const [accepted, accept] = useState(first);
  const refuse = (text: string) => setRefusal({ text });
  return {
    refusal,
    accepted,
    accept,
    /** An empty text takes a refusal back. */
    refuse,
    /** Whatever is changed, an earlier refusal or verdict no longer holds. */
    edit(change?: () => void) {
      change?.();
      refuse("");
      accept(null);
    },
  };
}

/** A typed number, or null once `refuse` was told why it is none. */
export function readTyped(
  typed: string,
  empty: string,
  { refuse, texts }: { refuse(text: string): void; texts: Texts },
): number | null {
  const read = readNumber(typed);
  if (read.kind === "value") return read.value;
  refuse(read.kind === "empty" ? empty : texts("measure.unreadable", read));
  return null;
}

/** A form that the Enter key sends, with no message of the browser's own. */
export function Form({
  onSent,
  form,
  children,
}: {
  onSent(): void;
  form?: RefObject<HTMLFormElement | null>;
  children: ComponentChildren;
}) {
  return (
    <form
      ref={form ?? null}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSent();
      }}
    >
      {children}
    </form>
  );
}
