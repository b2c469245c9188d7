/** Does its work while no other tab does any of the same name. */
export type Exclusive = (work: () => void) => void;

/** What it is done by, as far as a browser has it. */
export type Means = {
  locks: LockManager | undefined;
  /** Where tabs tell each other that they want the lock; null where they cannot. */
  openChannel(): Pick<BroadcastChannel, "postMessage" | "close" | "onmessage"> | null;
  /** Whether somebody may be looking at this tab. */
  isSeen(): boolean;
};

/** A tab that was frozen while it had the lock must not hold up another for longer; milliseconds. */
const PATIENCE_MS = 1000;

/**
 * One writer at a time, by the browser's locks. A tab that is looked at keeps the lock until another one asks for it,
 * so that its own next work is done at once. Where there are no locks (an insecure page, an older browser), or none is
 * to be had in time, the work is done at once: it compares before it writes.
 * @returns `letGo` gives back what is kept, for a tab that is hidden or left
 */
export function createExclusive(
  name: string,
  { locks, openChannel, isSeen }: Means,
): { exclusively: Exclusive; letGo(): void } {
  if (!locks) return { exclusively: (work) => work(), letGo: () => {} };
  let giveBack: (() => void) | null = null;
  let waiting = 0;
  let isWanted = false;
  let channel: ReturnType<Means["openChannel"]> = null;

  function letGo(): void {
    giveBack?.();
    giveBack = null;
    if (waiting > 0) return;
    isWanted = false;
    channel?.close();
    channel = null;
  }

  /** Tells whoever keeps the lock, and hears from whoever wants it next. */
  function ask(): void {
    channel ??= openChannel();
    if (!channel) return;
    channel.onmessage = () => {
      if (giveBack) letGo();
      else isWanted = true;
    };
    channel.postMessage("wanted");
  }

  /** Ends when the lock is given back; at once where it is not kept. */
  function keep(): Promise<void> | undefined {
    if (channel && waiting === 0 && !isWanted && isSeen())
      return new Promise((done) => {
        giveBack = done;
      });
    letGo();
    return undefined;
  }

  function exclusively(work: () => void): void {
    if (giveBack) {
      work();
      return;
    }
    let isDone = false;
    const once = () => {
      if (isDone) return;
      isDone = true;
      waiting--;
      clearTimeout(timer);
      work();
    };
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), PATIENCE_MS);
    waiting++;
    (locks as LockManager)
      .request(name, { signal: patience.signal }, () => {
        once();
        return keep();
      })
      .catch((problem) => {
        if (isDone) throw problem;
        once();
      });
    // Only now: whoever keeps it gives it back to a tab that stands in line.
    ask();
  }

  return { exclusively, letGo };
}

/** The means of this page. */
export const meansOf = (name: string): Means => ({
  locks: navigator.locks,
  openChannel: () => (typeof BroadcastChannel === "function" ? new BroadcastChannel(name) : null),
  isSeen: () => document.visibilityState === "visible",
});
