import { describe, expect, test, vi } from "vitest";
import { createExclusive, type Means } from "../../src/embed/exclusive.ts";

type Request = LockManager["request"];

/** Means of a tab with these locks that cannot hear from others. */
const alone = (request?: unknown): Means => ({
  locks: request ? ({ request } as LockManager) : undefined,
  openChannel: () => null,
  isSeen: () => true,
});

/** The tabs of one browser: one lock, given in turn, and a channel that reaches all others. */
function createBrowser() {
  const line: (() => void)[] = [];
  const channels = new Set<{ onmessage: (() => void) | null }>();
  let isTaken = false;
  const next = () => {
    const enter = isTaken ? undefined : line.shift();
    if (!enter) return;
    isTaken = true;
    enter();
  };
  const request = (_: string, { signal }: LockOptions, work: () => Promise<void> | undefined) =>
    new Promise<void>((done, fail) => {
      const enter = async () => {
        await work();
        isTaken = false;
        done();
        next();
      };
      line.push(enter);
      signal?.addEventListener("abort", () => {
        if (!line.includes(enter)) return;
        line.splice(line.indexOf(enter), 1);
        fail(signal.reason);
      });
      queueMicrotask(next);
    });
  const openTab = (isSeen = () => true) => {
    const openChannel = () => {
      const own = {
        onmessage: null as (() => void) | null,
        postMessage: () =>
          queueMicrotask(() => {
            for (const one of channels) if (one !== own) one.onmessage?.();
          }),
        close: () => void channels.delete(own),
      };
      channels.add(own);
      return own as never;
    };
    return createExclusive("a", { locks: { request } as unknown as LockManager, openChannel, isSeen });
  };
  return { openTab, channels };
}

const untilDone = (exclusively: (work: () => void) => void) => new Promise<void>((done) => exclusively(done));

/** Whether work is done before whoever asks for it goes on. */
const isAtOnce = (exclusively: (work: () => void) => void) => {
  const work = vi.fn();
  exclusively(work);
  return work.mock.calls.length === 1;
};

describe("one writer at a time", () => {
  test("works under the lock of its name, once", async () => {
    const names: string[] = [];
    const request = async (name: string, _: unknown, work: () => void) => {
      names.push(name);
      work();
    };
    const work = vi.fn();
    createExclusive("a", alone(request)).exclusively(work);
    await Promise.resolve();
    expect([names, work.mock.calls.length]).toEqual([["a"], 1]);
  });

  test("works at once where there are no locks", () => {
    expect(isAtOnce(createExclusive("a", alone()).exclusively)).toBe(true);
  });

  test("works without the lock where none is to be had", async () => {
    const request = async () => {
      throw new DOMException("denied", "SecurityError");
    };
    await untilDone(createExclusive("a", alone(request)).exclusively);
  });

  test("waits no longer than a second for a tab that was frozen while it had the lock", async () => {
    vi.useFakeTimers();
    const request = ((_: string, { signal }: LockOptions) =>
      new Promise((_done, fail) => {
        signal?.addEventListener("abort", () => fail(signal.reason));
      })) as unknown as Request;
    const work = vi.fn();
    createExclusive("a", alone(request)).exclusively(work);
    await vi.advanceTimersByTimeAsync(999);
    expect(work).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(work).toHaveBeenCalledTimes(1);
    vi.useRealTimers();
  });
});

describe("a tab that keeps the lock", () => {
  test("does its next work at once, and what it asked for while it waited in turn", async () => {
    const { exclusively } = createBrowser().openTab();
    const done: number[] = [];
    exclusively(() => done.push(1));
    exclusively(() => done.push(2));
    expect(done).toEqual([]);
    await vi.waitFor(() => expect(done).toEqual([1, 2]));
    await untilDone(exclusively);
    expect(isAtOnce(exclusively)).toBe(true);
  });

  test("gives it to another that asks, and asks for it back", async () => {
    const { openTab } = createBrowser();
    const [one, other] = [openTab(), openTab()];
    await untilDone(one.exclusively);
    expect(isAtOnce(one.exclusively)).toBe(true);
    await untilDone(other.exclusively);
    expect([isAtOnce(other.exclusively), isAtOnce(one.exclusively)]).toEqual([true, false]);
    await untilDone(one.exclusively);
  });

  test("never works while another one does, however they ask", async () => {
    const { openTab } = createBrowser();
    const tabs = [openTab(), openTab(), openTab()];
    const order: number[] = [];
    const all = Array.from({ length: 30 }, (_, turn) =>
      untilDone((done) =>
        tabs[(turn * 7) % 3]?.exclusively(() => {
          order.push(turn);
          done();
        }),
      ),
    );
    await Promise.all(all);
    expect(order.toSorted((a, b) => a - b)).toEqual(order.map((_, turn) => turn));
    // Only one of them does its next work at once: whoever came last.
    expect(tabs.filter(({ exclusively }) => isAtOnce(exclusively)).length).toBeLessThanOrEqual(1);
  });

  test("gives it back when it is hidden or left, and keeps none that it gets while nobody looks", async () => {
    const { openTab, channels } = createBrowser();
    let isSeen = true;
    const { exclusively, letGo } = openTab(() => isSeen);
    await untilDone(exclusively);
    expect(channels.size).toBe(1);
    isSeen = false;
    letGo();
    expect([isAtOnce(exclusively), channels.size]).toEqual([false, 1]);
    await untilDone(exclusively);
    expect([isAtOnce(exclusively)]).toEqual([false]);
    await untilDone(exclusively);
    await vi.waitFor(() => expect(channels.size).toBe(0));
  });
});
