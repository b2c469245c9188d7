import type { FoundModel, PhotoModels, Texts } from "../../../turn/index.ts";
import { showList } from "../reading/index.ts";
import { machineName } from "./plate-finder.tsx";

/** What a search came to; a code that cannot be read is told at its field instead. */
export type Answered = Exclude<FoundModel, { kind: "unreadable" | "near" }> | Near | "broken";

type Near = Extract<FoundModel, { kind: "near" }> & Partial<PhotoModels>;
type Props = {
  found: Answered;
  busy: boolean;
  texts: Texts;
  onTaken(code: string | null): void;
  onRetry(): void;
};

/** What a typed code may mean; each model is confirmed by a button of its own. */
export function ModelResult({ found, busy, texts, onTaken, onRetry }: Props) {
  const near = found !== "broken" && found.kind === "near" ? found : null;
  const isExact = found !== "broken" && found.kind === "exact";
  const candidates: Near["candidates"] = isExact
    ? [{ model: found.model, marks: [], asTyped: false }]
    : (near?.candidates ?? []);
  return (
    <div class="found">
      <p role="status">{headlineOf(found, texts)}</p>
      {candidates.length > 0 && (
        <ul class="models">
          {candidates.map(({ model, marks, asTyped }) => (
            <li key={model.code} class="card">
              <MarkedCode code={model.code} marks={asTyped ? marksBeside(model.code, candidates) : marks} />
              {asTyped && <em>{texts("measure.as-typed")}</em>}
              <p>
                {model.brand}
                <span class="small">{machineName(texts, model.machine)}</span>
              </p>
              <button
                type="button"
                class={isExact ? "main" : ""}
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
      {candidates.length > 1 && near && !near.isPhoto && <p>{differenceOf(near, texts)}</p>}
      {near && near.more > 0 && <p>{texts("measure.model-more", { count: near.more })}</p>}
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

function headlineOf(found: Answered, texts: Texts): string {
  if (found === "broken") return texts("measure.model-broken");
  const { kind, typed } = found;
  if (kind !== "near") {
    // Long and without a letter: rather what stands below the model code on most plates.
    const isNumber = kind === "unknown" && /^[\d\s./-]{8,}$/.test(typed.trim());
    return texts(`measure.model-${isNumber ? "digits" : kind}`, { typed });
  }
  if (found.isPhoto) return texts("photo.found", { count: found.candidates.length });
  const others = found.candidates.filter(({ asTyped }) => !asTyped).length;
  return others < found.candidates.length
    ? texts("measure.model-twin", { count: others })
    : texts("measure.model-near", { count: others, typed });
}

/** What hangs on the choice, so that nobody takes the first that comes. */
function differenceOf({ differing }: Near, texts: Texts): string {
  const parts = differing.map((kind) => texts(`parts.${kind}.name`) || kind.replaceAll("-", " "));
  return parts.length > 0
    ? texts("measure.parts-differ", { parts: showList(texts, parts), count: parts.length })
    : texts("measure.parts-alike");
}

/** What is as typed differs from nothing typed: where those below it differ, it is what the eye has to compare. */
function marksBeside(code: string, candidates: Near["candidates"]): boolean[] {
  const alike = candidates.filter(({ model }) => model.code.length === code.length);
  return [...code].map((_, index) => alike.some(({ marks }) => marks[index]));
}

/** A code with its differing characters marked: underlined and bold, not only coloured. */
function MarkedCode({ code, marks }: { code: string; marks: boolean[] }) {
  return (
    <p class="model-code">
      {[...code].map((character, index) => (marks[index] ? <mark key={index}>{character}</mark> : character))}
    </p>
  );
}
