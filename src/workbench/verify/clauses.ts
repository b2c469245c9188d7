import type { Condition } from "../../guide/index.ts";

/** One plain statement of a condition, or its denial. */
export type Literal = {
  holds: boolean;
  of: Exclude<Condition, { is: string } | { all: unknown } | { any: unknown } | { not: unknown }>;
};

/** Every way in which a condition can hold, each as the statements that it takes: its disjunctive normal form. */
export function waysToHold(
  condition: Condition,
  named: Record<string, Condition>,
  holds = true,
): Literal[][] {
  if (typeof condition === "string") return [[{ holds, of: condition }]];
  if ("is" in condition) return waysToHold(named[condition.is] ?? { all: [] }, named, holds);
  if ("not" in condition) return waysToHold(condition.not, named, !holds);
  const list = "all" in condition ? condition.all : "any" in condition ? condition.any : null;
  if (!list) return [[{ holds, of: condition as Literal["of"] }]];
  const parts = list.map((one) => waysToHold(one, named, holds));
  // Denied, "all" becomes "any" of the denials and the other way round.
  return "all" in condition === holds ? combine(parts) : parts.flat();
}

function combine(parts: Literal[][][]): Literal[][] {
  return parts.reduce<Literal[][]>(
    (ways, part) => ways.flatMap((way) => part.map((more) => [...way, ...more])),
    [[]],
  );
}

/** The finding that a statement asks for, or null where it asks for none. */
export function findingOf({ of }: Literal): { turn: string; is: string[] } | null {
  if (typeof of === "string") return null;
  return "answered" in of ? of.answered : "verdict" in of ? of.verdict : null;
}
