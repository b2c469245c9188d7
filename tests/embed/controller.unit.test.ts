import { describe, expect, test } from "vitest";
import { journalOf, type LogEvent, startSession } from "../../src/session/index.ts";
import { atModelOfBin } from "../browser/expected.ts";
import { ownFlow } from "../own-flow.ts";
import { at, flowOf, follow, healthy, inTradeOrder } from "../session/drive.ts";
import { answerAll, createMemory, entriesOf, open } from "./open-controller.ts";

const flow = ownFlow;
/** Little water: the next is the gate before the tap. */
const atTapGate = follow(
  startSession(inTradeOrder(flow), at(0)),
  { ...healthy, "flow-test.run": flowOf(5) },
  "stop-tap.gate-water-supply",
);

describe("a session in its surroundings", () => {
  test("every answer is kept before the next is asked", () => {
    const store = createMemory();
    const panel = open(store, { now: "2026-01-01T09:00:00Z" });
    answerAll(panel, "none", "no-ice");
    expect(entriesOf(store)).toMatchObject([{ answer: "none" }, { answer: "no-ice" }]);
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
    clock.now = "2026-01-02T09:00:01Z";
    const back = open(store, clock);
    expect(back.turn()).toBe("wait-for-ice.came");
    expect(back.notices()).toEqual(["wait-over"]);
  });

  test("a wait that runs out while the page is open ends at the next look at the clock", () => {
    const clock = { now: "2026-01-01T09:00:00Z" };
    const panel = open(createMemory(), clock);
    answerAll(panel, "none", "no-ice", "plumbed", "nothing", "alive", "lock-off", "off", "switched-on");
    panel.tick();
    expect(panel.turn()).toBe("wait-for-ice.wait");
    expect(panel.notices()).toEqual([]);
    clock.now = "2026-01-02T10:00:00+01:00";
    panel.tick();
    expect(panel.turn()).toBe("wait-for-ice.came");
    expect(panel.notices()).toEqual(["wait-ended"]);
    answerAll(panel, "no-ice");
    expect(panel.notices()).toEqual([]);
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

  test("starting again counts nothing of what was answered before", () => {
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
    const journal = store.kept as { entries: { event: { answer: string } }[] };
    (journal.entries[2] as (typeof journal.entries)[0]).event.answer = "by-camel";
    store.kept = journal;
    const back = open(store, clock);
    expect(back.turn()).toBe("opening.supply");
    expect(back.notices()).toEqual(["shortened"]);
    expect(store.aside).toMatchObject({ entries: journal.entries });
    expect(entriesOf(store).at(-1)).toMatchObject({ type: "took-back", held: [] });
    answerAll(back, "plumbed");
    expect(back.turn()).toBe("opening.changed");
  });
});

describe("a part without a list of parts to look its model up in", () => {
  const clock = { now: "2026-01-01T09:00:00Z" };
  const noList = () => false;
  const { log } = atModelOfBin();
  const { events } = log;
  const logWith = (...all: LogEvent[]) => journalOf({ ...log, events: all });
  /** Storage in which somebody has come as far as the question for the model code, and on by `more`. */
  const keptWith = (...more: LogEvent[]) => {
    const store = createMemory();
    store.kept = logWith(...events, ...more);
    return store;
  };

  test("is named by its kind, and nobody is asked for the code; the log says so and replays", () => {
    const store = createMemory();
    store.kept = logWith(...events.slice(0, -1));
    const panel = open(store, clock, null, undefined, noList);
    const last = events.at(-1) as { answer: string };
    answerAll(panel, last.answer);
    expect(panel.turn()).toBe("part.card");
    expect(panel.ended).toHaveBeenCalledTimes(1);
    expect(entriesOf(store).at(-1)).toMatchObject({ type: "model-given", code: null, typed: "" });
    expect(open(store, clock, null, undefined, noList).turn()).toBe("part.card");
  });

  test("is named by its kind for somebody who comes back to the question from a page that had a list", () => {
    expect(open(keptWith(), clock, null, undefined, noList).turn()).toBe("part.card");
  });

  test("asks for the code with a list, and can be asked again once there is one", () => {
    expect(open(keptWith(), clock).turn()).toBe("part.model");
    const store = keptWith();
    open(store, clock, null, undefined, noList);
    const later = open(store, clock);
    later.actions.retypeModel();
    expect(later.turn()).toBe("part.model");
  });

  test("a code that was given can be typed again", () => {
    const at = "2026-01-01T09:00:00Z";
    const given = { type: "model-given", turn: "part.model", code: "AB-12", typed: "ab12", at } as const;
    const panel = open(keptWith(given), clock);
    expect(panel.turn()).toBe("part.card");
    panel.actions.retypeModel();
    expect(panel.turn()).toBe("part.model");
  });

  test("a code that an earlier version took from the page at its word is asked for", () => {
    const store = keptWith();
    store.kept = { ...(store.kept as object), model: "AB-12" };
    expect(open(store, clock).turn()).toBe("part.model");
  });
});

describe("a page that is brought back as it was left", () => {
  test("asks the gate of a hazardous step again", () => {
    const clock = { now: "2026-03-02T12:00:00Z" };
    const store = createMemory();
    store.kept = journalOf(atTapGate.log);
    const panel = open(store, clock);
    const items = panel.views.at(-1)?.turn?.gate?.items.map(({ id }) => id) ?? [];
    panel.actions.confirmGate("stop-tap.gate-water-supply", items);
    expect(panel.turn()).toBe("stop-tap.open");
    panel.comeBack();
    expect(panel.turn()).toBe("stop-tap.gate-water-supply");
  });
});

describe("a new start while a tap is closed", () => {
  test("does not forget it, in this tab, in another one and after a reload", () => {
    const clock = { now: "2026-03-02T12:00:00Z" };
    const store = createMemory();
    store.kept = journalOf(atTapGate.log);
    const [panel, other] = [open(store, clock), open(store, clock)];
    const items = panel.views.at(-1)?.turn?.gate?.items.map(({ id }) => id) ?? [];
    panel.actions.confirmGate("stop-tap.gate-water-supply", items);
    panel.actions.restart();
    expect(entriesOf(store).slice(-2)).toMatchObject([
      { type: "started-again" },
      { type: "prepared-left", left: { water: "closed" } },
    ]);
    other.tick();
    for (const one of [panel, other, open(store, clock)]) {
      one.actions.askForHelp();
      expect(one.views.at(-1)?.turn?.ending?.back).toContain("endings.water.open-again");
    }
  });
});

describe("two tabs of one session", () => {
  const clock = { now: "2026-01-01T09:00:00Z" };
  const pair = () => {
    const store = createMemory();
    const [one, other] = [open(store, clock), open(store, clock)];
    return { store, one, other };
  };

  test("the later tap is refused where the other tab was first, and nothing is cut", () => {
    const { store, one, other } = pair();
    answerAll(one, "none", "no-ice", "plumbed", "nothing");
    other.actions.answer("opening.danger", "not-sure-at-all");
    expect(other.turn()).toBe(one.turn());
    expect(other.notices()).toEqual(["tap-not-taken"]);
    expect(entriesOf(store)).toHaveLength(4);
  });

  test("a change of an earlier answer counts only on the answers that were on screen", () => {
    const { one, other } = pair();
    answerAll(one, "none");
    other.tick();
    answerAll(one, "no-ice");
    other.actions.change(0);
    expect(other.turn()).toBe("opening.supply");
    expect(other.notices()).toEqual(["tap-not-taken"]);
  });

  test.each([
    ["a danger", ["gas"]],
    ["a danger that nobody is sure of", ["not-sure", "not-sure"]],
    ["a leak near a socket", ["none", "leaking", "water-near-socket", "water-near-socket"]],
  ])("%s in one stops the other, whatever becomes of the log", (_, answers) => {
    const { store, one, other } = pair();
    answerAll(one, ...answers);
    other.tick();
    expect(other.turn()).toBe("stopped.end");
    other.actions.change(0);
    expect(other.turn()).toBe("stopped.end");
    store.kept = { format: 2, model: null, started: clock.now, entries: [] };
    expect(open(store, clock).turn()).toBe("stopped.end");
    store.kept = null;
    expect(open(store, clock).turn()).toBe("stopped.end");
  });

  test("a danger does not wait for the lock, and what waits for it finds the stop", () => {
    const store = createMemory();
    const waiting: (() => void)[] = [];
    const panel = open(store, clock, null, (work) => waiting.push(work));
    answerAll(panel, "none");
    expect(panel.turn()).toBe("opening.danger");
    panel.actions.restart();
    panel.actions.reportDanger("gas");
    expect(panel.turn()).toBe("stopped.end");
    for (const work of waiting) work();
    expect(panel.turn()).toBe("stopped.end");
    expect(open(store, clock).turn()).toBe("stopped.end");
  });

  test("starting again in one is followed by the other, and ends a stop for both", () => {
    const { one, other } = pair();
    answerAll(one, "gas");
    other.tick();
    other.actions.restart();
    one.tick();
    expect([one.turn(), one.notices()]).toEqual(["opening.danger", ["other-tab"]]);
  });

  test("an ending that the other tab came to is not told to the page a second time", () => {
    const { one, other } = pair();
    answerAll(one, "none");
    one.actions.askForHelp();
    other.tick();
    expect(other.turn()).toBe("professional.end");
    expect(other.ended).not.toHaveBeenCalled();
  });
});

describe("a session that is come back to later, or on another page", () => {
  test("starts anew after more days than the limit says, and the old one can be gone on with", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock), "none", "no-ice");
    clock.now = "2026-01-31T09:00:00Z";
    expect(open(store, clock).turn()).toBe("opening.supply");
    clock.now = "2026-01-31T09:00:01Z";
    const later = open(store, clock);
    expect([later.turn(), later.notices()]).toEqual(["opening.danger", ["set-aside"]]);
    later.actions.goOn();
    expect(later.turn()).toBe("opening.supply");
    expect(open(store, clock).turn()).toBe("opening.supply");
  });

  test("stays stopped however long ago it was", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock), "gas");
    clock.now = "2027-01-01T09:00:00Z";
    expect(open(store, clock).turn()).toBe("stopped.end");
  });

  test.each([
    ["another model is asked about", "WX-40 B9", "resumed.machine"],
    ["the same model, written in another way, is not", "wx40.8b", "opening.symptom"],
    ["a page about no model changes nothing", null, "opening.symptom"],
  ])("%s", (_, model, turn) => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock, "WX-40 8B"), "none");
    expect(open(store, clock, model).turn()).toBe(turn);
  });

  test("until it is said which machine it is about, only a danger is taken", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock, "AB-1"), "none");
    const elsewhere = open(store, clock, "CD-2");
    elsewhere.actions.answer("opening.symptom", "no-ice");
    elsewhere.actions.askForHelp();
    expect(elsewhere.turn()).toBe("resumed.machine");
    elsewhere.actions.reportDanger("gas");
    expect(elsewhere.turn()).toBe("stopped.end");
  });

  test("goes on with the machine before, and is not asked again; or starts anew for the page's", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock, "AB-1"), "none");
    open(store, clock, "CD-2").actions.answer("resumed.machine", "kept");
    expect(open(store, clock, "CD-2").turn()).toBe("opening.symptom");
    open(store, clock, "EF-3").actions.answer("resumed.machine", "shown");
    expect(store.kept).toMatchObject({ model: null, about: "EF-3", entries: [] });
    const back = open(store, clock, "EF-3");
    expect([back.turn(), back.notices()]).toEqual(["opening.danger", ["set-aside"]]);
  });

  test("is not asked about where the person has named another model than the page's themselves", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    store.kept = journalOf({ ...atModelOfBin().log, model: null });
    const panel = open(store, clock, "CD-2");
    panel.actions.giveModel("part.model", "AB-1", "ab1");
    expect(panel.turn()).toBe("part.card");
    expect(open(store, clock, "CD-2").turn()).toBe("part.card");
    expect(open(store, clock, "EF-3").turn()).toBe("resumed.machine");
  });

  test("is about the machine that was said, until a model is confirmed", () => {
    const store = createMemory();
    const clock = { now: "2026-01-01T09:00:00Z" };
    answerAll(open(store, clock, "AB-1"), "none");
    const elsewhere = open(store, clock, "CD-2");
    elsewhere.actions.answer("resumed.machine", "kept");
    expect(elsewhere.about()).toBe("AB-1");
    expect(open(store, clock, "CD-2").about()).toBe("AB-1");
    expect(open(store, clock).about()).toBe("AB-1");
  });
});
