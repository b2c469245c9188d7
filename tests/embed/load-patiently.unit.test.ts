import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { loadPatiently } from "../../src/embed/load-patiently.ts";

const second = 1000;
let events = new EventTarget();
beforeEach(() => {
  vi.useFakeTimers();
  events = new EventTarget();
  vi.stubGlobal("addEventListener", events.addEventListener.bind(events));
  vi.stubGlobal("removeEventListener", events.removeEventListener.bind(events));
  vi.spyOn(console, "warn").mockImplementation(() => {});
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

/** Loads what comes after so many tries that fail; `clock.wait` lets milliseconds pass. */
function start(failures: number, load: () => Promise<void> = async () => {}) {
  const tries: number[] = [];
  const said: string[] = [];
  const page = { isCurrent: true };
  const began = Date.now();
  const end = loadPatiently(
    async () => {
      tries.push((Date.now() - began) / second);
      if (tries.length <= failures) throw new Error("503 for /parts/a.json");
      await load();
    },
    () => page.isCurrent,
    (trouble) => said.push(trouble),
  );
  return { tries, said, page, end, wait: (seconds: number) => vi.advanceTimersByTimeAsync(seconds * second) };
}

describe("what is loaded patiently", () => {
  test("and comes at once is there without a word", async () => {
    const { end, said, wait } = start(0);
    expect(await end).toBe(true);
    await wait(60);
    expect(said).toEqual([]);
  });

  test("and takes more than four seconds is said to be slow, once, and comes after all", async () => {
    let come = () => {};
    const { end, said, wait } = start(0, () => new Promise((resolve) => (come = resolve)));
    await wait(3.9);
    expect(said).toEqual([]);
    await wait(30);
    expect(said).toEqual(["slow"]);
    come();
    expect(await end).toBe(true);
  });

  test("and fails once is tried again at once, without a word to the person, and with one to the page's developer", async () => {
    const { end, said, tries, wait } = start(1);
    await wait(0);
    expect(await end).toBe(true);
    expect(tries).toEqual([0, 0]);
    expect(said).toEqual([]);
    await wait(60);
    expect(said).toEqual([]);
    expect(console.warn).toHaveBeenCalledWith(expect.stringContaining("503 for /parts/a.json"));
  });

  test("and keeps failing is tried ever more seldom, at last every half minute, and said to be lost", async () => {
    const { end, said, tries, wait } = start(8);
    await wait(600);
    expect(await end).toBe(true);
    const pauses = tries.map((at, place) => at - (tries[place - 1] ?? 0)).slice(1);
    expect(pauses).toEqual([0, 1, 3, 7, 15, 30, 30, 30]);
    expect(new Set(said)).toEqual(new Set(["lost"]));
    expect(said.length).toBeGreaterThan(0);
  });

  test("is tried again as soon as there is a connection, without waiting for the pause to end", async () => {
    const { end, tries, wait } = start(5);
    await wait(20);
    expect(tries).toHaveLength(5);
    events.dispatchEvent(new Event("online"));
    await wait(0);
    expect(tries).toHaveLength(6);
    expect(tries.at(-1)).toBe(20);
    expect(await end).toBe(true);
  });

  test("is given up where another start has come in between, with 'no' for an answer", async () => {
    const { end, tries, page, wait } = start(99);
    await wait(5);
    page.isCurrent = false;
    await wait(60);
    expect(await end).toBe(false);
    const tried = tries.length;
    await wait(60);
    expect(tries).toHaveLength(tried);
  });

  test("and comes when nobody needs it any more is answered with 'no' too", async () => {
    let come = () => {};
    const { end, page } = start(0, () => new Promise((resolve) => (come = resolve)));
    page.isCurrent = false;
    come();
    expect(await end).toBe(false);
  });
});
