import { describe, expect, test } from "vitest";
import { createMemory, entriesOf, open } from "./open-controller.ts";

/** A tab whose idle time comes when a test gives it, by a clock that goes on with every look at it. */
function openIdle() {
  const store = createMemory();
  const waiting: (() => void)[] = [];
  let asked = 0;
  let seconds = 0;
  const clock = {
    get now() {
      return new Date(Date.UTC(2025, 5, 20) + ++seconds * 1000).toISOString();
    },
  };
  const texts = (key: string) => {
    asked++;
    return key === "ui.locale" ? "en-GB" : key;
  };
  const panel = open(store, clock, null, undefined, undefined, {
    texts,
    whenIdle: (work) => void waiting.push(work),
  });
  const idle = (slices = 1000) => {
    for (let slice = 0; slice < slices && waiting.length > 0; slice++) waiting.shift()?.();
  };
  /** How often texts are asked for until the turn after an answer is on screen. */
  const costOf = (answer: string) => {
    const before = asked;
    panel.actions.answer(panel.turn() ?? "", answer);
    return asked - before;
  };
  return { ...panel, store, idle, costOf, waiting };
}

const way = ["none", "no-ice", "plumbed", "nothing"];

describe("answers that were worked out in idle time", () => {
  test("lead to the same screens and entries as answers that were not", () => {
    const [ahead, live] = [openIdle(), openIdle()];
    for (const answer of way) {
      ahead.idle();
      expect([ahead.turn(), answer]).toEqual([live.turn(), answer]);
      ahead.costOf(answer);
      live.costOf(answer);
      expect(ahead.views.at(-1)).toEqual(live.views.at(-1));
    }
    const events = ({ store }: typeof live) => entriesOf(store).map((event) => ({ ...event, at: "" }));
    expect(events(ahead)).toEqual(events(live));
    expect(events(ahead).length).toBeGreaterThanOrEqual(way.length);
  });

  test("cost a tap less", () => {
    const [ahead, live] = [openIdle(), openIdle()];
    ahead.idle();
    expect(ahead.costOf("none")).toBeLessThan(live.costOf("none") / 2);
  });

  test("that are half done when the tap comes are gone on with, and the others are dropped", () => {
    const panel = openIdle();
    panel.idle(1);
    panel.costOf("none");
    const turn = panel.turn();
    expect(turn).toBe("opening.symptom");
    panel.idle();
    expect(panel.turn()).toBe(turn);
    expect(panel.waiting).toEqual([]);
  });

  test("are no answers until they are given", () => {
    const panel = openIdle();
    panel.idle();
    expect(panel.turn()).toBe("opening.danger");
    expect(panel.store.mark).toBe(null);
    expect(panel.views).toHaveLength(1);
    expect(panel.ended).not.toHaveBeenCalled();
  });
});
