import { anythingElse, type Flow } from "../guide/index.ts";
import { chanceOfComplaint } from "./complained.ts";
import type { OpeningAnswers } from "./is-possible.ts";

/** A limit of the model; that one is missing the verifier tells, which needs the causes of a scenario all the same. */
const shareOf = ({ limits }: Flow, id: string) => limits[id]?.value ?? 0;

const known = new WeakMap<Flow, Map<string, Record<string, number>>>();

/**
 * How likely each cause is in a scenario once the opening has been answered, nothing else being known; they sum to 1.
 * A cause that is negligible then, and that no check of the scenario settles, goes to whatever else it may be.
 * @param opening null: nothing was changed lately, and nobody was asked whether there is a tank
 */
export function sharesOf(
  flow: Flow,
  scenario: string,
  opening: OpeningAnswers | null,
): Record<string, number> {
  const cache = known.get(flow) ?? new Map<string, Record<string, number>>();
  known.set(flow, cache);
  const { "opening.supply": supply = "", "opening.changed": changed = "" } = opening ?? {};
  const key = [scenario, supply, changed].join(" ");
  const shares = cache.get(key) ?? sharesAfter(flow, scenario, supply, changed);
  cache.set(key, shares);
  return shares;
}

function sharesAfter(flow: Flow, scenario: string, supply: string, changed: string): Record<string, number> {
  const { complaint = "" } = flow.scenarios[scenario] ?? {};
  const tank = { tank: 1, plumbed: 0 }[supply] ?? shareOf(flow, "share-tank");
  const weights = Object.entries(flow.machine.causes).map(([id, { share, machine, lately }]) => {
    const type = machine === "tank" ? tank : machine === "plumbed" ? 1 - tank : 1;
    return [
      id,
      share * type * (lately?.[changed] ?? 1) * chanceOfComplaint(flow.machine, id, complaint),
    ] as const;
  });
  const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
  const least = shareOf(flow, "negligible-share") * total;
  const settled = settledIn(flow, scenario);
  const known = weights.filter(
    ([id, weight]) => weight > 0 && (weight >= least || settled.has(id)) && id !== anythingElse,
  );
  const share = (1 - shareOf(flow, anythingElse)) / total;
  const shares = Object.fromEntries(known.map(([id, weight]) => [id, weight * share]));
  const rest = 1 - Object.values(shares).reduce((sum, one) => sum + one, 0);
  return flow.causes[anythingElse] ? { ...shares, [anythingElse]: rest } : shares;
}

/** The causes that a scenario's checks put right, or that end it with a proof. */
function settledIn({ scenarios, checks }: Flow, scenario: string): Set<string> {
  const { checks: entries = [], proofs = [] } = scenarios[scenario] ?? {};
  const turns = entries.flatMap(({ check }) => Object.values(checks[check]?.turns ?? {}));
  const outcomes = turns.flatMap(({ answers, verdicts }) => Object.values({ ...answers, ...verdicts }));
  return new Set([...proofs, ...outcomes.flatMap(({ remedies }) => remedies ?? [])]);
}

/** The causes of a scenario that its checks can establish, each with its share among these. */
export function learnableCauses(flow: Flow, scenario: string): Record<string, number> {
  const settled = settledIn(flow, scenario);
  const shares = Object.entries(sharesOf(flow, scenario, null)).filter(
    ([id, share]) => settled.has(id) && share > 0 && id !== anythingElse,
  );
  const total = shares.reduce((sum, [, share]) => sum + share, 0);
  return Object.fromEntries(shares.map(([id, share]) => [id, share / total]));
}

const reckoned = new WeakMap<Flow, Map<string, readonly string[]>>();

/** The causes that a scenario reckons with after one opening or another, in the order of their list. */
export function causesOf(flow: Flow, scenario: string): readonly string[] {
  const cache = reckoned.get(flow) ?? new Map<string, readonly string[]>();
  reckoned.set(flow, cache);
  const causes = cache.get(scenario) ?? causesAfterAny(flow, scenario);
  cache.set(scenario, causes);
  return causes;
}

function causesAfterAny(flow: Flow, scenario: string): string[] {
  const answers = (turn: string) => ["", ...Object.keys(flow.opening.turns[turn]?.answers ?? {})];
  const found = new Set(
    answers("supply").flatMap((supply) =>
      answers("changed").flatMap((changed) =>
        Object.keys(sharesOf(flow, scenario, { "opening.supply": supply, "opening.changed": changed })),
      ),
    ),
  );
  return Object.keys(flow.causes).filter((id) => found.has(id));
}

/** Limits without which no model is made. */
export const modelLimits = [
  ...[
    anythingElse,
    "share-tank",
    "negligible-share",
    "cost-fetch",
    "free-look-minutes",
    "least-look",
    "early-look",
    "most-second-looks",
  ],
  ...["error-reading", "error-look", "error-listen", "error-feel", "error-memory"],
];
