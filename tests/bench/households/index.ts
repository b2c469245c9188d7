import type { Flow } from "../../../src/guide/index.ts";
import { timeOfChoice } from "./decision-speed.ts";
import { drawHouseholds } from "./draw.ts";
import { reportHouseholds } from "./report.ts";
import { runHouseholds } from "./run.ts";
import { createScenes } from "./scene.ts";

export { drawHouseholds } from "./draw.ts";
export { goalsOfHouseholds, reportHouseholds } from "./report.ts";
export { policies, type Results, runHouseholds } from "./run.ts";

/** Everything that is printed and drawn of simulated homes. `clock` in milliseconds, for the speed of a choice. */
export function benchHouseholds(
  flow: Flow,
  clock: () => number,
  homes = 20_000,
): { text: string; svg: string } {
  const results = runHouseholds(flow, homes);
  const [first] = createScenes(flow);
  if (!first) throw new Error("There is no scenario");
  const { choice, pass } = timeOfChoice(first.scene, clock);
  const speed = [
    `One choice among 30 checks for 45 causes: ${choice.toFixed(2)} ms here (goal 5 ms at four times slower, so 1.25 ms);`,
    `that is the time of ${(choice / pass).toFixed(0)} passes over all likelihoods, a number that does not hang on the machine.`,
  ].join("\n");
  return { text: `${reportHouseholds(results)}\n\n${speed}`, svg: drawHouseholds(results) };
}
