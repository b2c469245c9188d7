import { describe, expect, test } from "vitest";
import { saidIn } from "../../src/embed/said-in.ts";
import { append, createJournal, type Journal } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";

type Said = Journal["entries"][number]["event"];

const journalOf = (...said: Said[]) =>
  said.reduce(
    (journal, event, place) => append(journal, { id: `e${place}`, at: at(place), event }),
    createJournal(at(0)),
  );
const told = (words: string, ...turns: string[]): Said => ({
  type: "told",
  words,
  facts: turns.map((turn) => ({ turn, answer: "fine" })),
});

describe("what was said and stands with no answer", () => {
  test("is what nobody understood, as text that turns nothing around", () => {
    expect(saidIn(journalOf(told("my cousin\u202Efitted it"), told("")))).toEqual(["my cousin fitted it"]);
  });

  test("is what its question has not come up for yet, and no more once it was answered or taken back", () => {
    const hum: Said = told("it hums", "pump.listen");
    const answered: Said = {
      type: "answered",
      turn: "pump.listen",
      answer: "fine",
      words: "it hums",
      kept: "e0",
    };
    expect(saidIn(journalOf(hum))).toEqual(["it hums"]);
    expect(saidIn(journalOf(hum, answered))).toEqual([]);
    expect(saidIn(journalOf(hum, answered, { type: "took-back", entries: ["e1"], held: [] }))).toEqual([]);
  });

  test("is nothing from before a new start", () => {
    expect(saidIn(journalOf(told("my cousin fitted it"), { type: "started-again" }))).toEqual([]);
  });
});
