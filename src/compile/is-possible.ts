import { type Condition, guardOf, type Named, truthOf } from "../condition/index.ts";

/** The answers to the opening, by turn, such as `opening.supply`. */
export type OpeningAnswers = Readonly<Record<string, string>>;

/** True unless the answers to the opening alone rule the condition out for the rest of the session. */
export function isPossible(condition: Condition, opening: OpeningAnswers, named: Named): boolean {
  const holds = truthOf(guardOf(condition, named), ({ type, params }) => {
    const { turn, is } = params as { turn: string; is: string[] };
    return type === "answered" && turn.startsWith("opening.") ? is.includes(opening[turn] ?? "") : null;
  });
  return holds !== false;
}
