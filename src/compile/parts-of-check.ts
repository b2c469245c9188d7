import type { Check, Opening, Outcome, TurnRule } from "../guide/index.ts";

/** The turns of a check that lie behind the same gates: one compound state of the chart, its gates first. */
export type Part = {
  id: string;
  gates: string[];
  access: string;
  start: string;
  turns: Record<string, TurnRule>;
};

/**
 * A check in its parts, the one that it starts with first: that has the check's own name, each other one the names of
 * its gates besides.
 */
export function partsOfCheck(check: Check | Opening): Part[] {
  const parts = new Map<string, Part>();
  const own = "gates" in check ? check.gates : undefined;
  const access = "access" in check ? check.access : "";
  const first = check.turns[check.start];
  const order = first ? { [check.start]: first, ...check.turns } : check.turns;
  for (const [name, turn] of Object.entries(order)) {
    const gates = turn.gates ?? own ?? [];
    const key = gates.join("-");
    const part = parts.get(key) ?? {
      id: parts.size ? `${check.id}-${key || "open"}` : check.id,
      gates,
      access: turn.access ?? access,
      start: name,
      turns: {},
    };
    part.turns[name] = turn;
    parts.set(key, part);
  }
  return [...parts.values()];
}

/** Every gate before some turn of a check, each once. */
export function gatesOf(check: Check): string[] {
  return [...new Set(partsOfCheck(check).flatMap(({ gates }) => gates))];
}

/** Every outcome of every answer of a check, the standing ones included. */
export function outcomesOf({ turns }: Opening): Outcome[] {
  return Object.values(turns).flatMap(({ answers, verdicts, ...turn }) => [
    ...Object.values({ ...answers, ...verdicts }),
    ...[turn["not-sure"], turn.cannot].flatMap((one) => one || []),
  ]);
}
