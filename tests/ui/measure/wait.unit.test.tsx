// @vitest-environment happy-dom
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { waitTurn } from "../gallery/measure-fixtures.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

let now = "";
// The wait runs from 9:00 on 20 June to 9:00 on 21 June 2025, British summer time.
const atWait = () => mount(viewOf(waitTurn), { services: { now: () => now } });

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test("says how long is left, rounded up to the minute, and when it ends", async () => {
  now = "2025-06-20T13:40:20+01:00";
  const { text, all } = await atWait();
  expect(text()).toContain("19 h 20 min left");
  expect(all("time")[0]?.getAttribute("datetime")).toBe("2025-06-21T09:00:00+01:00");
});

test("leaves out the hours in the last one", async () => {
  now = "2025-06-21T08:48:30+01:00";
  const { text } = await atWait();
  expect(text()).toContain("12 min left");
  expect(text()).not.toContain("0 h");
});

test("keeps up with the clock by itself", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { text, settle } = await atWait();
  now = "2025-06-20T13:50:00+01:00";
  vi.advanceTimersByTime(30_000);
  await settle();
  expect(text()).toContain("19 h 10 min left");
});

test("is right at once when a page left open overnight is looked at again", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { text, settle } = await atWait();
  now = "2025-06-21T10:00:00+01:00";
  document.dispatchEvent(new Event("visibilitychange"));
  await settle();
  expect(text()).toContain("The wait is over");
});

test("takes its answers at any time, because ice may come early", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { tap, calls } = await atWait();
  await tap("There is ice");
  expect(calls).toEqual([["answer", "first-ice.wait", "ice"]]);
});
