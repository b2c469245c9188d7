// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { clickAt } from "../../../tests/panel/finger.ts";
import { sealTurn } from "../../../tests/panel/gallery/seal-fixtures.ts";
import { viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";

type Felt = "Grips" | "Drags" | "Slips" | "Can't reach it";

async function atSeal() {
  const panel = await mount(viewOf(sealTurn));
  const spots = () => panel.all<HTMLButtonElement>(".seal-door li button");
  const feel = async (...felt: Felt[]) => {
    for (const each of felt) await panel.tap(each);
  };
  return {
    ...panel,
    spots,
    feel,
    /** All around, `but` at some places, counted from one. */
    feelAll: (all: Felt, but: Record<number, Felt> = {}) =>
      feel(...Array.from({ length: 12 }, (_, place) => but[place + 1] ?? all)),
    place: () => panel.all(".place")[0]?.textContent,
    states: () => spots().map((spot) => spot.textContent?.split(": ")[1]),
    choose: (place: number) => act(() => spots()[place - 1]?.click()),
  };
}

const untried = (count: number) => Array(count).fill("not tried yet");

describe("the survey goes from place to place", () => {
  test("by itself after each answer, clockwise from the top left corner, and says where it is", async () => {
    const { feel, place, states, all } = await atSeal();
    expect(place()).toBe("Place 1 of 12: top left corner");
    await feel("Grips", "Drags", "Slips");
    expect(place()).toBe("Place 4 of 12: top right corner");
    expect(all(".place")[0]?.getAttribute("role")).toBe("status");
    expect(states()).toEqual(["Grips", "Drags", "Slips", ...untried(9)]);
  });

  test("past what cannot be reached, which is not asked for again", async () => {
    const { feel, place, choose, states } = await atSeal();
    await feel("Grips", "Can't reach it", "Grips");
    expect(states().slice(0, 4)).toEqual(["Grips", "not reached", "Grips", "not tried yet"]);
    await choose(1);
    await feel("Grips");
    expect(place()).toBe("Place 4 of 12: top right corner");
  });

  test("around the top left corner, when it began elsewhere", async () => {
    const { choose, feel, place } = await atSeal();
    await choose(12);
    await feel("Grips");
    expect(place()).toBe("Place 1 of 12: top left corner");
  });

  test("and back one, but not past the first", async () => {
    const { feel, tap, place } = await atSeal();
    await feel("Grips", "Grips");
    await tap("Back one");
    expect(place()).toBe("Place 2 of 12: top side, left");
    await tap("Back one");
    await tap("Back one");
    expect(place()).toBe("Place 1 of 12: top left corner");
  });

  test("and shows the answer that a place has already", async () => {
    const { feel, choose, button, spots } = await atSeal();
    await feel("Grips", "Slips");
    await choose(2);
    expect(button("Slips").getAttribute("aria-pressed")).toBe("true");
    expect(button("Grips").getAttribute("aria-pressed")).toBe("false");
    expect(spots().map((spot) => spot.getAttribute("aria-current"))).toEqual([
      null,
      "step",
      ...Array(10).fill(null),
    ]);
  });

  test("a place tapped in the drawing takes the focus to the answers", async () => {
    const { choose, focused } = await atSeal();
    await choose(7);
    expect(focused().textContent).toBe("Grips");
  });
});

describe("a wet thumb", () => {
  const grips = async (...at: number[]) => {
    const { button, states } = await atSeal();
    for (const instant of at) await clickAt(button("Grips"), instant);
    return states();
  };

  test.each([50, 399])("that taps twice within %i ms fills one place", async (passed) => {
    expect(await grips(1000, 1000 + passed)).toEqual(["Grips", ...untried(11)]);
  });

  test("that bounces on and on fills one place", async () => {
    expect(await grips(1000, 1150, 1300, 1450, 1600, 1750)).toEqual(["Grips", ...untried(11)]);
  });

  test("that waits a little is meant", async () => {
    expect(await grips(1000, 1400)).toEqual(["Grips", "Grips", ...untried(10)]);
  });
});

describe("what it means", () => {
  test("comes by itself after the twelfth place, is heard, and is used as it was felt", async () => {
    const { feelAll, focused, calls, tap, text } = await atSeal();
    await feelAll("Grips", { 3: "Drags" });
    expect(focused().textContent).toBe("The seal grips all round");
    expect(text()).toContain("One place drags. It still holds.");
    expect(calls).toEqual([]);
    await tap("Use this");
    const spots = Array.from({ length: 12 }, (_, place) => (place === 2 ? "drags" : "grips"));
    expect(calls).toEqual([["measure", sealTurn.turn, { kind: "seal", door: "one", spots }]]);
  });

  // Which places make which pattern is common practice, no source; the words are checked here.
  test.each<[string, Record<number, Felt>, string, string[]]>([
    [
      "several places",
      { 2: "Slips", 8: "Slips" },
      "It slips at several places",
      ["top side, left", "bottom side, right"],
    ],
    ["a corner", { 4: "Slips" }, "It slips around one corner", ["top right corner"]],
    ["one place of a side", { 11: "Slips" }, "It slips on one side only", ["left side, lower"]],
  ])("names where it slips: %s", async (_, but, verdict, where) => {
    const { feelAll, focused, all } = await atSeal();
    await feelAll("Grips", but);
    expect(focused().textContent).toBe(verdict);
    expect(all(".slipping li").map((item) => item.textContent)).toEqual(where);
  });

  test("may be asked for early, and says when too few places were tried", async () => {
    const { feel, tap, focused, text, button, calls } = await atSeal();
    expect(button("Show what it means").getAttribute("aria-disabled")).toBe("true");
    await tap("Show what it means");
    expect(text()).not.toContain("Use this");
    await feel("Grips", "Slips");
    await tap("Show what it means");
    expect(focused().textContent).toBe("Not enough places tried");
    expect(text()).toContain("Tried: 2 of 12 places.");
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({
      kind: "seal",
      door: "one",
      spots: ["grips", "slips", ...Array(10).fill(null)],
    });
  });

  test("is taken away by a correction, and shown again only when asked for", async () => {
    const { feelAll, choose, feel, buttons, tap, focused, place } = await atSeal();
    await feelAll("Grips");
    await choose(5);
    expect(buttons()).toContain("Use this");
    await feel("Slips");
    expect(buttons()).not.toContain("Use this");
    expect(place()).toBe("Place 5 of 12: right side, upper");
    await tap("Show what it means");
    expect(focused().textContent).toBe("It slips on one side only");
  });

  test("is taken away by another kind of door, which keeps what was felt", async () => {
    const { feelAll, pick, buttons, tap, calls, states } = await atSeal();
    await feelAll("Grips");
    await pick("A drawer");
    expect(buttons()).not.toContain("Use this");
    expect(states()).toEqual(Array(12).fill("Grips"));
    await tap("Show what it means");
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ door: "drawer" });
  });
});

test.each(["One door", "Two doors", "A drawer"])(
  "%s has its twelve places in order around the edge",
  async (door) => {
    const { pick, all } = await atSeal();
    await pick(door);
    const points = all(".seal-door li").map(({ style }) => [
      Number.parseFloat(style.insetInlineStart),
      Number.parseFloat(style.top),
    ]);
    expect(points).toHaveLength(12);
    const [[left = 0, top = 0] = [], , , [right = 0] = [], , , [, bottom = 0] = []] = points;
    for (const [x = 0, y = 0] of points)
      expect(x === left || x === right || y === top || y === bottom, `${x}, ${y}`).toBe(true);
    // On a screen y goes down, so clockwise turns have a positive sum of cross products (shoelace formula).
    const twiceArea = points.reduce((sum, [x = 0, y = 0], index) => {
      const [nextX = 0, nextY = 0] = points[(index + 1) % 12] ?? [];
      return sum + x * nextY - nextX * y;
    }, 0);
    expect(twiceArea).toBeGreaterThan(0);
  },
);
