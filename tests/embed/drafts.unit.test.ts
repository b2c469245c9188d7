import { describe, expect, test } from "vitest";
import { createDrafts, draftBounds } from "../../src/embed/drafts.ts";
import { append, createJournal, type Entry, type Journal } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { SharedStorage } from "./two-tabs.ts";

const key = "fridgeside:panel:draft";
const [gate, run] = ["flow-without-filter.gate-water-supply", "flow-without-filter.run"];

type Said = Entry["event"];
const answered = (turn: string, answer = "any"): Said => ({ type: "answered", turn, answer });
const resumed: Said = { type: "session-resumed" };
const confirmed: Said = { ...answered(gate, "ready"), items: ["water"] } as Said;

/** One tab on a journal to which a test says more; `reload` opens it again on what is kept. */
function open(storage = new SharedStorage(), begun = createJournal(at(0))) {
  let journal: Journal = begun;
  const around = { key, journal: () => journal, place: () => storage.place };
  let drafts = createDrafts(around);
  return {
    storage,
    say: (...events: Said[]) => {
      for (const event of events)
        journal = append(journal, { id: `${journal.entries.length}`, at: at(1), event });
      drafts.look();
    },
    reload: () => {
      drafts = createDrafts(around);
    },
    keep: (turn: string, name: string, entered: string) => drafts.keep(turn, name, entered),
    read: (turn: string) => drafts.read(turn),
    journal: () => journal,
    kept: () => storage.kept.get(key),
  };
}

describe("what was entered at a turn", () => {
  test("outlives a reload, each entry as it was last, in the tab's own storage alone", () => {
    const tab = open();
    tab.say(answered("opening.danger"));
    tab.keep(run, "volume", "25");
    tab.keep(run, "volume", "250");
    tab.keep(run, "unit", "ml");
    tab.reload();
    tab.say(resumed);
    expect(tab.read(run)).toEqual({ volume: "250", unit: "ml" });
    expect(tab.read(gate)).toEqual({});
    expect(open(undefined, tab.journal()).read(run)).toEqual({});
  });

  test("is still there behind the gates that are asked again, and behind what has to be done again", () => {
    const tab = open();
    tab.keep(run, "runs", "250 ml 10");
    tab.reload();
    tab.say(resumed);
    tab.keep(gate, "water", at(2));
    tab.say(confirmed, answered("flow-without-filter.prepare", "plug-fitted"));
    expect(tab.read(run)).toEqual({ runs: "250 ml 10" });
  });

  test.each<[string, Said[]]>([
    ["it was answered", [answered(run)]],
    ["it was answered after a reload", [resumed, answered(run)]],
    [
      "another turn of its check was answered without an interruption",
      [answered("flow-without-filter.prepare")],
    ],
    ["another check was gone to after a reload", [resumed, answered("flow-test.run")]],
    ["an earlier answer was changed", [{ type: "took-back", entries: [], held: [] }]],
    ["the answer to it was taken back", [answered(run), { type: "took-back", entries: ["0"], held: [] }]],
    ["the search was started again", [{ type: "started-again" }]],
    ["a danger was reported", [{ type: "danger-reported", danger: "gas" }]],
  ])("is forgotten, in the storage too, once %s", (_, events) => {
    const tab = open();
    tab.keep(run, "volume", "250");
    expect(tab.kept()).toContain("250");
    tab.say(...events);
    expect(tab.kept()).toBeUndefined();
    expect(tab.read(run)).toEqual({});
  });

  test("is forgotten with the journal that it belongs to", () => {
    const tab = open();
    tab.keep(run, "volume", "250");
    const later = open(tab.storage, createJournal(at(1)));
    expect(later.read(run)).toEqual({});
    expect(tab.kept()).toBeUndefined();
  });
});

describe("a gate's ticks", () => {
  test("are forgotten as soon as it is confirmed: asked again, it comes without them", () => {
    const tab = open();
    tab.keep(gate, "water", at(2));
    tab.say(confirmed);
    tab.reload();
    tab.say(resumed);
    expect(tab.read(gate)).toEqual({});
  });
});

describe("what is kept has a bound", () => {
  test("so many turns, and the latest stay", () => {
    const tab = open();
    const turns = ["a.a", "a.b", "a.c", "a.d"];
    for (const turn of turns) tab.keep(turn, "volume", "1");
    tab.reload();
    expect(turns.filter((turn) => tab.read(turn).volume)).toEqual(turns.slice(-draftBounds.turns));
  });
});

describe("whatever else lies there counts as nothing", () => {
  const draft = { started: at(0), entries: 0, turn: run, values: [["volume", "250"]] };
  const read = (text: string) => {
    const storage = new SharedStorage();
    storage.kept.set(key, text);
    const tab = open(storage);
    const found = tab.read(run);
    tab.keep(run, "unit", "ml");
    expect(tab.read(run).unit, "and is written over").toBe("ml");
    return found;
  };

  test("while a sound one is read", () => {
    expect(read(JSON.stringify([draft]))).toEqual({ volume: "250" });
  });

  test.each<[string, unknown]>([
    ["another journal's", [{ ...draft, started: at(1) }]],
    ["a later entry's", [{ ...draft, entries: 1 }]],
    ["a negative entry's", [{ ...draft, entries: -1 }]],
    ["another turn's", [{ ...draft, turn: gate }]],
    ["values that are no texts", [{ ...draft, values: [["volume", 250]] }]],
    ["a value without end", [{ ...draft, values: [["volume", "2".repeat(2000)]] }]],
    ["values without end", [{ ...draft, values: Array(200).fill(["volume", "250"]) }]],
    ["drafts without end", Array(20).fill(draft)],
    ["more characters than are read", [{ ...draft, more: "x".repeat(draftBounds.characters) }]],
    ["no list", draft],
    ["a number", 7],
  ])("%s", (_, kept) => {
    expect(read(JSON.stringify(kept))).toEqual({});
  });

  test.each(["", "{{{", "[".repeat(10_000), "null"])("%s", (text) => {
    expect(read(text)).toEqual({});
  });

  test("a prototype is not reached by a name", () => {
    const hostile = [{ ...draft, values: [["__proto__", "1"], ["constructor"], []] }];
    read(JSON.stringify(hostile));
    expect(({} as Record<string, unknown>).volume).toBeUndefined();
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  });
});

test.each(["denied", "full"] as const)("in a storage that is %s it lasts as long as the page", (state) => {
  const storage = new SharedStorage();
  storage.state = state;
  const tab = open(storage);
  tab.keep(run, "volume", "250");
  expect(tab.read(run)).toEqual({ volume: "250" });
  tab.reload();
  expect(tab.read(run)).toEqual({});
});
