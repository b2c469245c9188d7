/** Lets the browser answer a touch and draw a frame between two pieces of work. */
export const nextTask = (): Promise<void> =>
  // What goes on by `yield` is not put behind the page's own timers.
  (globalThis as never as Partial<Page>).scheduler?.yield?.() ?? new Promise((resume) => setTimeout(resume));

type Page = { scheduler: { yield?(): Promise<void> } };

/** Does work when nothing else is to be done, at the latest after two seconds; Safari has no such time to give. */
export function whenIdle(work: () => void): void {
  if (typeof requestIdleCallback === "function") requestIdleCallback(work, { timeout: 2000 });
  else setTimeout(work, 200);
}

/** Waits so long, or until there is a connection again. */
export function waitForSignal(milliseconds: number): Promise<void> {
  return new Promise((resume) => {
    const go = () => {
      clearTimeout(timer);
      removeEventListener("online", go);
      resume();
    };
    const timer = setTimeout(go, milliseconds);
    addEventListener("online", go);
  });
}
