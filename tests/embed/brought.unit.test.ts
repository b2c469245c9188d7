import { describe, expect, test } from "vitest";
import { type Journal, parseJournal } from "../../src/session/index.ts";
import { answerAll, createMemory, open } from "./open-controller.ts";

const clock = () => ({ now: "2026-03-02T09:00:00Z" });

/** The journal of a search in which this was answered on another phone. */
function from(...answers: string[]): Journal {
  const store = createMemory();
  answerAll(open(store, clock()), ...answers);
  return parseJournal(store.kept) as Journal;
}

/** A tab that a link was opened in, which brings a search or turns out to be broken. */
const openLink = (store: ReturnType<typeof createMemory>, brought: Journal | "broken", at = clock()) =>
  open(store, at, null, undefined, undefined, { brought });

const carried = from("none", "no-ice");

describe("a search that a link has brought", () => {
  test("is offered, and gone on with on a tap alone", () => {
    const store = createMemory();
    const panel = openLink(store, carried);
    expect([panel.turn(), panel.notices()]).toEqual(["opening.danger", ["carried"]]);
    panel.actions.goOn();
    expect([panel.turn(), panel.notices()]).toEqual(["opening.supply", ["welcome-back"]]);
    expect(open(store, clock()).turn()).toBe("opening.supply");
  });

  test("stays offered while somebody answers, and lies aside once however often its link is opened", () => {
    const store = createMemory();
    const panel = openLink(store, carried);
    answerAll(panel, "none");
    expect(panel.notices()).toEqual(["carried"]);
    openLink(store, carried);
    expect(store.readAside()).toEqual([carried]);
  });

  test("is the one that is gone on with where an older one is put aside at the same moment", () => {
    const store = createMemory();
    const at = clock();
    answerAll(open(store, at), "none");
    at.now = "2026-05-02T09:00:00Z";
    const panel = openLink(store, carried, at);
    panel.actions.goOn();
    expect(panel.turn()).toBe("opening.supply");
  });

  test("has the search that was begun here take its place aside, to be gone on with in turn", () => {
    const store = createMemory();
    answerAll(open(store, clock()), "none", "too-warm");
    const own = parseJournal(store.kept);
    openLink(store, carried).actions.goOn();
    expect(store.readAside()).toHaveLength(1);
    expect(parseJournal(store.readAside()[0])?.entries.slice(0, 2)).toEqual(own?.entries.slice(0, 2));
  });

  test("is offered no longer once everything was forgotten", () => {
    const panel = openLink(createMemory(), carried);
    panel.actions.restart();
    expect(panel.notices()).toEqual([]);
  });

  test("leads out of no stop, whether that stood already or came later", () => {
    const stopped = createMemory();
    answerAll(open(stopped, clock()), "gas");
    for (const panel of [openLink(stopped, carried), openLink(createMemory(), carried)]) {
      panel.actions.reportDanger("gas");
      expect(panel.notices()).not.toContain("carried");
      panel.actions.goOn();
      expect(panel.turn()).toBe("stopped.end");
    }
  });

  test("that was stopped stops this phone's other tabs too", () => {
    const store = createMemory();
    const other = open(store, clock());
    openLink(store, from("gas")).actions.goOn();
    expect(store.mark).toMatchObject({ danger: "gas" });
    other.tick();
    expect(other.turn()).toBe("stopped.end");
  });

  test("that cannot be read is told, and nothing else changes", () => {
    const store = createMemory();
    answerAll(open(store, clock()), "none");
    const panel = openLink(store, "broken");
    expect([panel.turn(), panel.notices()]).toEqual(["opening.symptom", ["welcome-back", "link-broken"]]);
    expect(store.readAside()).toEqual([]);
  });
});
