import type { Flow } from "../guide/index.ts";

/**
 * Hazards of checks that no gate of theirs covers, as `check: hazard`; none in a flow that was verified. Cheap enough
 * for a phone to ask of flows that came from elsewhere.
 * @param known the flow that says what is dangerous where, so that an edit cannot talk a hazard away
 */
export function findOpenHazards({ checks, gates }: Flow, known: Flow): string[] {
  return Object.values(checks).flatMap((check) => {
    const place = known.access[known.stations.access[check.station] ?? ""] ?? [];
    const hazards = new Set([...place, ...(known.access[check.access] ?? []), ...(check.hazards ?? [])]);
    const covered = (check.gates ?? []).flatMap((gate) =>
      gates[gate]?.items.length ? gates[gate].covers : [],
    );
    return [...hazards]
      .filter((hazard) => known.hazards[hazard]?.gate !== "none" && !covered.includes(hazard))
      .map((hazard) => `${check.id}: ${hazard}`);
  });
}
