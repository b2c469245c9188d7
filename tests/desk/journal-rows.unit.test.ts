import { describe, expect, test } from "vitest";
import { journalRowsOf } from "../../src/desk/board/index.ts";
import {
  advance,
  changeAnswer,
  type Journal,
  journalOf,
  type Session,
  standingOf,
  stopBy,
  tell,
} from "../../src/session/index.ts";
import { linesOf } from "../../src/turn/index.ts";
import { at } from "../session/drive.ts";
import { texts, walkTo } from "./followed.ts";

const session = walkTo("ice-bin.look");
const rows = (journal: Journal, of: Session = session) => journalRowsOf(journal, of, texts);

let ids = 0;
const newId = () => `new-${ids++}`;

describe("a journal on the desk", () => {
  const journal = journalOf(session.log);

  test("has every answer in the words of the thread, with the householder's own time", () => {
    const lines = linesOf(session, texts);
    const inWords = (some: { title: string; answer: string }[]) =>
      some.map(({ title, answer }) => `${title} ${answer}`);
    // The thread has what greets first; a journal is in the order it was written.
    expect(inWords(rows(journal)).sort()).toEqual(inWords(lines).sort());
    expect(rows(journal)[0]?.title).toBe("Danger");
    expect(rows(journal)[0]?.at).toBe(session.log.events[0]?.at);
    expect(rows(journal).some(({ isBack, isVoice }) => isBack || isVoice)).toBe(false);
  });

  test("keeps what was taken back, and marks it", () => {
    const index = session.log.events.length - 1;
    const { session: changed, held } = changeAnswer(session, index, at(50));
    const standing = advance(standingOf(journal), changed.log, at(50), newId, held);
    const last = rows(standing.journal, changed).filter(({ isBack }) => isBack);
    expect(last.map(({ title }) => title)).toEqual([rows(journal).at(-1)?.title]);
  });

  test("has what was said unasked in its own words, and marks what was said by voice", () => {
    const told = { words: "the bin is fine", facts: [{ turn: "ice-bin.look", answer: "fine" }] };
    const say = (heard: { heard?: true }) =>
      tell(standingOf(journal), { ...told, ...heard }, at(51), "t1").journal;
    const row = rows(say({ heard: true })).at(-1);
    expect(row).toMatchObject({
      title: "Said unasked",
      answer: "Ice bin: It sits right and has room",
      words: "the bin is fine",
      isVoice: true,
    });
    expect(rows(say({})).at(-1)?.isVoice).toBe(false);
  });

  test("has a danger as what it is", () => {
    const stopped = stopBy(session, "burning", at(52));
    const { journal: more } = advance(standingOf(journal), stopped.log, at(52), newId);
    expect(rows(more, stopped).at(-1)).toMatchObject({ title: "Reported a danger", isBack: false });
    expect(rows(more, stopped).at(-1)?.answer).not.toBe("");
  });
});
