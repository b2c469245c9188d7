import { type Flow, limitOf } from "../guide/index.ts";
import { chanceOfComplaint } from "./complained.ts";
import type { OpeningAnswers } from "./is-possible.ts";

/** Stands for all that no cause of the list explains. */
export const anythingElse = "anything-else";

/**
 * How likely each cause is in a scenario once the opening has been answered, nothing else being known; they sum to 1.
 * A cause that is negligible then is left out, and its share goes to whatever else it may be.
 * @param opening null: nothing was changed lately, and nobody was asked whether there is a tank
 */
export function sharesOf(flow: Flow, scenario: string, opening: OpeningAnswers | null): Record<string, number> {
  const { complaint = "" } = flow.scenarios[scenario] ?? {};
  const tank = { tank: 1, plumbed: 0 }[opening?.["opening.supply"] ?? ""] ?? limitOf(flow.limits, "share-tank");
  const changed = opening?.["opening.changed"] ?? "";
  const weights = Object.entries(flow.machine.causes).map(([id, { share, machine, lately }]) => {
    const type = machine === "tank" ? tank : machine === "plumbed" ? 1 - tank : 1;
    return [id, share * type * (lately?.[changed] ?? 1) * chanceOfComplaint(flow, id, complaint)] as const;
  });
  const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
  const least = limitOf(flow.limits, "negligible-share") * total;
  const known = weights.filter(([id, weight]) => weight >= least && id !== anythingElse);
  const share = (1 - limitOf(flow.limits, anythingElse)) / total;
  const shares = Object.fromEntries(known.map(([id, weight]) => [id, weight * share]));
  const rest = 1 - Object.values(shares).reduce((sum, one) => sum + one, 0);
  return flow.causes[anythingElse] ? { ...shares, [anythingElse]: rest } : shares;
}

const suspected = new WeakMap<Flow, Map<string, string[]>>();

/** The causes that a scenario reckons with after one opening or another, in the order of their list. */
export function causesOf(flow: Flow, scenario: string): string[] {
  const cache = suspected.get(flow) ?? new Map<string, string[]>();
  suspected.set(flow, cache);
  const before = cache.get(scenario);
  if (before) return before;
  const turns = flow.opening.turns;
  const answers = (turn: string) => Object.keys(turns[turn]?.answers ?? { "not-asked": null });
  const found = new Set(
    answers("supply").flatMap((supply) =>
      answers("changed").flatMap((changed) =>
        Object.keys(sharesOf(flow, scenario, { "opening.supply": supply, "opening.changed": changed })),
      ),
    ),
  );
  const causes = Object.keys(flow.causes).filter((id) => found.has(id));
  cache.set(scenario, causes);
  return causes;
}
