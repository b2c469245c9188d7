// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import { isBounce } from "../../../src/panel/frame/double-tap.ts";
import type { View } from "../../../src/turn/index.ts";
import { clickAt } from "../finger.ts";
import { fixtures } from "../gallery/fixtures.ts";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

describe("a tap bounces", () => {
  const first = { at: 1000, x: 100, y: 200 };

  // The gaps that people's double taps were seen to have.
  test.each([0, 120, 200, 330])("when it comes %i ms after the last one at its place", (gap) => {
    expect(isBounce(first, { ...first, at: 1000 + gap })).toBe(true);
  });

  test("not when half a second has passed, for then it is meant", () => {
    expect(isBounce(first, { ...first, at: 1500 })).toBe(false);
  });

  test("when the finger has slipped a little, but not when it has gone elsewhere", () => {
    expect(isBounce(first, { at: 1100, x: 110, y: 190 })).toBe(true);
    // The height of one line of a gate, at least: WCAG 2.5.5.
    expect(isBounce(first, { at: 1100, x: 100, y: 244 })).toBe(false);
  });
});

const controls = (root: Element) => [
  ...root.querySelectorAll("button, summary, label, [type=checkbox], [type=radio]"),
];
/** Radios are left out: happy-dom takes their mark away when a click is cancelled, where browsers put it back. */
const stateOf = (root: Element) => [
  root.innerHTML,
  ...[...root.querySelectorAll("input")].map(({ type, checked, value }) => [
    type !== "radio" && checked,
    value,
  ]),
];

/** Taps each control in turn, and then, 330 ms later and at that place, whatever there is by then. */
async function tapsAllTwice(view: View): Promise<void> {
  const { length } = controls((await mount(view)).root);
  for (let index = 0; index < length; index++) {
    const { root, calls, settle } = await mount(view);
    await settle();
    const control = controls(root)[index] as Element;
    await clickAt(control, 1000);
    await settle();
    const once = [stateOf(root), [...calls]];
    for (const next of controls(root)) await clickAt(next, 1330);
    await settle();
    expect([stateOf(root), calls], `${view.turn?.turn}: ${control.textContent}`).toEqual(once);
  }
}

describe("the second tap of a double tap does nothing, whatever has come under the finger", () => {
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(() => {});
  vi.spyOn(URL, "createObjectURL").mockReturnValue("blob:1");

  test.each(Object.keys(fixtures))("on a screen: %s", (name) => tapsAllTwice(fixtures[name] as View));
});

const answers = [
  { id: "none", text: "Nothing", role: "own" as const },
  { id: "gas", text: "Gas", role: "own" as const },
];
const opening = viewOf(turnWith({ turn: "opening.danger", heading: "Is anything dangerous?", answers }), {
  dangers: [{ id: "gas", text: "Gas" }],
});

describe("what is meant counts", () => {
  test("two taps half a second apart, and two quick ones at two places", async () => {
    const { all } = await mount(fixtures["gate"] as View);
    const [first, second] = all<HTMLInputElement>("[type=checkbox]") as [HTMLInputElement, HTMLInputElement];
    await clickAt(first, 1000, { y: 100 });
    await clickAt(second, 1150, { y: 150 });
    expect([first.checked, second.checked]).toEqual([true, true]);
    await clickAt(second, 1650, { y: 150 });
    expect([first.checked, second.checked]).toEqual([true, false]);
  });

  test("a danger after a tap that hit nothing", async () => {
    const { button, root, calls } = await mount(opening);
    await clickAt(root.querySelector("h2") as Element, 1000);
    await clickAt(button("Gas"), 1200);
    expect(calls).toEqual([["answer", "opening.danger", "gas"]]);
  });

  test("a danger that is tapped twice, once", async () => {
    const { button, calls } = await mount(opening);
    for (const at of [1000, 1200]) await clickAt(button("Gas"), at);
    expect(calls).toEqual([["answer", "opening.danger", "gas"]]);
  });

  test("a danger beside another answer that still waits for the engine", async () => {
    const { button, calls } = await mount(opening, { screens: null });
    await clickAt(button("Nothing"), 1000);
    await clickAt(button("Gas"), 1700, { y: 150 });
    expect(calls.at(-1)).toEqual(["answer", "opening.danger", "gas"]);
  });
});

describe("keys", () => {
  const key = (target: Element, name: string, repeat = false) =>
    !target.dispatchEvent(
      new KeyboardEvent("keydown", { key: name, repeat, bubbles: true, cancelable: true }),
    );

  test("a double press counts once, wherever the focus has gone", async () => {
    const { button, calls } = await mount(opening);
    await clickAt(button("Gas"), 1000, { detail: 0 });
    await clickAt(button("Danger?"), 1200, { detail: 0, x: 300, y: 300 });
    expect(calls).toHaveLength(1);
    expect(button("Danger?").getAttribute("aria-expanded")).toBe("false");
  });

  test("another key between two presses says that both are meant", async () => {
    const { button } = await mount(opening);
    await clickAt(button("Nothing"), 1000, { detail: 0 });
    key(button("Nothing"), "Tab");
    await clickAt(button("Danger?"), 1200, { detail: 0 });
    expect(button("Danger?").getAttribute("aria-expanded")).toBe("true");
  });

  test("only a held Enter is kept from clicking again and again", async () => {
    const { button } = await mount(opening);
    expect(key(button("Gas"), "Enter", true)).toBe(true);
    expect(key(button("Gas"), "Enter")).toBe(false);
    expect(key(button("Gas"), "ArrowDown", true)).toBe(false);
  });
});
