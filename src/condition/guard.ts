/**
 * The normal form of a condition: plain JSON that xstate takes for a guard. `all`, `any` and `not` hold others in
 * `params.of`; every other type is a word with its parameters.
 */
export type Guard = { type: string; params: Record<string, unknown> };

/** A guard that is a word of its own: what a flow file may state, in normal form. */
export type Statement =
  | { type: "unwaited" | "any-remedied"; params: Record<string, never> }
  | { type: "answered" | "verdict"; params: { turn: string; is: string[] } }
  | { type: "done"; params: { check: string } }
  | { type: "found" | "remedied"; params: { causes: string[] } };

export const all = (...of: Guard[]): Guard => ({ type: "all", params: { of } });
export const any = (...of: Guard[]): Guard => ({ type: "any", params: { of } });
export const not = (of: Guard): Guard => ({ type: "not", params: { of } });

/** What to make of each kind of guard, from what was made of those inside it. */
export type GuardAlgebra<T> = {
  word(guard: Guard): T;
  all(parts: T[]): T;
  any(parts: T[]): T;
  not(part: T): T;
};

/** Goes through a guard from the inside out. */
export function foldGuard<T>(guard: Guard, to: GuardAlgebra<T>): T {
  const { type } = guard;
  const { of } = guard.params as { of: Guard[] & Guard };
  if (type === "not") return to.not(foldGuard(of, to));
  if (type !== "all" && type !== "any") return to.word(guard);
  return to[type](of.map((one) => foldGuard(one, to)));
}
