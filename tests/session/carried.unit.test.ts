import { describe, expect, test } from "vitest";
import {
  append,
  carriedOf,
  createJournal,
  type Journal,
  parseJournal,
  resume,
  standingOf,
} from "../../src/session/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { at, inTradeOrder } from "./drive.ts";

const guide = inTradeOrder(readFlow());
type Said = Journal["entries"][number]["event"];

const journalOf = (...said: Said[]): Journal =>
  said.reduce(
    (journal, event, place) => append(journal, { id: `long-id-${place}`, at: at(place), event }),
    createJournal(at(0)),
  );
const answered = (turn: string, answer: string): Said => ({ type: "answered", turn, answer });
const none = answered("opening.danger", "none");
const noIce = answered("opening.symptom", "no-ice");
const carried = (journal: Journal) => carriedOf(standingOf(journal));

describe("a conversation that is carried to another device", () => {
  const journal = journalOf(none, noIce, answered("opening.supply", "plumbed"));

  test("comes to the same question with the same answers at the same times", () => {
    const there = resume(guide, standingOf(carried(journal)).log, at(10));
    const here = resume(guide, standingOf(journal).log, at(10));
    expect(there.session.log).toEqual(here.session.log);
    expect(there.session.snapshot.value).toEqual(here.session.snapshot.value);
    expect(there.dropped).toBe(0);
  });

  test("is a journal as the door takes it", () => {
    expect(parseJournal(JSON.parse(JSON.stringify(carried(journal))))).toEqual(carried(journal));
  });

  test("has none of what was taken back, or of the time before a new start", () => {
    const changed = journalOf(
      none,
      noIce,
      { type: "started-again" },
      none,
      noIce,
      { type: "took-back", entries: ["long-id-4"], held: [] },
      answered("opening.symptom", "too-little"),
    );
    const { entries, started } = carried(changed);
    expect(entries.map(({ event }) => event)).toEqual([none, answered("opening.symptom", "too-little")]);
    expect(started).toBe(at(2));
  });

  test("has what was said unasked in its own words, at its place", () => {
    const told: Said = { type: "told", words: "it began after the move", facts: [] };
    expect(carried(journalOf(none, told, noIce)).entries.map(({ event }) => event)).toEqual([
      none,
      told,
      noIce,
    ]);
  });

  test("has the true times where a clock had run ahead", () => {
    const times = [at(0), at(1), at(2)];
    const { entries } = carried(journalOf(none, noIce, { type: "times-corrected", times }));
    expect(entries.map((entry) => entry.at)).toEqual([at(1), at(2)]);
  });

  test("names no entry by an id that is gone", () => {
    const repeated: Said = { type: "answered", turn: "opening.symptom", answer: "no-ice", kept: "long-id-9" };
    expect(carried(journalOf(none, repeated)).entries[1]?.event).toEqual(noIce);
  });

  test("is carried on the same, once more", () => {
    expect(carried(carried(journal))).toEqual(carried(journal));
  });
});
