import { outcomeOf } from "./tally.ts";
import type { Visit } from "./visit.ts";

/** So many conversations are shown at most. */
const most = 60;

/** Whole conversations that ended wrong with that fault or in that way, or had a 'hazard', or left something behind. */
export function traceOf(fault: string, seeds: readonly string[], ask: (seed: string) => Visit): string {
  const shown: string[] = [];
  for (const seed of seeds) {
    const visit = ask(seed);
    const { verdict, ended, faults, hazards, leftBehind } = outcomeOf(visit);
    const lost = verdict === "right" ? [] : [...faults, verdict];
    const unsafe = [...(hazards.length ? ["hazard"] : []), ...(leftBehind.length ? ["left-behind"] : [])];
    if (![...lost, ...unsafe].includes(fault)) continue;
    shown.push(conversation(visit, `${ended} (${visit.ending?.causes.join(", ")}): ${verdict}`));
    if (shown.length === most) break;
  }
  return shown.join("\n\n") || `None of ${seeds.length} homes with "${fault}" ended wrong.`;
}

function conversation({ home, turns }: Visit, end: string): string {
  const { movesMachine, takesPanelOff, waits } = home.person;
  const { tapInReach, water, filter, iceAt } = home.machine;
  return [
    `== home ${home.seed}: ${home.faults.map(({ id }) => id).join(" + ")}; ${home.changed}; ${home.complaint.trouble}`,
    `   ${JSON.stringify({ movesMachine, takesPanelOff, waits, tapInReach, water, filter, iceAt })}`,
    ...turns.map(({ turn, said }) => `   ${turn.padEnd(36)} ${said}`),
    `   => ${end}`,
  ].join("\n");
}
