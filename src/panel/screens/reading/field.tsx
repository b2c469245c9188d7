import { useEffect, useId, useRef } from "preact/hooks";
import { typedBounds } from "../../../turn/index.ts";
import { keepInSight } from "./keep-in-sight.ts";

/**
 * What is wrong with an entry; an empty text where nothing is. A new object each time it is refused, so that the
 * field takes the focus again.
 */
export type Refusal = { text: string };

type Props = {
  label: string;
  /** What is good to know before typing. */
  note?: string;
  typed: string;
  onTyped(typed: string): void;
  refusal?: Refusal | undefined;
  /** `decimal` where no minus is needed; iPhone keypads of that kind have none. */
  keys?: "decimal" | "numeric" | "text";
  unit?: string;
  short?: boolean;
  /** For a model code: capitals, and no guesses of the keyboard. */
  code?: boolean;
  /** How much of it is read; where not said, as much as a number can have. */
  longest?: number;
};

/** One typed entry with its label and, beside it, what is wrong; what was typed always stays. */
export function Field({
  label,
  note,
  typed,
  onTyped,
  refusal,
  keys = "text",
  unit,
  short,
  code,
  longest,
}: Props) {
  const id = useId();
  // One more than is read: what was pasted and cut is still refused as too long, and never read as something else.
  const most = (longest ?? (code ? typedBounds.typed : typedBounds.typedNumber)) + 1;
  const wrong = refusal?.text;
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (wrong) input.current?.focus();
  }, [refusal]);
  return (
    <div class={`field ${short ? "short" : ""} ${code ? "code" : ""}`}>
      <label for={id}>{label}</label>
      {note && (
        <p id={`${id}-note`} class="small">
          {note}
        </p>
      )}
      <span>
        <input
          ref={input}
          id={id}
          type="text"
          inputMode={keys}
          autocomplete="off"
          autocapitalize={code ? "characters" : "off"}
          spellcheck={false}
          // A browser that knows it takes this text for a yes or no; "off" would be a yes.
          autocorrect=""
          maxLength={most}
          value={typed}
          aria-invalid={Boolean(wrong)}
          aria-describedby={wrong ? `${id}-wrong` : note && `${id}-note`}
          onInput={(event) => onTyped(event.currentTarget.value.slice(0, most))}
          onFocus={(event) => keepInSight(event.currentTarget)}
        />
        {unit && <span class="unit">{unit}</span>}
      </span>
      {wrong && <Wrong id={`${id}-wrong`} text={wrong} />}
    </div>
  );
}

/** What is wrong, in words and with a mark, not by colour alone. */
export function Wrong({ id, text }: { id?: string; text: string }) {
  return (
    <p id={id} class="wrong">
      {text}
    </p>
  );
}
