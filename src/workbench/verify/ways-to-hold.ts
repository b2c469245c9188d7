import { type Condition, fold, type Named, type Statement, spellOut } from "../../condition/index.ts";

/** A statement of a condition, or its denial. */
export type Literal = { holds: boolean; of: Statement };
type Ways = Literal[][];

/** Every way in which a condition can hold, each as the statements that it takes: its disjunctive normal form. */
export function waysToHold(condition: Condition, named: Named): Ways {
  // Denied, "all" becomes "any" of the denials and the other way round.
  const among = (parts: ((holds: boolean) => Ways)[], holds: boolean, together: boolean) => {
    const ways = parts.map((part) => part(holds));
    return together ? combine(ways) : ways.flat();
  };
  const to = spellOut<(holds: boolean) => Ways>(
    {
      statement: (of) => (holds) => [[{ holds, of }]],
      all: (parts) => (holds) => among(parts, holds, holds),
      any: (parts) => (holds) => among(parts, holds, !holds),
      not: (part) => (holds) => part(!holds),
    },
    named,
  );
  return fold(condition, to)(true);
}

function combine(parts: Ways[]): Ways {
  return parts.reduce<Ways>(
    (ways, part) => ways.flatMap((way) => part.map((more) => [...way, ...more])),
    [[]],
  );
}

/** The finding that a statement asks for, or null where it asks for none. */
export function findingOf({ of: { type, params } }: Literal): { turn: string; is: string[] } | null {
  return type === "answered" || type === "verdict" ? params : null;
}
