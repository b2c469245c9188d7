import type { Check, Flow, Scenario } from "../guide/index.ts";

/** True for a check that is the wait a remedy calls for: a move of another kind. */
export function isWaitForIce(check: Check | undefined): boolean {
  return Object.values(check?.turns ?? {}).some((turn) => turn.waits);
}

/** The wait of a scenario, a day for ice or a moment for a dispenser; null where it has none. */
export function waitOf(flow: Flow, { checks }: Scenario): { check: Check; minutes: number } | null {
  const check = checks.map(({ check }) => flow.checks[check]).find(isWaitForIce);
  const turn = Object.values(check?.turns ?? {}).find(({ waits }) => waits);
  const { value, unit } = flow.limits[turn?.lasts ?? ""] ?? { value: 0, unit: "min" };
  return check ? { check, minutes: unit === "h" ? value * 60 : value } : null;
}
