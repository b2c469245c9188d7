import { describe, expect, test } from "vitest";
import { journalOf, startSession } from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, flowOf, follow, healthy, inTradeOrder } from "../session/drive.ts";
import { answerAll, createMemory, entriesOf, open } from "./open-controller.ts";

/** Written by hand, as earlier versions kept it. */
const oldLog = {
  format: 1,
  flow: "0f3a",
  model: null,
  started: "2026-01-01T09:00:00Z",
  events: [
    { type: "answered", turn: "opening.danger", answer: "none", at: "2026-01-01T09:01:00Z" },
    { type: "answered", turn: "opening.symptom", answer: "no-ice", at: "2026-01-01T09:02:00Z" },
  ],
  revisions: ["k3", "k2"],
};

describe("a log that an earlier version has kept", () => {
  const clock = { now: "2026-01-01T10:00:00Z" };

  test("is gone on with, and kept as a journal from then on", () => {
    const store = createMemory();
    store.kept = oldLog;
    const panel = open(store, clock);
    expect([panel.turn(), panel.notices()]).toEqual(["opening.supply", ["welcome-back"]]);
    answerAll(panel, "plumbed");
    expect(entriesOf(store)).toMatchObject([{ answer: "none" }, { answer: "no-ice" }, { answer: "plumbed" }]);
    expect(open(store, clock).turn()).toBe("opening.changed");
  });

  test("that was set aside can be gone on with too", () => {
    const store = createMemory();
    store.writeAside([oldLog]);
    const panel = open(store, clock);
    expect(panel.notices()).toEqual(["set-aside"]);
    panel.actions.goOn();
    expect(panel.turn()).toBe("opening.supply");
  });

  test("is no loss where two tabs read it at once", () => {
    const store = createMemory();
    store.kept = oldLog;
    const one = open(store, clock);
    store.kept = oldLog;
    const other = open(store, clock);
    answerAll(other, "plumbed");
    one.tick();
    expect(one.turn()).toBe("opening.changed");
    expect(store.readAside()).toEqual([]);
  });
});

describe("an answer that is changed", () => {
  const clock = { now: "2026-01-01T09:00:00Z" };

  test.each([["at once"], ["after a reload"]])("keeps later ones that still fit, %s", (when) => {
    const store = createMemory();
    const before = open(store, clock);
    answerAll(before, "none", "no-ice", "plumbed", "nothing", "alive");
    const left = before.turn();
    before.actions.change(1);
    const panel = when === "at once" ? before : open(store, clock);
    expect(panel.turn()).toBe("opening.symptom");
    answerAll(panel, "no-ice");
    expect(panel.turn()).toBe(left);
    expect(panel.views.at(-1)?.lines).toHaveLength(5);
    expect(open(store, clock).turn()).toBe(left);
  });

  test("stays in the journal, beside what took it back", () => {
    const store = createMemory();
    const panel = open(store, clock);
    answerAll(panel, "none", "no-ice");
    panel.actions.change(1);
    answerAll(panel, "leaking");
    expect(entriesOf(store)).toMatchObject([
      { answer: "none" },
      { answer: "no-ice" },
      { type: "took-back" },
      { answer: "leaking" },
    ]);
  });
});

test("a tap that was closed is not forgotten by a new start and a reload right after it", () => {
  const clock = { now: "2026-03-02T12:00:00Z" };
  const low = { ...healthy, "flow-test.run": flowOf(5) };
  const flow = ownFlow;
  const { log } = follow(startSession(inTradeOrder(flow), at(0)), low, "supply-line.look");
  const store = createMemory();
  store.kept = journalOf(log);
  open(store, clock).actions.restart();
  const panel = open(store, clock);
  expect([panel.turn(), panel.notices()]).toEqual(["opening.danger", []]);
  panel.actions.askForHelp();
  expect(panel.views.at(-1)?.turn?.ending?.back).toContain("endings.water.open-again");
});

test("a wait that a clock has begun a year ahead lasts a day from when the clock was set right, over any reload", () => {
  const store = createMemory();
  const clock = { now: "2027-06-01T12:00:00Z" };
  answerAll(
    open(store, clock),
    "none",
    "no-ice",
    "plumbed",
    "nothing",
    "alive",
    "lock-off",
    "off",
    "switched-on",
  );
  for (const [now, turn] of [
    ["2026-06-01T12:00:00Z", "wait-for-ice.wait"],
    ["2026-06-02T11:00:00Z", "wait-for-ice.wait"],
    ["2026-06-02T12:00:00Z", "wait-for-ice.came"],
  ] as const) {
    clock.now = now;
    expect(open(store, clock).turn()).toBe(turn);
  }
});
