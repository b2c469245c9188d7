import { describe, expect, test, vi } from "vitest";
import { answerAll, createMemory, entriesOf, open } from "./open-controller.ts";

const clock = () => ({ now: "2026-03-01T08:00:00+00:00" });

describe("forgetting everything", () => {
  test("leaves a journal without a word in it, and nothing set aside", () => {
    const store = createMemory();
    const panel = open(store, clock());
    answerAll(panel, "none", "no-ice");
    store.writeAside([store.kept]);
    const clear = vi.fn(() => () => {});
    panel.forget(clear);
    expect(entriesOf(store)).toEqual([]);
    expect(store.readAside()).toEqual([]);
    expect(clear).toHaveBeenCalledOnce();
    expect(panel.turn()).toBe("opening.danger");
    expect(panel.notices()).toEqual(["forgotten"]);
  });

  test("can be undone as long as nothing else was done, with what lay beside", () => {
    const store = createMemory();
    const panel = open(store, clock());
    answerAll(panel, "none", "no-ice");
    const [before, turn] = [entriesOf(store), panel.turn()];
    const bringBack = vi.fn();
    panel.forget(() => bringBack);
    panel.actions.goOn();
    expect(panel.turn()).toBe(turn);
    expect(entriesOf(store).slice(0, before.length)).toEqual(before);
    expect(bringBack).toHaveBeenCalledOnce();
  });

  test("is final with the next answer", () => {
    const store = createMemory();
    const panel = open(store, clock());
    answerAll(panel, "none", "no-ice", "plumbed");
    const bringBack = vi.fn();
    panel.forget(() => bringBack);
    panel.actions.answer("opening.danger", "none");
    const kept = JSON.stringify(store.kept);
    panel.actions.goOn();
    expect(bringBack).not.toHaveBeenCalled();
    expect(JSON.stringify(store.kept)).toBe(kept);
    expect(kept).not.toContain("plumbed");
  });

  test("leads out of no stop, and empties nothing there", () => {
    const store = createMemory();
    const panel = open(store, clock());
    answerAll(panel, "gas");
    panel.actions.reportDanger("gas");
    const clear = vi.fn(() => () => {});
    panel.forget(clear);
    expect(panel.turn()).toBe("stopped.end");
    expect(clear).not.toHaveBeenCalled();
    expect(store.mark?.danger).toBe("gas");
  });

  test("keeps what is still to be put back: a closed tap stays known", () => {
    const store = createMemory();
    const at = "2026-03-01T07:00:00+00:00";
    const entry = (id: string, seq: number, event: object) => ({ id, seq, by: "householder", at, event });
    store.kept = {
      ...{ format: 2, model: null, started: at },
      entries: [
        entry("a", 1, { type: "prepared-left", left: { water: "closed" } }),
        entry("b", 2, { type: "answered", turn: "opening.danger", answer: "none" }),
      ],
    };
    const panel = open(store, clock());
    panel.forget(() => () => {});
    expect(entriesOf(store)).toEqual([{ type: "prepared-left", left: { water: "closed" } }]);
  });

  test("is followed by another tab, which sets nothing aside and goes on with nothing of it", () => {
    const store = createMemory();
    const [here, there] = [open(store, clock()), open(store, clock())];
    answerAll(here, "none", "no-ice");
    there.tick();
    expect(there.turn()).toBe(here.turn());
    here.forget(() => () => {});
    there.tick();
    expect(there.turn()).toBe("opening.danger");
    expect(store.readAside()).toEqual([]);
    there.actions.answer("opening.danger", "none");
    expect(JSON.stringify(store.kept)).not.toContain('"no-ice"');
  });
});
