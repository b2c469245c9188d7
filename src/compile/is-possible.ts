import type { Condition } from "../guide/index.ts";

/** The answers to the opening, by turn, such as `opening.supply`. */
export type OpeningAnswers = Readonly<Record<string, string>>;

/** True unless the answers to the opening alone rule the condition out for the rest of the session. */
export function isPossible(
  condition: Condition,
  opening: OpeningAnswers,
  named: Record<string, Condition>,
): boolean {
  return truth(condition, opening, named) !== false;
}

/** What the opening alone says about a condition; null where later answers decide. */
function truth(
  condition: Condition,
  opening: OpeningAnswers,
  named: Record<string, Condition>,
): boolean | null {
  const each = (list: Condition[]) => list.map((one) => truth(one, opening, named));
  if (typeof condition === "string") return null;
  if ("answered" in condition) {
    const { turn, is } = condition.answered;
    return turn.startsWith("opening.") ? is.includes(opening[turn] ?? "") : null;
  }
  if ("is" in condition) return truth(named[condition.is] ?? "unwaited", opening, named);
  if ("all" in condition) {
    const parts = each(condition.all);
    return parts.includes(false) ? false : parts.includes(null) ? null : true;
  }
  if ("any" in condition) {
    const parts = each(condition.any);
    return parts.includes(true) ? true : parts.includes(null) ? null : false;
  }
  if ("not" in condition) {
    const inner = truth(condition.not, opening, named);
    return inner === null ? null : !inner;
  }
  return null;
}
