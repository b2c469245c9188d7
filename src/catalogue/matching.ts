import { codeDistance, editCosts, markDifferences } from "./edit-distance.ts";
import { foldCode, normaliseCode, type UnreadableCode } from "./model-code.ts";
import type { Catalogue, Model } from "./schema.ts";

/** A model that may be meant, with a mark for each character of its code that differs from what was typed. */
export type Candidate = { model: Model; marks: boolean[] };

/** What a typed code may mean. Only `exact` needs no confirming; every result keeps what was typed. */
export type FindResult =
  | { kind: "exact"; model: Model; typed: string }
  | { kind: "near"; candidates: Candidate[]; typed: string }
  | { kind: "unknown"; typed: string }
  | UnreadableCode;

// Judgement: three codes fit a phone's screen and can still be compared with the plate.
const mostCandidates = 3;

/** How far a candidate may be, in tenths of an edit: one edit for codes under six characters, else two. */
function reach(shorter: number): number {
  // Less than the whole code: two codes of one character have nothing in common.
  return Math.min(shorter < 6 ? 1 : 2, shorter - 1) * editCosts.other;
}

/**
 * Finds the model of a typed code; never throws. Exact is only what equals one model's code, separators and
 * case aside, when no other model looks the same: a wrong part costs a second day without ice, a question
 * one tap. All else is `near` (1 to 3 candidates: look-alikes first, then by distance) or `unknown`.
 */
export function findModel(catalogue: Catalogue, typed: string): FindResult {
  const read = normaliseCode(typed);
  if (read.kind === "unreadable") return read;
  const { code } = read;
  const folded = foldCode(code);
  const found: { model: Model; distance: number; twin: boolean }[] = [];
  for (const model of catalogue.models.values()) {
    const twin = foldCode(model.key) === folded;
    const limit = reach(Math.min(code.length, model.key.length));
    // Most models are out of reach by length alone; skipping them keeps typing smooth.
    if (Math.abs(code.length - model.key.length) * editCosts.other > limit) continue;
    const distance = codeDistance(code, model.key);
    if (twin || distance <= limit) found.push({ model, distance, twin });
  }
  found.sort(
    (a, b) =>
      Number(b.twin) - Number(a.twin) || a.distance - b.distance || (a.model.code < b.model.code ? -1 : 1),
  );
  const best = found[0];
  if (!best) return { kind: "unknown", typed };
  const twins = found.filter((each) => each.twin);
  const isCertain = best.distance === 0;
  if (isCertain && twins.length === 1) return { kind: "exact", model: best.model, typed };
  const candidates = (isCertain ? twins : found)
    .slice(0, mostCandidates)
    .map(({ model }) => ({ model, marks: markDifferences(code, model.code) }));
  return { kind: "near", candidates, typed };
}
