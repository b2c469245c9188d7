import { codeDistance, editCosts, markDifferences } from "./edit-distance.ts";
import { baseOf } from "./ending.ts";
import { partFor } from "./fitment.ts";
import { foldCode, normaliseCode, type UnreadableCode } from "./model-code.ts";
import { isOneSlip } from "./one-slip.ts";
import type { Catalogue, Model } from "./schema.ts";

/**
 * A model that may be meant, with a mark for each character of its code that differs from what was typed; `asTyped`
 * where nothing does, separators and case aside.
 */
export type Candidate = { model: Model; marks: boolean[]; asTyped: boolean };

/**
 * What a typed code may mean. Only `exact` needs no comparing; every result keeps what was typed. `differing`: the
 * kinds of part that are not the same for all candidates; `more`: how many others were not named.
 */
export type FindResult =
  | { kind: "exact"; model: Model; typed: string }
  | { kind: "near"; candidates: Candidate[]; differing: string[]; more: number; typed: string }
  | { kind: "unknown"; typed: string }
  | UnreadableCode;

// Judgement: three codes fit a phone's screen and can still be compared with the plate.
export const mostCandidates = 3;

/** How far a candidate may be, in tenths of an edit: one edit for codes under six characters, else two. */
function reach(shorter: number): number {
  // Less than the whole code: two codes of one character have nothing in common.
  return Math.min(shorter < 6 ? 1 : 2, shorter - 1) * editCosts.other;
}

/** A code that may be meant, and how near it is: 0 where it is what was typed, in tenths of an edit otherwise. */
export type Nearness = { distance: number; isTwin: boolean; isPlausible: boolean };

/**
 * How near a code of the catalogue is to a typed one, or null where it is out of reach. Plausible is what looks the
 * same, what is one slip away, and what goes on where the typed code ends.
 * @param asked what was typed, normalised, and the same without its ending
 */
export function nearnessOf(
  asked: { code: string; base: string | null },
  { code: display, key }: { code: string; key: string },
): Nearness | null {
  const [typed, fold] = [foldCode(asked.code), foldCode(key)];
  const isTwin = typed === fold;
  const base = foldCode(baseOf(display) ?? key);
  const goesOn = !isTwin && base === typed;
  const hasOtherEnding = goesOn || (!isTwin && asked.base !== null && base === foldCode(asked.base));
  const shorter = Math.min(typed.length, fold.length);
  const limit = reach(shorter);
  // Most models are out of reach by length alone; skipping them keeps typing smooth.
  if (!hasOtherEnding && Math.abs(typed.length - fold.length) * editCosts.doubled > limit) return null;
  const edited = codeDistance(asked.code, key);
  const distance = hasOtherEnding ? Math.min(edited, editCosts.ending) : edited;
  const isPlausible = isTwin || goesOn || (shorter > 1 && isOneSlip(typed, fold));
  return isPlausible || distance <= limit ? { distance, isTwin, isPlausible } : null;
}

/** Sorts what looks the same first, then by distance; equals by their code, so that no feed's order decides. */
export function compareNearness(
  a: Nearness & { model: { code: string } },
  b: Nearness & { model: { code: string } },
): number {
  return (
    Number(b.isTwin) - Number(a.isTwin) || a.distance - b.distance || (a.model.code < b.model.code ? -1 : 1)
  );
}

/**
 * Finds the model of a typed code; never throws. Exact is only what equals one model's code, separators and
 * case aside, when no other model could have been meant: none that looks the same, none that one slip makes of it. A
 * wrong part costs a second day without ice, a question one tap. All else is `near` (1 to 3 candidates: look-alikes
 * first, then by distance) or `unknown`.
 */
export function findModel(catalogue: Catalogue, typed: string): FindResult {
  const read = normaliseCode(typed);
  if (read.kind === "unreadable") return read;
  const { code } = read;
  const asked = { code, base: baseOf(typed) };
  const found = [...catalogue.models.values()]
    .flatMap((model) => {
      const nearness = nearnessOf(asked, model);
      return nearness ? [{ model, ...nearness }] : [];
    })
    .sort(compareNearness);
  const best = found[0];
  if (!best) return { kind: "unknown", typed };
  const meant = best.distance === 0 ? found.filter(({ isPlausible }) => isPlausible) : found;
  if (best.distance === 0 && meant.length === 1) return { kind: "exact", model: best.model, typed };
  const shown = meant.slice(0, mostCandidates).map(({ model, distance }) => ({
    model,
    marks: distance === 0 ? [] : markDifferences(code, model.code),
    asTyped: distance === 0,
  }));
  const more = meant.length - shown.length;
  return {
    kind: "near",
    candidates: shown,
    differing: differingKinds(
      catalogue,
      shown.map(({ model }) => model.code),
    ),
    more,
    typed,
  };
}

/** The kinds of part that the models do not all take alike, or take on conditions. */
function differingKinds(catalogue: Catalogue, codes: string[]): string[] {
  const kinds = new Set(
    codes.flatMap((code) => catalogue.fitments.get(code)?.map(({ part }) => part.kind) ?? []),
  );
  return [...kinds].filter((kind) => {
    const offers = codes.map((code) => {
      const fit = partFor(catalogue, code, kind);
      return fit.kind === "part"
        ? [fit.part, ...fit.alternatives]
            .map(({ number }) => number)
            .sort()
            .join()
        : fit.kind;
    });
    return new Set(offers).size > 1;
  });
}
