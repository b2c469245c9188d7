// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { linesOf, turnWith, viewOf } from "../gallery/turns.ts";
import { allScreens, mount } from "../mount.tsx";

const withLines = (count: number) => viewOf(turnWith({ heading: "Now" }), { lines: linesOf(count) });
const firstLine = "Is anything dangerous right now? No, nothing";

describe("earlier answers", () => {
  test("two are both in sight, each with its title and its answer", async () => {
    const { all } = await mount(withLines(2));
    expect(all("li").map((line) => line.textContent)).toEqual([
      "Is anything dangerous right now? No, nothing",
      "What is the ice maker doing? It makes too little ice",
    ]);
  });

  test("of more than two the older fold under a button that says how many", async () => {
    const { all, tap, button } = await mount(withLines(6));
    expect(all("li")).toHaveLength(1);
    expect(all("ol")[0]?.getAttribute("start")).toBe("6");
    await tap("5 answers so far");
    expect(all("li")).toHaveLength(6);
    expect(button("5 answers so far").getAttribute("aria-expanded")).toBe("true");
  });
});

describe("an answer that was typed", () => {
  const typed = (words: string) =>
    viewOf(turnWith({ heading: "Now" }), {
      lines: linesOf(1).map((line) => ({ ...line, words, answer: "Noted: No, nothing" })),
    });

  test("stands in its own words, with what they were taken as", async () => {
    const { all } = await mount(typed("nah all good"));
    expect(all("li bdi")[0]?.textContent?.trim()).toBe("nah all good");
    expect(all("li")[0]?.textContent).toBe(
      "Is anything dangerous right now? nah all good Noted: No, nothing",
    );
  });

  test("shows a long sentence in full, before it is changed", async () => {
    const words = "There is plenty of ice in the bin, but nothing at all comes out when I press the lever";
    const { tap, all, text, calls } = await mount(typed(words));
    await tap(`Is anything dangerous right now? ${words} Noted: No, nothing`);
    expect(calls).toEqual([]);
    expect(text()).toContain("Change this answer?");
    expect(all(".ask bdi")[0]?.textContent).toBe(words);
    await tap("Change it");
    expect(calls).toEqual([["change", 0]]);
  });

  test("is changed at once where its few words are in sight", async () => {
    const { tap, calls } = await mount(typed("nah all good"));
    await tap("Is anything dangerous right now? nah all good Noted: No, nothing");
    expect(calls).toEqual([["change", 0]]);
  });

  test("is text alone, whatever markup it holds", async () => {
    const { all } = await mount(typed("<img src=x onerror=alert(1)><script>alert(1)</script>"));
    expect(all("li img, li script")).toEqual([]);
    expect(all("li bdi")[0]?.textContent).toContain("<script>alert(1)</script>");
  });
});

describe("changing an answer", () => {
  test("the last one changes at once, because nothing is dropped", async () => {
    const { tap, calls } = await mount(withLines(1));
    await tap(firstLine);
    expect(calls).toEqual([["change", 0]]);
  });

  test("an earlier one first says what becomes of the later ones, with the focus on those words", async () => {
    const { tap, calls, focused } = await mount(withLines(3));
    await tap("2 answers so far");
    await tap(firstLine);
    expect(calls).toEqual([]);
    expect(focused().textContent).toBe("Your 2 later answers stay if they still fit.");
  });

  test("one later answer is told in the singular", async () => {
    const { tap, text } = await mount(withLines(2));
    await tap(firstLine);
    expect(text()).toContain("Your later answer stays if it still fits.");
  });

  test("a yes changes it", async () => {
    const { tap, calls } = await mount(withLines(3));
    await tap("2 answers so far");
    await tap(firstLine);
    await tap("Change it");
    expect(calls).toEqual([["change", 0]]);
  });

  test("a no keeps them and gives the focus back", async () => {
    const { tap, calls, focused, button } = await mount(withLines(3));
    await tap("2 answers so far");
    await tap(firstLine);
    await tap("Keep it");
    expect(calls).toEqual([]);
    expect(focused()).toBe(button(firstLine));
  });

  test("before the engine has come the last one changes at once, and an earlier one asks as soon as it is there", async () => {
    const { tap, show, calls, text } = await mount(withLines(2), { screens: null });
    await tap(firstLine);
    expect(calls).toEqual([]);
    await show(withLines(2), { screens: allScreens });
    expect(text()).toContain("Your later answer stays if it still fits.");
    const alone = await mount(withLines(1), { screens: null });
    await alone.tap(firstLine);
    expect(alone.calls).toEqual([["change", 0]]);
  });
});
