import type { Check } from "../guide/index.ts";

/** True for a check that is the wait a remedy calls for: a move of another kind. */
export function isWaitForIce(check: Check | undefined): boolean {
  return Object.values(check?.turns ?? {}).some((turn) => turn.waits);
}
