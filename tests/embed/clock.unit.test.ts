import { afterEach, expect, test } from "vitest";
import { localNow } from "../../src/embed/clock.ts";

const zone = process.env.TZ;
afterEach(() => {
  process.env.TZ = zone ?? "UTC";
});

/** RFC 3339, section 5.6: the same instant, the person's own wall clock. */
test.each([
  ["Asia/Kathmandu", "2026-06-01T05:44:30.000+05:45"],
  ["America/St_Johns", "2026-05-31T21:29:30.000-02:30"],
  ["Europe/London", "2026-06-01T00:59:30.000+01:00"],
  ["UTC", "2026-05-31T23:59:30.000+00:00"],
])("in %s now is written with that place's own day and offset", (place, written) => {
  process.env.TZ = place;
  const now = new Date("2026-05-31T23:59:30Z");
  expect(localNow(now)).toBe(written);
  expect(Date.parse(localNow(now))).toBe(now.getTime());
});

test("now is told to the millisecond, as a stopwatch needs it", () => {
  const [start, end] = [950, 10_850].map((ms) => localNow(new Date(Date.UTC(2026, 5, 1) + ms)));
  expect(Date.parse(end ?? "") - Date.parse(start ?? "")).toBe(9_900);
});
