import { describe, expect, test, vi } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { createController } from "../../src/embed/controller.ts";
import type { LogStore } from "../../src/embed/log-store.ts";
import type { StopMark } from "../../src/embed/stop-mark.ts";
import type { View } from "../../src/session/index.ts";
import { inTradeOrder } from "../session/drive.ts";

const flow = readFlow();

function createMemory(): LogStore & { kept: unknown; aside: unknown; mark: StopMark | null } {
  let text: string | null = null;
  const store = {
    get kept() {
      return JSON.parse(text ?? "null");
    },
    set kept(log: unknown) {
      text = JSON.stringify(log);
    },
    aside: null as unknown,
    mark: null as StopMark | null,
    others: [] as unknown[],
    read: () => text,
    write: (next: string) => {
      text = next;
      return true;
    },
    setAside: (log: unknown) => {
      store.aside = structuredClone(log);
    },
    readAside: () => store.others,
    writeAside: (logs: unknown[]) => {
      store.others = structuredClone(logs);
    },
    clear: () => {
      text = null;
      store.others = [];
    },
  };
  return store;
}

type Memory = LogStore & { mark: StopMark | null };

function open(store: Memory, clock: { now: string }, model: string | null = null) {
  const ended = vi.fn();
  const views: View[] = [];
  const controller = createController({
    flow,
    charts: inTradeOrder(flow),
    store,
    stop: {
      read: () => store.mark,
      keep: (mark) => {
        store.mark ??= mark;
      },
      clear: () => {
        store.mark = null;
      },
    },
    ended,
    texts: (key) => (key === "ui.locale" ? "en-GB" : key),
    model,
    now: () => clock.now,
    show: (view) => views.push(view),
  });
  return {
    ...controller,
    ended,
    views,
    turn: () => views.at(-1)?.turn?.turn,
    notices: () => views.at(-1)?.notices.map(({ id }) => id),
  };
}

const answerAll = (panel: ReturnType<typeof open>, ...answers: string[]) => {
  for (const answer of answers) panel.actions.answer(panel.turn() ?? "", answer);
};

describe("a session in its surroundings", () => {
  test("every answer is kept before the next is asked", () => {
    const store = createMemory();
    const panel = open(store, { now: "2026-01-01T09:00:00Z" });
    answerAll(panel, "none", "no-ice");
    expect(store.kept).toMatchObject({ events: [{ answer: "none" }, { answer: "no-ice" }] });
  });

  test("a later visit comes back to the same turn and is welcomed until the next answer", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock), "none", "no-ice", "plumbed");
    const back = open(store, clock);
    expect(back.turn()).toBe("opening.changed");
    expect(back.notices()).toEqual(["welcome-back"]);
    answerAll(back, "nothing");
    expect(back.notices()).toEqual([]);
  });

  test("a wait that ran out while the page was closed leads to the next question", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock), "none", "no-ice", "plumbed", "nothing", "lock-off", "off", "switched-on");
    clock.now = "2026-01-02T09:00:01Z";
    const back = open(store, clock);
    expect(back.turn()).toBe("wait-for-ice.came");
    expect(back.notices()).toEqual(["wait-over"]);
  });

  test("a wait that runs out while the page is open ends at the next look at the clock", () => {
    const clock = { now: "2026-01-01T09:00:00Z" };
    const panel = open(createMemory(), clock);
    answerAll(panel, "none", "no-ice", "plumbed", "nothing", "lock-off", "off", "switched-on");
    panel.tick();
    expect(panel.turn()).toBe("wait-for-ice.wait");
    clock.now = "2026-01-02T10:00:00+01:00";
    panel.tick();
    expect(panel.turn()).toBe("wait-for-ice.came");
  });

  test("a second tap on the same answer changes nothing but still shows a view, so no button stays stuck", () => {
    const panel = open(createMemory(), { now: "2026-01-01T09:00:00Z" });
    panel.actions.answer("opening.danger", "none");
    panel.actions.answer("opening.danger", "none");
    expect(panel.turn()).toBe("opening.symptom");
    expect(panel.views).toHaveLength(3);
  });

  test("the page is told of an ending once, and not again by a reload", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    const panel = open(store, clock);
    answerAll(panel, "gas");
    expect(panel.ended).toHaveBeenCalledTimes(1);
    expect(open(store, clock).ended).not.toHaveBeenCalled();
  });

  test("starting again forgets the log", () => {
    const store = createMemory();
    const panel = open(store, { now: "2026-01-01T09:00:00Z" });
    answerAll(panel, "none");
    panel.actions.restart();
    expect(panel.turn()).toBe("opening.danger");
    expect(open(store, { now: "2026-01-01T09:00:00Z" }).turn()).toBe("opening.danger");
  });

  test("storage that keeps nothing is said once", () => {
    const store = { ...createMemory(), write: () => false };
    const panel = open(store, { now: "2026-01-01T09:00:00Z" });
    answerAll(panel, "none", "no-ice");
    expect(panel.notices()).toEqual(["memory-only"]);
  });

  test.each([
    ["a stranger's JSON", { hello: 1 }],
    ["markup", "<img onerror=alert(1)>"],
    ["a newer format", { format: 9, events: [] }],
  ])("%s in storage counts as nothing", (_name, kept) => {
    const store = createMemory();
    store.kept = kept;
    expect(open(store, { now: "2026-01-01T09:00:00Z" }).turn()).toBe("opening.danger");
  });

  test("a log that an edited flow no longer takes comes back as far as it fits, and says so", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock), "none", "no-ice", "plumbed", "nothing");
    const log = store.kept as { events: { answer: string }[] };
    (log.events[2] as { answer: string }).answer = "by-camel";
    const back = open(store, clock);
    expect(back.turn()).toBe("opening.supply");
    expect(back.notices()).toEqual(["shortened"]);
    expect(store.aside).toEqual(log);
    expect(store.kept).toMatchObject({ events: log.events.slice(0, 2) });
  });
});
