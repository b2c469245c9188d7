import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../src/session/index.ts";
import { metaOf, record, startSession } from "../../src/session/index.ts";
import { createTexts, fillIn, sentenceBehind, viewOf } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { createDraftOf } from "../panel/gallery/draft.ts";
import { at, follow, healthy, inTradeOrder } from "../session/drive.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const atBin = follow(startSession(inTradeOrder(flow), at(0)), healthy, "ice-bin.look");

function lineAfter(words: string) {
  const { turn } = metaOf(atBin);
  const event: LogEvent = { type: "answered", turn, answer: "fine", words, at: at(400) };
  return viewOf(record(atBin, event).session, texts, at(401), []).lines.at(-1);
}

describe("the line of an answer that was typed", () => {
  test("has the words as they were typed, and what they were taken as", () => {
    const { answer } = lineAfter("") ?? {};
    expect(lineAfter("looks ok to me")).toMatchObject({
      words: "looks ok to me",
      answer: `Noted: ${answer}`,
    });
    expect(answer).toBe(texts("checks.ice-bin.look.answers.fine"));
  });

  test("turns no text around it, and is one line", () => {
    // U+202E turns what follows it around, U+2066 opens what has no end.
    expect(lineAfter("a\u202Eb\u2066c\nd")?.words).toBe("a b c d");
    expect(lineAfter("\u202E \n")).not.toHaveProperty("words");
  });
});

describe("a sentence that has filled in a reading", () => {
  const turn = "flow-test.run";

  test("is what that was said in, also once a run is taken and its fields are empty", () => {
    const draft = createDraftOf();
    expect(sentenceBehind(draft, turn)).toBeUndefined();
    fillIn(draft, turn, "150 ml in 10 s", { volume: "150", seconds: "10" });
    expect(sentenceBehind(draft, turn)).toBe("150 ml in 10 s");
    draft.keep(turn, "volume", "");
    expect(sentenceBehind(draft, turn)).toBe("150 ml in 10 s");
  });

  test("is so no longer once something else is entered", () => {
    const draft = createDraftOf();
    fillIn(draft, turn, "150 ml in 10 s", { volume: "150", seconds: "10" });
    draft.keep(turn, "volume", "90");
    expect(sentenceBehind(draft, turn)).toBeUndefined();
  });
});
