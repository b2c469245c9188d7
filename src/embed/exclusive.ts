/** Does its work while no other tab does any of the same name. */
export type Exclusive = (work: () => void) => void;

/** A tab that was frozen while it had the lock must not hold up another for longer; milliseconds. */
const PATIENCE_MS = 1000;

/**
 * One writer at a time, by the browser's locks. Where it has none (an insecure page, an older browser), or none is to
 * be had in time, the work is done at once: it compares before it writes.
 */
export function createExclusive(name: string, locks: LockManager | undefined): Exclusive {
  if (!locks) return (work) => work();
  return (work) => {
    let isDone = false;
    const once = () => {
      if (isDone) return;
      isDone = true;
      work();
    };
    const waiting = new AbortController();
    const timer = setTimeout(() => waiting.abort(), PATIENCE_MS);
    locks
      .request(name, { signal: waiting.signal }, once)
      .catch((problem) => {
        if (isDone) throw problem;
        once();
      })
      .finally(() => clearTimeout(timer));
  };
}
