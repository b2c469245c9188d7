// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { turnWith, viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";
import { regionOf } from "../../../tests/panel/regions.ts";
import { iceLimits as limits } from "./example-limits.ts";

const since = "2025-06-20T09:00:00+01:00";
const hours = "Hours since the bin was empty";
const timed = /We counted from/;

const atCount = (now: string, begun: string | null = since) =>
  mount(
    viewOf(
      turnWith({
        turn: "ice-count.count",
        kind: "reading",
        reading: {
          instrument: "ice",
          region: regionOf("en-GB"),
          limits,
          celsius: null,
          perSecond: null,
          since: begun,
        },
      }),
    ),
    { services: { now: () => now } },
  );

describe("the hours of a day's ice", () => {
  test("are filled in where they were waited, whatever the offset, and count as if they were typed", async () => {
    const { field, text, type, tap, calls } = await atCount("2025-06-21T10:30:00Z");
    expect(field(hours).value).toBe("26.5");
    expect(text()).toMatch(timed);
    await type("How many cubes?", "60");
    await tap("Show what it means");
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ by: "pieces", amount: 60, hours: 26.5 });
  });

  test("can be typed over", async () => {
    const { type, tap, calls } = await atCount("2025-06-21T10:30:00Z");
    await type("How many cubes?", "60");
    await type(hours, "12");
    await tap("Show what it means");
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ hours: 12 });
  });

  test("are not those in which batches are watched", async () => {
    const { pick, field, text, type, tap, calls } = await atCount("2025-06-21T10:30:00Z");
    await pick("Batches");
    expect(field("Over how many hours?").value).toBe("");
    expect(text()).not.toMatch(timed);
    await type("How many times did the tray tip out?", "4");
    await tap("Show what it means");
    expect(text()).toContain("Enter the hours only");
    await type("Over how many hours?", "2");
    await tap("Show what it means");
    expect(text(), "two hours are too few").toContain("3");
    await type("Over how many hours?", "6");
    await tap("Show what it means");
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ by: "batches", amount: 4, hours: 6 });
  });

  test.each([
    ["nothing was waited for", "2025-06-21T10:30:00Z", null],
    ["it was longer ago than a reading may be", "2025-06-28T10:30:00Z", since],
    ["it was only a moment ago", "2025-06-20T08:30:00Z", since],
    ["the clock was set back", "2025-06-19T08:30:00Z", since],
  ])("are left to the person where %s", async (_, now, begun) => {
    const { field, text } = await atCount(now, begun);
    expect(field(hours).value).toBe("");
    expect(text()).not.toMatch(timed);
  });
});

test("a day's ice is one number where both ends of its range are written alike", async () => {
  const { pick, text, type, tap } = await atCount("2025-06-21T10:30:00Z", null);
  await type("How many cubes?", "60");
  await type(hours, "24");
  await tap("Show what it means");
  expect(text()).toMatch(/It makes \d+ to \d+ cubes in 24 hours\./);
  await pick("Weight");
  await pick("kg");
  await type("How heavy is the ice, without the bin?", "0.001");
  await type(hours, "24");
  await tap("Show what it means");
  expect(text()).toContain("It makes about 0 kg in 24 hours. ");
});
