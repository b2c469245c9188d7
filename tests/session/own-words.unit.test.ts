import { describe, expect, test } from "vitest";
import {
  advance,
  bounds,
  changeAnswer,
  createJournal,
  inWords,
  type LogEvent,
  memoryOf,
  metaOf,
  parseEvent,
  parseJournal,
  putBack,
  record,
  replay,
  type Session,
  standingOf,
  startSession,
  tell,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, flowOf, follow, healthy, inTradeOrder, take } from "./drive.ts";
import { copyOf } from "./walker.ts";

const guide = inTradeOrder(ownFlow);
const atBin = follow(startSession(guide, at(0)), healthy, "ice-bin.look");
const dribbles = "it dribbles a bit";

function say(session: Session, answer: string, words: string): Session {
  const { turn } = metaOf(session);
  const { session: next, refusal } = record(session, {
    type: "answered",
    turn,
    answer,
    ...inWords(words),
    at: at(400),
  });
  expect(refusal).toBeNull();
  return next;
}

const counter = () => {
  let ids = 0;
  return () => `${ids++}`;
};
const journalOf = (session: Session, newId = counter()) =>
  advance(standingOf(createJournal(at(0))), session.log, at(500), newId);
const wordsOf = ({ log }: Session) =>
  log.events.flatMap((event) => ("turn" in event && "words" in event ? [[event.turn, event.words]] : []));

describe("the own words of an answer", () => {
  const said = say(atBin, "fine", dribbles);

  test("are kept with it and change nothing else", () => {
    const journal = parseJournal(copyOf(journalOf(said).journal));
    const again = replay(guide, standingOf(journal as NonNullable<typeof journal>).log);
    expect(again.dropped).toBe(0);
    expect(wordsOf(again.session)).toEqual([["ice-bin.look", dribbles]]);
    expect(memoryOf(again.session)).toEqual(memoryOf(say(atBin, "fine", "")));
  });

  test("are kept with a reading, too", () => {
    const atFlow = follow(atBin, healthy, "flow-test.run");
    const { session } = record(atFlow, {
      type: "measured",
      turn: "flow-test.run",
      reading: flowOf(15),
      words: "I got 150 ml in 10 seconds",
      at: at(400),
    });
    expect(wordsOf(session)).toEqual([["flow-test.run", "I got 150 ml in 10 seconds"]]);
  });

  test("go with it when it is changed, and those of later answers stay", () => {
    const later = say(said, "not-sure", "dunno");
    const newId = counter();
    const before = journalOf(later, newId);
    const { session: back, held } = changeAnswer(later, said.log.events.length - 1, at(501));
    expect(wordsOf(back)).toEqual([]);
    const asked = advance(before, back.log, at(501), newId, held);
    const next = putBack(take(back, "not-sure"), asked.held, at(502));
    expect(wordsOf(next).map(([, words]) => words)).toEqual(["dunno"]);
  });

  test("that were told of another turn stand with its answer once that comes up", () => {
    const told = tell(
      journalOf(atBin),
      { words: dribbles, facts: [{ turn: "ice-bin.look", answer: "fine" }] },
      at(501),
      "told",
    );
    expect(wordsOf(putBack(atBin, told.held, at(502)))).toEqual([["ice-bin.look", dribbles]]);
  });

  test("have a bound, as written and as read", () => {
    const long = inWords("x".repeat(10_000));
    expect(long.words).toHaveLength(bounds.ownWords);
    const event: LogEvent = { type: "answered", turn: "a.b", answer: "c", ...long, at: at(1) };
    expect(parseEvent(event)).toEqual(event);
    expect(parseEvent({ ...event, words: `${long.words}x` })).toBeNull();
    expect(parseEvent({ ...event, words: 7 })).toBeNull();
  });
});
