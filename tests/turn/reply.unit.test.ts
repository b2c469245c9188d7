import { describe, expect, test } from "vitest";
import { replyTo } from "../../src/turn/index.ts";
import type { Understood } from "../../src/understanding/index.ts";

const answer = (id: string, sure = false): Understood => ({
  kind: "answer",
  turn: "opening.symptom",
  answer: id,
  sure,
});
const hum = { turn: "dispense-listen.listen", answer: "hums" };
const facts: Understood = { kind: "facts", facts: [hum] };
const sparks: Understood = { kind: "danger", danger: "sparks", sure: false };

describe("What is said to a sentence", () => {
  test("is a danger before all else, and the rest where there is none", () => {
    expect(replyTo([sparks, answer("no-ice")])).toMatchObject({
      kind: "danger",
      danger: "sparks",
      otherwise: { kind: "choices", answers: ["no-ice"] },
    });
  });

  test("is nothing where it is an answer's own wording: that is taken", () => {
    expect(replyTo([answer("no-ice", true)])).toEqual({ kind: "taken", answer: "no-ice" });
  });

  test("offers answers, and asks about what was told besides after them, whichever was meant", () => {
    expect(replyTo([answer("no-ice"), facts, answer("little-ice")])).toEqual({
      kind: "choices",
      answers: ["no-ice", "little-ice"],
      facts: [hum],
      otherwise: { kind: "facts", facts: [hum], otherwise: { kind: "none" } },
    });
  });

  test("is one thing after the other, each where the one before was not meant", () => {
    const reply = replyTo([
      { kind: "reading", instrument: "flow", entries: { volume: "150" } },
      { kind: "question", entry: "where-filter" },
      { kind: "model", code: "WX-1" },
      facts,
    ]);
    const kinds: string[] = [];
    for (let next: unknown = reply; next; next = (next as { otherwise?: unknown }).otherwise)
      kinds.push((next as { kind: string }).kind);
    expect(kinds).toEqual(["filled", "aside", "model", "facts", "none"]);
  });

  test("offers nothing that is only nearer than the others", () => {
    expect(replyTo([{ kind: "nothing" }, answer("no-ice")])).toEqual({ kind: "none" });
    expect(replyTo([])).toEqual({ kind: "none" });
  });
});
