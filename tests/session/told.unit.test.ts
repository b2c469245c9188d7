import { describe, expect, test } from "vitest";
import {
  advance,
  bounds,
  createJournal,
  metaOf,
  parseJournal,
  putBack,
  type Session,
  standingOf,
  startAgain,
  startSession,
  tell,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, follow, healthy, inTradeOrder, take } from "./drive.ts";
import { copyOf } from "./walker.ts";

const guide = inTradeOrder(ownFlow);
const start = startSession(guide, at(0));
const atBin = follow(start, healthy, "ice-bin.look");

/** The journal of a session with one thing told besides, read anew as from storage. */
function told(session: Session, turn: string, answer: string) {
  let ids = 0;
  const before = advance(standingOf(createJournal(at(0))), session.log, at(500), () => `entry-${ids++}`);
  const standing = tell(before, { words: "it is what I say", facts: [{ turn, answer }] }, at(501), "told");
  return { before, standing: standingOf(copyOf(standing.journal)) };
}

describe("What is said unasked", () => {
  test("answers the question that is on screen", () => {
    const { standing } = told(atBin, "ice-bin.look", "fine");
    const next = putBack(atBin, standing.held, at(502));
    expect(next.log.events.at(-1)).toMatchObject({ turn: "ice-bin.look", answer: "fine", kept: "told" });
  });

  test("is not in force before its question comes up, and is not asked then", () => {
    const { standing } = told(atBin, "too-full.look", "room");
    expect(standing.log).toEqual(atBin.log);
    const asked: string[] = [];
    let session = atBin;
    for (let turns = 0; turns < 12; turns++) {
      const { turn, gate } = metaOf(session);
      asked.push(turn);
      const known = healthy[turn] ?? "not-sure";
      session = putBack(take(session, gate ? "cannot" : known), standing.held, at(510 + turns));
    }
    expect(asked).not.toContain("too-full.look");
    expect(session.log.events).toContainEqual(
      expect.objectContaining({ turn: "too-full.look", answer: "room", kept: "told" }),
    );
  });

  test("passes no gate, and reports no danger", () => {
    const gate = follow(start, healthy, "fill-tube.gate-plug-out");
    const { standing } = told(gate, "fill-tube.gate-plug-out", "ready");
    expect(putBack(gate, standing.held, at(502))).toBe(gate);
    const atDanger = follow(start, healthy, "opening.danger");
    const [danger = ""] = atDanger.flow.dangers;
    const sparks = told(atDanger, "opening.danger", danger).standing;
    expect(metaOf(putBack(atDanger, sparks.held, at(502))).outcome).not.toBe("stopped");
  });

  test("gives way to what is said later, and goes with a new start", () => {
    const { standing } = told(atBin, "ice-bin.look", "full");
    const later = tell(
      standing,
      { words: "no, it is fine", facts: [{ turn: "ice-bin.look", answer: "fine" }] },
      at(503),
      "later",
    );
    expect(later.held.map(({ event }) => "answer" in event && event.answer)).toEqual(["fine"]);
    expect(startAgain(later, atBin, at(504), "again").standing.held).toEqual([]);
  });

  test("is kept in its own words even where nothing of it was understood", () => {
    const { before } = told(atBin, "ice-bin.look", "fine");
    const { journal, log } = tell(before, { words: "my cousin fitted it", facts: [] }, at(501), "told");
    expect(journal.entries.at(-1)?.event).toEqual({ type: "told", words: "my cousin fitted it", facts: [] });
    expect(log).toEqual(atBin.log);
  });

  test("is marked where an agent has heard it on the phone, and so is the answer that it becomes", () => {
    const { before } = told(atBin, "ice-bin.look", "fine");
    const facts = [{ turn: "ice-bin.look", answer: "fine" }];
    const { journal } = tell(before, { words: "loose ones", facts, heard: true }, at(501), "heard");
    const kept = parseJournal(copyOf(journal));
    expect(kept?.entries.at(-1)?.event).toMatchObject({ type: "told", heard: true });
    const next = putBack(atBin, standingOf(kept ?? journal).held, at(502));
    expect(next.log.events.at(-1)).toMatchObject({ answer: "fine", words: "loose ones", heard: true });
    const written = advance(standingOf(kept ?? journal), next.log, at(502), () => "answer");
    expect(parseJournal(copyOf(written.journal))?.entries.at(-1)?.event).toMatchObject({ heard: true });
  });

  test("has bounds, as written and as read", () => {
    const { before } = told(atBin, "ice-bin.look", "fine");
    const facts = Array.from({ length: 50 }, () => ({ turn: "ice-bin.look", answer: "fine" }));
    const { journal } = tell(before, { words: "x".repeat(100_000), facts }, at(501), "told");
    expect(parseJournal(copyOf(journal))).not.toBeNull();
    const { event } = journal.entries.at(-1) ?? {};
    expect(event).toMatchObject({ words: "x".repeat(bounds.ownWords) });
    const entries = journal.entries.map((entry) => ({ ...entry, event: { ...entry.event, facts } }));
    expect(parseJournal({ ...journal, entries })).toBeNull();
  });

  test("is no answer where its question does not know it", () => {
    const { standing } = told(atBin, "ice-bin.look", "purple");
    expect(putBack(atBin, standing.held, at(502))).toBe(atBin);
  });
});
