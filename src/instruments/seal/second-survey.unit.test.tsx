// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { sealTurn } from "../../../tests/panel/gallery/seal-fixtures.ts";
import { viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";
import { assessSeal } from "./assess.ts";
import type { SealReading } from "./reading.ts";
import { carry } from "./spot.tsx";

type Found = SealReading["spots"];

/** Grips all round but at some places, counted from one. */
const around = (but: Record<number, Found[number]> = {}): Found =>
  Array.from({ length: 12 }, (_, place) => (place + 1 in but ? (but[place + 1] ?? null) : "grips"));
const readingOf = (spots: Found): SealReading => ({ kind: "seal", door: "two", spots });

/** The turn after cleaning, as `npm run play` and a screen have it. */
async function atSecond(spots: Found) {
  const reading = readingOf(spots);
  const before = { reading, verdict: assessSeal(reading, { longestArc: 3 }).verdict };
  const need = sealTurn.reading as Extract<typeof sealTurn.reading, { instrument: "seal" }>;
  const panel = await mount(viewOf({ ...sealTurn, reading: { ...need, before } }));
  const feel = async (...felt: string[]) => {
    for (const each of felt) await panel.tap(each);
  };
  return { ...panel, feel, place: () => panel.all(".place")[0]?.textContent };
}

describe("after something was put right", () => {
  test("only the places that slipped are asked, and all are in the reading", async () => {
    const { feel, place, tap, calls } = await atSecond(
      around({ 2: "slips", 3: "drags", 8: "slips", 11: null }),
    );
    expect(place()).toBe("Place 2 of 12: top side, left");
    await feel("Grips");
    expect(place()).toMatch(/^Place 8 of 12/);
    await feel("Drags");
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual(readingOf(around({ 3: "drags", 8: "drags", 11: null })));
  });

  test("a place that held can be tried again all the same", async () => {
    const { all, feel, place, tap, calls } = await atSecond(around({ 2: "slips" }));
    await act(() => all<HTMLButtonElement>(".seal-door li button")[4]?.click());
    await feel("Slips");
    expect(place()).toMatch(/^Place 2 of 12/);
    await feel("Grips");
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual(readingOf(around({ 5: "slips" })));
  });

  test("nothing is to be shown before one of them was tried", async () => {
    const { button } = await atSecond(around({ 2: "slips" }));
    expect(button("Show what it means").getAttribute("aria-disabled")).toBe("true");
  });
});

describe("what is carried over", () => {
  test("is what held; what was left out is asked again where nothing could be said without it", () => {
    const spots = around({ 1: "slips", 4: null });
    expect(carry(spots, "corner", 12)?.slice(0, 4)).toEqual(["untried", "grips", "grips", "skipped"]);
    expect(carry(spots, "unclear", 12)?.slice(0, 4)).toEqual(["untried", "grips", "grips", "untried"]);
  });

  test("of a log with fewer places is as much as it has", () => {
    expect(carry(["slips", "grips"], "unclear", 4)).toEqual(["untried", "grips", "untried", "untried"]);
  });

  test("is nothing where no place would be asked", () => {
    expect(carry(around(), "passes", 12)).toBeNull();
  });
});
