import type { Guard } from "./guard.ts";

/** Whether something holds; null while that is not yet known. */
export type Truth = boolean | null;

/**
 * Whether a guard holds, as far as its words are known (the strong logic of S. C. Kleene, Introduction to
 * Metamathematics, 1952, § 64): what is true or false stays so whatever becomes known later. Asks no more words than
 * it takes.
 * @param holds says of a word whether it holds
 */
export function truthOf(guard: Guard, holds: (word: Guard) => Truth): Truth {
  const { of } = guard.params as { of: Guard[] & Guard };
  switch (guard.type) {
    case "not": {
      const part = truthOf(of, holds);
      return part === null ? null : !part;
    }
    case "all":
    case "any": {
      const decisive = guard.type === "any";
      let known: Truth = !decisive;
      for (const one of of) {
        const part = truthOf(one, holds);
        if (part === decisive) return decisive;
        if (part === null) known = null;
      }
      return known;
    }
    default:
      return holds(guard);
  }
}
