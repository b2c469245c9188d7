import type { Check, Flow, TurnRule } from "../guide/index.ts";

/** What a turn exposes a person to, by where its hands go, and by its own word and its check's. */
export function hazardsOfTurn(flow: Flow, check: Check, turn: TurnRule): string[] {
  const there = flow.access[turn.access ?? check.access] ?? [];
  return [...new Set([...there, ...(check.hazards ?? []), ...(turn.hazards ?? [])])];
}

/** What a check exposes a person to in any of its turns. */
export function hazardsOf(flow: Flow, check: Check): string[] {
  return [...new Set(Object.values(check.turns).flatMap((turn) => hazardsOfTurn(flow, check, turn)))];
}
