import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  readSuggestion,
  type Suggestion,
  sendable,
  suggestionBounds,
} from "../../../src/cobrowse/client/index.ts";
import { kinds } from "../../../src/cobrowse/protocol/index.ts";

const all: Suggestion[] = [
  { kind: "line", text: "Hello" },
  { kind: "point", turn: "ice-bin.look", answer: "fine" },
  { kind: "propose", turn: "ice-bin.look", answer: "fine", why: "You said so." },
  { kind: "propose", check: "ice-bin", why: "" },
  { kind: "propose", ending: "fixed", why: "" },
  { kind: "propose", ending: "professional", why: "" },
  { kind: "correct", model: "WX-40B8/E", why: "" },
  { kind: "told", facts: [{ turn: "ice-bin.look", answer: "fine" }], words: "loose ones" },
];

describe("what an agent suggests", () => {
  test.each(all)("is read as it was sent: $kind $check $ending $model", (suggestion) => {
    const { kind, body } = sendable(suggestion);
    expect(readSuggestion(kind, body)).toEqual(suggestion);
    expect(kinds.carried.agent).toContain(kind);
  });

  test("is nothing where it is of no kind that an agent may send", () => {
    for (const kind of ["entry", "heard", "admit", "answer", "__proto__", "constructor", ""])
      expect(readSuggestion(kind, '{"turn":"a.b","answer":"c"}')).toBeNull();
  });

  test.each([
    ["point", '{"turn":"a.b"}'],
    ["point", '{"turn":"","answer":"c"}'],
    ["point", '{"turn":1,"answer":"c"}'],
    ["point", '{"__proto__":{"turn":"a.b","answer":"c"}}'],
    ["point", '["turn"]'],
    ["point", "null"],
    ["point", "{"],
    ["propose", "{}"],
    ["propose", '{"ending":"part"}'],
    ["propose", '{"ending":"stopped"}'],
    ["propose", '{"ending":"toString"}'],
    ["correct", '{"model":""}'],
    ["told", '{"facts":[],"words":"x"}'],
    ["told", '{"facts":[{"turn":"a.b"}],"words":"x"}'],
    ["told", '{"facts":[null],"words":"x"}'],
    ["told", '{"facts":{"length":1},"words":"x"}'],
  ])("is nothing where it is half there: %s %s", (kind, body) => {
    expect(readSuggestion(kind, body)).toBeNull();
  });

  test("has bounds", () => {
    const long = "x".repeat(suggestionBounds.id + 1);
    expect(readSuggestion("point", JSON.stringify({ turn: long, answer: "c" }))).toBeNull();
    expect(readSuggestion("correct", JSON.stringify({ model: "x".repeat(41) }))).toBeNull();
    const facts = Array.from({ length: suggestionBounds.facts + 1 }, () => ({ turn: "a.b", answer: "c" }));
    expect(readSuggestion("told", JSON.stringify({ facts }))).toBeNull();
    expect(readSuggestion("line", "x".repeat(1000))).toEqual({ kind: "line", text: "x".repeat(400) });
  });

  test("is one of these or nothing, whatever comes", () => {
    const names = fc.constantFrom(
      ...["turn", "answer", "check", "why", "ending", "model", "facts", "words", "__proto__", "constructor"],
    );
    const bodies = fc.oneof(
      fc.string(),
      fc.json(),
      fc.dictionary(names, fc.jsonValue()).map((one) => JSON.stringify(one)),
    );
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.constantFrom(...kinds.carried.agent)), bodies, (kind, body) => {
        const read = readSuggestion(kind, body);
        if (!read) return;
        expect(kinds.carried.agent).toContain(read.kind);
        // Nothing is in it that was not asked for, and what is sent on is the same again.
        const { kind: again, body: sent } = sendable(read);
        expect(readSuggestion(again, sent)).toEqual(read);
        expect(JSON.stringify(read).length).toBeLessThan(4000);
      }),
    );
  });
});
