// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const view = viewOf(turnWith({ heading: "Now" }), { ways: ["danger", "ice", "help"] });

describe("ways out", () => {
  test("a danger is chosen from a list, and is reported by that one tap", async () => {
    const { tap, calls } = await mount(view);
    await tap("Something is dangerous");
    await tap("I smell gas or burning");
    expect(calls).toEqual([["reportDanger", "smell"]]);
  });

  test.each([
    ["It works again", "Yes, it's fixed", "reportIce"],
    ["Talk to a person", "Yes, get help", "askForHelp"],
    ["Start again", "Yes, start again", "restart"],
  ])("'%s' asks before it acts", async (way, yes, action) => {
    const { tap, calls } = await mount(view);
    await tap(way);
    expect(calls).toEqual([]);
    await tap(yes);
    expect(calls).toEqual([[action]]);
  });

  test("going back does nothing and gives the focus back", async () => {
    const { tap, calls, focused, button } = await mount(view);
    await tap("Start again");
    await tap("Go back");
    expect(calls).toEqual([]);
    expect(focused()).toBe(button("Start again"));
  });

  test("only the ways out that lead somewhere are offered", async () => {
    const opening = await mount({ ...view, ways: ["danger", "help"] });
    expect(opening.buttons()).toEqual(["Something is dangerous", "Talk to a person", "Start again"]);
    expect((await mount({ ...view, ways: [] })).buttons()).toEqual(["Start again"]);
  });
});
