import { type Condition, type Guard, guardOf, type Named, truthOf } from "../condition/index.ts";

/** The answers to the opening, by turn, such as `opening.supply`. */
export type OpeningAnswers = Readonly<Record<string, string>>;

/** The same few conditions are asked about after every way through the opening. */
const known = new WeakMap<Named, Map<Condition, Guard>>();

/** True unless the answers to the opening alone rule the condition out for the rest of the session. */
export function isPossible(condition: Condition, opening: OpeningAnswers, named: Named): boolean {
  const cache = known.get(named) ?? new Map<Condition, Guard>();
  known.set(named, cache);
  const guard = cache.get(condition) ?? guardOf(condition, named);
  cache.set(condition, guard);
  const holds = truthOf(guard, ({ type, params }) => {
    const { turn, is } = params as { turn: string; is: string[] };
    return type === "answered" && turn.startsWith("opening.") ? is.includes(opening[turn] ?? "") : null;
  });
  return holds !== false;
}
