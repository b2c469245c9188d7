import { describe, expect, test } from "vitest";
import * as door from "../../src/embed/door.ts";
import { DoorMissing } from "../../src/embed/missing.ts";
import { answerAll, createMemory, open } from "./open-controller.ts";

const clock = { now: "2026-01-01T10:00:00Z" };

/** A tab on a storage, in which what checks a kept journal comes only when the test lets it. */
function openWithoutDoor(store: ReturnType<typeof createMemory>) {
  let isThere = false;
  const asked: ((isThere: boolean) => void)[] = [];
  const panel = open(store, clock, null, undefined, undefined, {
    door: () => {
      if (!isThere) throw new DoorMissing();
      return door;
    },
    load: () => new Promise((resolve) => asked.push(resolve)),
  });
  const come = async (given = true) => {
    isThere = given;
    for (const resolve of asked.splice(0)) resolve(given);
    for (let turn = 0; turn < 9; turn += 1) await Promise.resolve();
  };
  return { ...panel, come, asked };
}

describe("before the code that checks what was kept has come", () => {
  test("a first visit answers and keeps", () => {
    const store = createMemory();
    const panel = openWithoutDoor(store);
    answerAll(panel, "none", "no-ice");
    expect([panel.turn(), panel.asked.length]).toEqual(["opening.supply", 0]);
    expect(open(store, clock).turn()).toBe("opening.supply");
  });

  test("what another tab has kept is taken over once it has come, and the tap that met it is not taken", async () => {
    const store = createMemory();
    const panel = openWithoutDoor(store);
    answerAll(open(store, clock), "none", "no-ice");
    panel.actions.answer("opening.danger", "none");
    expect(panel.turn()).toBe("opening.danger");
    await panel.come();
    expect([panel.turn(), panel.notices()]).toEqual(["opening.supply", ["tap-not-taken"]]);
  });

  test.each([
    ["no journal at all", "a text"],
    ["a journal of another form", { format: 3, entries: [] }],
    [
      "an entry that nobody could have made",
      { format: 2, model: null, started: "now", entries: [{ id: "" }] },
    ],
  ])("hostile news are refused once it has come: %s", async (_, kept) => {
    const store = createMemory();
    const panel = openWithoutDoor(store);
    store.kept = kept;
    panel.actions.answer("opening.danger", "none");
    await panel.come();
    expect(panel.turn()).toBe("opening.symptom");
  });

  test("a danger waits for nothing, and what another tab has kept unread is set aside", async () => {
    const store = createMemory();
    const panel = openWithoutDoor(store);
    answerAll(open(store, clock), "none", "no-ice");
    const theirs = structuredClone(store.kept);
    panel.actions.reportDanger("gas");
    expect(panel.views.at(-1)?.turn?.ending?.outcome).toBe("stopped");
    expect(store.readAside()).toEqual([theirs]);
    await panel.come();
    expect(panel.views.at(-1)?.turn?.ending?.outcome).toBe("stopped");
  });

  test("a panel that nobody waits for any longer does not try again", async () => {
    const store = createMemory();
    const panel = openWithoutDoor(store);
    answerAll(open(store, clock), "none");
    panel.actions.answer("opening.danger", "none");
    expect(panel.asked).toHaveLength(1);
    await panel.come(false);
    expect(panel.asked).toHaveLength(0);
  });
});
