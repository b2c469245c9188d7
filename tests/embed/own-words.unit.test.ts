import { describe, expect, test } from "vitest";
import { saidIn as saidInTexts } from "../../src/embed/said-in.ts";
import { append, createJournal, type Journal } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";

/** What was said on the phone is marked. */
const said = (journal: Journal) =>
  saidInTexts(journal, (key, values) => (key === "thread.heard" ? `phone: ${values?.["words"]}` : key));

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
    expect(said(journalOf(told("my cousin\u202Efitted it"), told("")))).toEqual(["my cousin fitted it"]);
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
    expect(said(journalOf(hum))).toEqual(["it hums"]);
    expect(said(journalOf(hum, answered))).toEqual([]);
    expect(said(journalOf(hum, answered, { type: "took-back", entries: ["e1"], held: [] }))).toEqual([]);
  });

  test("is marked where an agent has heard it on the phone", () => {
    expect(said(journalOf({ type: "told", words: "it hums", facts: [], heard: true }))).toEqual([
      "phone: it hums",
    ]);
  });

  test("is nothing from before a new start", () => {
    expect(said(journalOf(told("my cousin fitted it"), { type: "started-again" }))).toEqual([]);
  });
});
