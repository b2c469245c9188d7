import { Component } from "preact";
import type { Answer } from "../../turn/index.ts";

type Props = {
  answers: Answer[];
  busy: boolean;
  /** An answer that waits for the engine. */
  taken?: string;
  /** A danger is taken at any time. */
  isUrgent?(answer: string): boolean;
  give(answer: string): void;
};

/** A turn's answers; 'not sure' and 'can't do this' come last and are quieter, never smaller to hit. */
export class Answers extends Component<Props, { given: string }> {
  override render({ answers, busy, taken, isUrgent, give }: Props) {
    const { given } = this.state;
    return (
      <div class="answers">
        {answers.map(({ id, role, text }) => (
          <button
            key={id}
            type="button"
            part="answer"
            class={`${role === "own" ? "own" : "quiet"} ${(busy && given === id) || taken === id ? "given" : ""}`}
            // Not `disabled`: that would throw the focus of a keyboard away.
            aria-disabled={busy && !isUrgent?.(id)}
            onClick={() => {
              this.setState({ given: id });
              give(id);
            }}
          >
            {text}
          </button>
        ))}
      </div>
    );
  }
}
