/** Lets the browser answer a touch and draw a frame between two pieces of work. */
export const nextTask = () => new Promise<void>((resume) => setTimeout(resume));

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
