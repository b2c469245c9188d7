import { describe, expect, test } from "vitest";
import { startSession } from "../../src/session/index.ts";
import { createTexts, turnOf } from "../../src/turn/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { type Answers, at, flowOf, follow, healthy, take } from "../session/drive.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const noIce: Answers = { ...healthy, "opening.symptom": "no-ice", "flow-test.run": flowOf(5) };
const start = startSession(guideFor(flow), at(0));
const turnAt = (turn: string) => turnOf(follow(start, noIce, turn), texts, at(0));

describe("where a search stands", () => {
  test("is not said in the opening, where nothing is believed yet", () => {
    expect(turnAt("opening.supply")).toMatchObject({ means: "", likely: [], left: 0 });
  });

  test("is about so many more checks, and what it most likely is, in the words of the causes", () => {
    const { left, likely } = turnAt("flow-test.run");
    expect(left).toBeGreaterThanOrEqual(2);
    const words = Object.keys(flow.causes).map((cause) => texts(`causes.${cause}.is`));
    for (const one of likely) expect(words).toContain(one);
  });

  test("after too little water the answer points to where the water comes through, and fewer checks are left", () => {
    const after = take(follow(start, noIce, "flow-test.run"), flowOf(5));
    const turn = turnOf(after, texts, at(0));
    expect(turn.means).toMatch(/^(That points to|Most likely now:) .*(filter|tap|tube)/);
  });
});
