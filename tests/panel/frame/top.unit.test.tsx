// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const view = viewOf(turnWith({ heading: "Now" }), { ways: ["danger", "ice", "help"] });

describe("ways out", () => {
  test("a danger is chosen from a list, and is reported by that one tap", async () => {
    const { tap, calls } = await mount(view);
    await tap("Danger?");
    await tap("I smell gas or burning");
    expect(calls).toEqual([["reportDanger", "smell"]]);
  });

  test.each([
    ["It works again", "Yes, it's fixed", "reportIce"],
    ["Talk to a person", "Yes, get help", "askForHelp"],
    ["Start again", "Yes, start again", "restart"],
  ])("'%s' asks before it acts", async (way, yes, action) => {
    const { tap, calls } = await mount(view);
    await tap("More");
    await tap(way);
    expect(calls).toEqual([]);
    await tap(yes);
    expect(calls).toEqual([[action]]);
  });

  test("going back does nothing and gives the focus back", async () => {
    const { tap, calls, focused, button } = await mount(view);
    await tap("More");
    await tap("Start again");
    await tap("Go back");
    expect(calls).toEqual([]);
    expect(focused()).toBe(button("More"));
  });

  test("a second tap shuts what is open", async () => {
    const { tap, buttons } = await mount(view);
    await tap("More");
    expect(buttons()).toContain("Start again");
    await tap("More");
    expect(buttons()).toEqual(["Danger?", "More"]);
  });

  test("only the ways out that lead somewhere are offered", async () => {
    const opening = await mount({ ...view, ways: ["danger", "help"] });
    await opening.tap("More");
    const ours = ["Full screen", "Your machine", "Forget everything"];
    expect(opening.buttons()).toEqual(["Danger?", "More", "Talk to a person", "Start again", ...ours]);
    const end = await mount({ ...view, ways: [] });
    await end.tap("More");
    expect(end.buttons()).toEqual(["More", "Start again", ...ours]);
  });
});
