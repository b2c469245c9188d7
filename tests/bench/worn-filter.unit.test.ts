import { expect, test } from "vitest";
import { compileGuide } from "../../src/compile/index.ts";
import { memoryOf, metaOf, record, type Session, startSession } from "../../src/session/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { answerTo, at } from "../session/drive.ts";
import { soundAnswer } from "../session/reach.ts";
import { wornFilter } from "./worn-filter.ts";

test("whoever visits with a worn filter looks behind the machine, and comes to the filter as due", () => {
  let session: Session = startSession(compileGuide(readFlow()), at(0));
  const asked: string[] = [];
  while (!["model", "ending"].includes(metaOf(session).kind) && asked.length < 60) {
    const { turn } = metaOf(session);
    asked.push(turn);
    const answer = wornFilter.answers[turn] ?? soundAnswer(session);
    session = record(session, answerTo(session, answer, at(2 * asked.length))).session;
  }
  expect(asked).toContain("supply-line.gate-pulled-out");
  expect([metaOf(session).turn, memoryOf(session).cause]).toEqual(["part.model", "filter-due"]);
});
