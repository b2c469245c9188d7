import type { Flow } from "./flow.ts";

/** The dangers a person can report at any time: the answers of the opening that are marked so. */
export function dangersOf(flow: Flow): string[] {
  return Object.values(flow.opening.turns).flatMap((turn) =>
    Object.entries(turn.answers ?? {}).flatMap(([id, outcome]) => (outcome.danger ? [id] : [])),
  );
}
