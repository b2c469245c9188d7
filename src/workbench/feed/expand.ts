import { codeText } from "../../catalogue/index.ts";

/** Why a pattern for models cannot be used; the message is for the person who edits the feed. */
export type PatternProblem = {
  code: "bad-pattern" | "pattern-without-model" | "pattern-too-wide";
  message: string;
};

/** Most models that one pattern may mean; one that means more is a slip (judgement). */
export const mostExpanded = 50_000;

// Judgement: with fewer signs a pattern means half of a shop, and finding what it means takes a look at every model.
const shortestPrefix = 2;

/** Whether what stands in a feed's model column is a pattern or a range, and no code. */
export function isPattern(written: string): boolean {
  return written.includes("*") || written.includes("?") || written.includes("..");
}

type Sorted = { readonly code: string; readonly key: string };

/**
 * The models that a pattern means: `WXM 43*` (any run of signs), `WXM 43?A` (one sign), `WXM 430A..WXM 439A` (a range
 * of numbers; what stands around the number is the same). Separators and case do not count.
 * @param models sorted by key, in UTF-16 order
 * @param look is called for each model that is held against the pattern; may throw, to end it
 */
export function expandFitment<Model extends Sorted>(
  pattern: string,
  models: readonly Model[],
  most = mostExpanded,
  look: () => void = () => {},
): Model[] | PatternProblem {
  const read = pattern.includes("..") ? readRange(pattern) : readWildcards(pattern);
  if ("code" in read) return read;
  const found: Model[] = [];
  for (let at = lowerBound(models, read.from); at < models.length; at++) {
    const model = models[at];
    if (!model || !read.mayFollow(model.key)) break;
    look();
    if (!read.isMeant(model.key)) continue;
    if (found.length === most)
      return {
        code: "pattern-too-wide",
        message: `"${pattern}" means more than ${most} models of this feed. Write a narrower one.`,
      };
    found.push(model);
  }
  if (found.length > 0) return found;
  return {
    code: "pattern-without-model",
    message: `"${pattern}" means no model that this feed names by its full code.`,
  };
}

type Reach = { from: string; mayFollow(key: string): boolean; isMeant(key: string): boolean };

function bad(message: string): PatternProblem {
  return { code: "bad-pattern", message };
}

function readWildcards(pattern: string): Reach | PatternProblem {
  const signs = codeText(pattern);
  const from = signs.slice(0, signs.search(/[*?]/));
  if (from.length < shortestPrefix)
    return bad(`Write ${shortestPrefix} letters or digits at least before the first * or ? of "${pattern}".`);
  return { from, mayFollow: (key) => key.startsWith(from), isMeant: (key) => matches(signs, key) };
}

/** Whether a key is one of those that the signs stand for; steps back to the last star only, so never for long. */
function matches(signs: string, key: string): boolean {
  let [at, place] = [0, 0];
  let star = -1;
  let resume = 0;
  while (place < key.length) {
    if (signs[at] === "*") {
      star = at++;
      resume = place;
    } else if (signs[at] === "?" || signs[at] === key[place]) {
      at++;
      place++;
    } else if (star >= 0) {
      at = star + 1;
      place = ++resume;
    } else return false;
  }
  while (signs[at] === "*") at++;
  return at === signs.length;
}

function readRange(pattern: string): Reach | PatternProblem {
  const ends = pattern.split("..").map(codeText);
  const [from = "", to = ""] = ends;
  if (ends.length !== 2 || from === "" || to === "")
    return bad(`Write a range as two whole codes with two dots between: "WX 430A..WX 439A".`);
  if (/[*?]/.test(from + to)) return bad(`"${pattern}" is a range and a pattern in one. Write two rows.`);
  const around = numberAround(from, to);
  if (!around)
    return bad(
      `The codes of the range "${pattern}" must have the same length and differ in one number only.`,
    );
  if (from > to) return bad(`The range "${pattern}" is the wrong way round.`);
  const { start, end } = around;
  const [before, after] = [from.slice(0, start), from.slice(end)];
  return {
    from,
    mayFollow: (key) => key.startsWith(before) && key <= to,
    isMeant: (key) =>
      key.length === from.length && key.endsWith(after) && /^\d+$/.test(key.slice(start, end)),
  };
}

/** Where the one number stands in which two codes differ, or null. The same code twice has any number. */
function numberAround(from: string, to: string): { start: number; end: number } | null {
  if (from.length !== to.length) return null;
  for (const { index, 0: digits } of from.matchAll(/\d+/g)) {
    const end = index + digits.length;
    if (from.slice(0, index) === to.slice(0, index) && from.slice(end) === to.slice(end))
      return /^\d+$/.test(to.slice(index, end)) ? { start: index, end } : null;
  }
  return null;
}

function lowerBound(models: readonly Sorted[], key: string): number {
  let [low, high] = [0, models.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((models[middle]?.key ?? "") < key) low = middle + 1;
    else high = middle;
  }
  return low;
}
