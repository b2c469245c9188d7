import type { Ending, Texts } from "../../../turn/index.ts";

const shapes: Record<Ending["outcome"], string> = {
  fixed: "M6 12l4 4 8-9",
  later: "M12 3a9 9 0 1 0 0 18a9 9 0 0 0 0-18M12 7v5l3 2",
  part: "M4 8l8-4 8 4v8l-8 4-8-4zM4 8l8 4 8-4M12 12v8",
  professional: "M5 4h4l2 5-2.5 1.5a11 11 0 0 0 5 5L15 13l5 2v4a2 2 0 0 1-2 2A16 16 0 0 1 3 6a2 2 0 0 1 2-2",
  stopped: "M8 3h8l5 5v8l-5 5H8l-5-5V8zM8 12h8",
};

/** The outcome in a word with its own sign, above an ending's headline. */
export function Badge({ outcome, texts }: { outcome: Ending["outcome"]; texts: Texts }) {
  return (
    <p class={`badge ${outcome}`}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={shapes[outcome]} />
      </svg>
      {texts(`part.outcome-${outcome}`)}
    </p>
  );
}
