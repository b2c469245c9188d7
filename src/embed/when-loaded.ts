import { ScenarioMissing } from "../session/index.ts";

/** Loads a scenario; never fails, and says itself that it takes long. */
export type Load = (scenario: string) => Promise<void>;

/**
 * Does something; where it needs a scenario that is not loaded yet, it is done again once that is there. Sessions never
 * change, so that what was done half has done nothing.
 * @param again how it is done again, such as under a lock
 */
export function whenLoaded(
  work: () => void,
  load: Load | undefined,
  again: (work: () => void) => void = (later) => whenLoaded(later, load),
): void {
  try {
    work();
  } catch (problem) {
    if (!(problem instanceof ScenarioMissing) || !load) throw problem;
    void load(problem.scenario).then(() => again(work));
  }
}

/** Whether something could be done with the scenarios that are there. */
export function couldAtOnce(work: () => void): boolean {
  try {
    work();
    return true;
  } catch (problem) {
    if (!(problem instanceof ScenarioMissing)) throw problem;
    return false;
  }
}
