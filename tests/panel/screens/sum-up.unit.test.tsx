// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import type { Notice } from "../../../src/turn/index.ts";
import { linesOf, turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const carried: Notice = { id: "carried", text: "A search came with the link.", goOn: "Go on" };

async function panelWith(lines: number, notices: Notice[] = [], more = {}) {
  const panel = await mount(viewOf(turnWith({}), { lines: linesOf(lines), notices }), more);
  await panel.tap("More");
  return panel;
}

describe("the summary in the menu", () => {
  test("is offered once something was answered, and what a link holds where one has come", async () => {
    const entries = async (lines: number, notices?: Notice[]) =>
      (await panelWith(lines, notices)).all("header .ask button").map(({ textContent }) => textContent);
    expect(await entries(0)).not.toContain("Summary so far");
    expect(await entries(2)).toContain("Summary so far");
    expect(await entries(2)).not.toContain("Read what the link holds");
    expect(await entries(0, [carried])).toContain("Read what the link holds");
  });

  test("stands in place, has the focus, and goes by a tap", async () => {
    const { tap, settle, text, all } = await panelWith(2);
    await tap("Summary so far");
    await settle();
    expect(text()).toContain("Where it stands");
    expect(text()).toContain("Is the bin full?");
    await tap("Close");
    expect(all(".sum-up")).toEqual([]);
  });

  test("of what a link holds is read without going on with it", async () => {
    const { tap, settle, text } = await panelWith(0, [carried]);
    await tap("Read what the link holds");
    await settle();
    expect(text()).toContain("What the link holds");
    expect(text()).toContain("A search came with the link.");
  });

  test("says so where it can't be made", async () => {
    const services = { handover: () => Promise.reject(new Error("offline")) };
    const { tap, settle, text } = await panelWith(2, [], { services });
    await tap("Summary so far");
    await settle();
    expect(text()).toContain("Your answers are still here.");
  });
});
