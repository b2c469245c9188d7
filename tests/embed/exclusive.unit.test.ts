import { describe, expect, test, vi } from "vitest";
import { createExclusive } from "../../src/embed/exclusive.ts";

type Request = LockManager["request"];

describe("one writer at a time", () => {
  test("works under the lock of its name, once", async () => {
    const names: string[] = [];
    const request = (async (name: string, _: unknown, work: () => void) => {
      names.push(name);
      work();
    }) as unknown as Request;
    const work = vi.fn();
    createExclusive("a", { request } as LockManager)(work);
    await Promise.resolve();
    expect([names, work.mock.calls.length]).toEqual([["a"], 1]);
  });

  test("works at once where there are no locks", () => {
    const work = vi.fn();
    createExclusive("a", undefined)(work);
    expect(work).toHaveBeenCalledTimes(1);
  });

  test("works without the lock where none is to be had", async () => {
    const request = (async () => {
      throw new DOMException("denied", "SecurityError");
    }) as unknown as Request;
    await new Promise<void>((done) => createExclusive("a", { request } as LockManager)(done));
  });

  test("waits no longer than a second for a tab that was frozen while it had the lock", async () => {
    vi.useFakeTimers();
    const request = ((_: string, { signal }: LockOptions) =>
      new Promise((_done, fail) => {
        signal?.addEventListener("abort", () => fail(signal.reason));
      })) as unknown as Request;
    const work = vi.fn();
    createExclusive("a", { request } as LockManager)(work);
    await vi.advanceTimersByTimeAsync(999);
    expect(work).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(work).toHaveBeenCalledTimes(1);
    vi.useRealTimers();
  });
});
