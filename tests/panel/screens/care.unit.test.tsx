// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import type { Care, CareLine } from "../../../src/turn/index.ts";
import { fixtures } from "../gallery/fixtures.ts";
import { mount } from "../mount.tsx";

const gate = {
  id: "water-supply",
  signal: "caution" as const,
  why: "Loose joints can spray.",
  items: [
    { id: "one", text: "I can reach the tap." },
    { id: "two", text: "I have a towel." },
  ],
  facts: ["Follow your local codes."],
};
const line = (id: string, text: string, behind: CareLine["gate"] = null): CareLine => ({
  id,
  text,
  gate: behind,
});

/** A record of nothing, but for what a test gives. */
const careOf = (given: Partial<Care> = {}): Care => ({
  question: () => null,
  answer: () => {},
  steps: (time) =>
    time === "away" ? [line("off", "Switch it off."), line("tap", "Leave the tap closed.", gate)] : [],
  filter: () => null,
  hasFilter: () => true,
  filterChanged: () => {},
  machine: () => ({ title: "Today", parts: [] }),
  ...given,
});
const fixed = fixtures.fixed as NonNullable<typeof fixtures.fixed>;
const open = async (given: Partial<Care> = {}) => {
  const panel = await mount(fixed, { services: { care: async () => careOf(given) } });
  await panel.settle();
  return panel;
};
const click = (root: Element, text: string) =>
  [...root.querySelectorAll("button, label")]
    .find((each) => each.textContent?.includes(text))
    ?.dispatchEvent(new MouseEvent("click", { bubbles: true }));

describe("below a search that was fixed", () => {
  test("a step on the water supply is not there before every line of its gate is ticked", async () => {
    const { root, settle } = await open();
    expect(root.textContent).toContain("Switch it off.");
    expect(root.textContent).not.toContain("Leave the tap closed.");
    click(root, "Close the water too");
    await settle();
    expect(root.textContent).toContain("CAUTION");
    expect(root.textContent).toContain("Follow your local codes.");
    const ticks = () => [...root.querySelectorAll<HTMLInputElement>("[type=checkbox]")];
    expect(ticks()).toHaveLength(2);
    ticks()[0]?.click();
    await settle();
    expect(root.textContent).not.toContain("Leave the tap closed.");
    ticks()[1]?.click();
    await settle();
    expect(root.textContent).toContain("Leave the tap closed.");
    ticks()[0]?.click();
    await settle();
    expect(root.textContent).not.toContain("Leave the tap closed.");
  });

  test("a changed filter is told once, and its new day shown", async () => {
    const filterChanged = vi.fn();
    let day: string | null = null;
    const { root, settle } = await open({
      filter: () => (day ? { day, isOver: false } : null),
      filterChanged: () => {
        filterChanged();
        day = "2027-05-28";
      },
    });
    expect(root.textContent).toContain("We don't know when the filter was last changed.");
    click(root, "I changed the filter today");
    await settle();
    expect(filterChanged).toHaveBeenCalledOnce();
    expect(root.textContent).toContain("28 May 2027");
  });

  test("what is asked a day later is answered on a tap, and not asked again", async () => {
    const answer = vi.fn();
    const { root, settle } = await open({
      question: () => ({ ask: "Does it still work?", answers: [{ id: "yes", text: "Yes, it does" }] }),
      answer,
    });
    click(root, "Yes, it does");
    await settle();
    expect(answer).toHaveBeenCalledWith("yes");
    expect(root.textContent).not.toContain("Does it still work?");
    expect(root.textContent).toContain("Good to hear.");
  });
});
