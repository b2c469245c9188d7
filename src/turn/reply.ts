import type { Fact, Understood } from "../understanding/index.ts";

/**
 * What is said to a typed sentence. Nothing of it is done before a tap, but for `taken` and `filled`; `otherwise` is what
 * is said where it was not meant.
 */
export type Reply =
  /** The answer's own wording: it is as good as a tap. */
  | { kind: "taken"; answer: string }
  | { kind: "danger"; danger: string; otherwise: Reply }
  /** Entries for the instrument of this turn. */
  | { kind: "filled"; entries: Record<string, string>; otherwise: Reply }
  /** Answers of this turn, likeliest first; `facts` are asked about once one is chosen. */
  | { kind: "choices"; answers: string[]; facts: Fact[]; otherwise: Reply }
  /** `otherwise` is null where an answer was chosen already. */
  | { kind: "facts"; facts: Fact[]; otherwise: Reply | null }
  | { kind: "aside"; entry: string; otherwise: Reply }
  | { kind: "model"; code: string; otherwise: Reply }
  | { kind: "none" };

/** What is said first of all that a sentence may mean; `understood` is likeliest first, and a danger before all else. */
export function replyTo(understood: readonly Understood[]): Reply {
  const [first] = understood;
  if (!first || first.kind === "nothing") return { kind: "none" };
  if (first.kind === "answer" && first.sure) return { kind: "taken", answer: first.answer };
  const without = (...kinds: Understood["kind"][]) =>
    replyTo(understood.filter(({ kind }) => !kinds.includes(kind)));
  const facts = understood.flatMap((one) => (one.kind === "facts" ? one.facts : []));
  switch (first.kind) {
    case "danger":
      return { kind: "danger", danger: first.danger, otherwise: without("danger") };
    case "reading":
      return { kind: "filled", entries: first.entries, otherwise: without("reading") };
    case "answer": {
      const answers = understood.flatMap((one) => (one.kind === "answer" ? one.answer : []));
      return { kind: "choices", answers, facts, otherwise: without("answer") };
    }
    case "facts":
      return { kind: "facts", facts, otherwise: without("facts") };
    case "question":
      return { kind: "aside", entry: first.entry, otherwise: without("question") };
    case "model":
      return { kind: "model", code: first.code, otherwise: without("model") };
  }
}
