import type { FoundModel, Texts } from "../../session/index.ts";

/** What a search came to; a code that cannot be read is told at its field instead. */
export type Answered = Exclude<FoundModel, { kind: "unreadable" }> | "broken";

type Props = {
  found: Answered;
  busy: boolean;
  texts: Texts;
  onTaken(code: string | null): void;
  onRetry(): void;
};

type Candidate = { model: { code: string; brand: string; machine: string }; marks?: boolean[] };

/** What a typed code may mean; each model is confirmed by a button of its own. */
export function ModelResult({ found, busy, texts, onTaken, onRetry }: Props) {
  const kind = found === "broken" ? "broken" : found.kind;
  const candidates: Candidate[] =
    found === "broken" || found.kind === "unknown"
      ? []
      : found.kind === "exact"
        ? [{ model: found.model }]
        : found.candidates;
  const values = { count: candidates.length, typed: found === "broken" ? "" : found.typed };
  return (
    <div class="found">
      <p role="status">{texts(`measure.model-${kind}`, values)}</p>
      {candidates.length > 0 && (
        <ul class="models">
          {candidates.map(({ model, marks }) => (
            <li key={model.code} class="card">
              <p>
                <MarkedCode code={model.code} marks={marks ?? []} />
                {model.brand}
                <span class="small">{model.machine.replaceAll("-", " ")}</span>
              </p>
              <button
                type="button"
                class={kind === "exact" ? "main" : ""}
                aria-label={`${texts("measure.mine")}: ${model.code}`}
                aria-disabled={busy}
                onClick={() => onTaken(model.code)}
              >
                {texts("measure.mine")}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="answers">
        <button type="button" class={candidates.length > 0 ? "quiet" : "main"} onClick={onRetry}>
          {texts(candidates.length > 0 ? "measure.not-mine" : "measure.try-again")}
        </button>
        <button type="button" class="quiet" aria-disabled={busy} onClick={() => onTaken(null)}>
          {texts("measure.without")}
        </button>
      </div>
    </div>
  );
}

/** A code with the characters marked that differ from what was typed: underlined and bold, not only coloured. */
function MarkedCode({ code, marks }: { code: string; marks: boolean[] }) {
  return (
    <span class="model-code">
      {[...code].map((character, index) => (marks[index] ? <mark key={index}>{character}</mark> : character))}
    </span>
  );
}
