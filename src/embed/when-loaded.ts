import { isMissing, type Missing } from "./missing.ts";

/** Loads what is missing; never fails, and says itself that it takes long. */
export type Load = (missing: Missing) => Promise<void>;

/**
 * Does something; where it needs something that is not loaded yet, it is done again once that is there. Sessions never
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
    if (!isMissing(problem) || !load) throw problem;
    void load(problem).then(() => again(work));
  }
}

/** Whether something could be done with what is there. */
export function couldAtOnce(work: () => void): boolean {
  try {
    work();
    return true;
  } catch (problem) {
    if (!isMissing(problem)) throw problem;
    return false;
  }
}
