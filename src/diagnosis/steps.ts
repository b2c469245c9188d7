/** Work that offers a pause between any two of its steps, so that a slow phone stays free for a touch meanwhile. */
export type Steps<Result> = Generator<void, Result>;

/** Does all steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}
