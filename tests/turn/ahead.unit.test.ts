import { describe, expect, test } from "vitest";
import { type Answered, memoryOf, metaOf, record, type Session, sameLater } from "../../src/session/index.ts";
import { createTexts, handOn, makeReady, turnOf, viewOf } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { at } from "../session/drive.ts";
import { takeWalks } from "../session/walking.ts";
import { counts } from "../soak/counts.ts";
import { readerOf } from "./reader.ts";

const texts = createTexts(ownTexts, "en-GB", readerOf(ownFlow));

/** Every answer that was given on a walk, with the session it was given to. */
function* given(
  count: number,
  seed: number,
): Generator<{ before: Session; event: Answered; after: Session }> {
  for (const { start, steps } of takeWalks(count, seed, false, 60)) {
    let before = start;
    for (const { session } of steps) {
      const event = session.log.events.at(-1);
      if (session.log.events.length === before.log.events.length + 1 && event?.type === "answered")
        yield { before, event, after: session };
      before = session;
    }
  }
}

const earlier = (event: Answered, milliseconds: number): Answered => ({
  ...event,
  at: new Date(Date.parse(event.at) - milliseconds).toISOString(),
});

const plain = (session: Session) => JSON.parse(JSON.stringify(session.snapshot));

describe("an answer that was worked out before it is given", () => {
  test("leads where it leads when it is given, however much later that is, and shows the same", () => {
    const kinds = new Set<string>();
    let ahead = 0;
    let answers = 0;
    for (const { before, event, after } of given(counts.ahead, 5)) {
      answers++;
      const guess = earlier(event, (answers % 7) * 9000);
      const led = sameLater(before, guess, record(before, guess).session, event);
      if (!led) continue;
      ahead++;
      kinds.add(metaOf(led).kind);
      expect(plain(led)).toEqual(plain(after));
      expect(led.log).toEqual(after.log);
      expect(led.adviser === null).toBe(after.adviser === null);
    }
    expect(ahead).toBeGreaterThan(answers / 2);
    expect([...kinds]).toEqual(expect.arrayContaining(["choice", "gate", "reading", "ending", "wait"]));
  });

  test("is drawn as it is when it is given, a wait with its own end", () => {
    const kinds = new Set<string>();
    for (const { before, event, after } of given(counts.ahead, 6)) {
      const guess = earlier(event, 1000);
      const foreseen = record(before, guess).session;
      makeReady(foreseen, texts, guess.at);
      const led = sameLater(before, guess, foreseen, event);
      if (!led) continue;
      handOn(foreseen, led);
      const live = viewOf(after, texts, event.at, []);
      kinds.add(live.turn?.kind ?? "");
      expect(viewOf(led, texts, event.at, [])).toEqual(live);
    }
    expect([...kinds]).toEqual(expect.arrayContaining(["choice", "gate", "reading", "ending", "wait"]));
  });

  test("goes on from there as it would have gone on", () => {
    for (const { before, event, after } of given(counts.ahead / 4, 7)) {
      const guess = earlier(event, 1000);
      const led = sameLater(before, guess, record(before, guess).session, event);
      if (!led) continue;
      for (const { id } of turnOf(after, texts, event.at).answers) {
        const { turn } = metaOf(after);
        const next = { type: "answered" as const, turn, answer: id, at: at(1_000_000) };
        expect(plain(record(led, next).session)).toEqual(plain(record(after, next).session));
      }
    }
  });
});

describe("what was worked out is not used", () => {
  const one = [...given(1, 8)].find(({ before }) => Object.keys(memoryOf(before).findings).length > 1);
  if (!one) throw new Error("The walk gave too few answers");
  const { before, event } = one;
  const guess = earlier(event, 1000);
  const foreseen = record(before, guess).session;
  const usedFor = (other: Partial<Answered>) =>
    sameLater(before, guess, foreseen, { ...event, ...other }) !== null;

  test("for another answer, another turn, or one of the same instant as an earlier one", () => {
    const [first] = Object.values(memoryOf(before).findings);
    expect(usedFor({})).toBe(true);
    expect(usedFor({ answer: "another" })).toBe(false);
    expect(usedFor({ turn: "another.turn" })).toBe(false);
    expect(usedFor({ at: before.log.events.at(-1)?.at ?? "" })).toBe(false);
    expect(usedFor({ at: first?.at ?? "" })).toBe(false);
    expect(usedFor({ at: "no instant" })).toBe(false);
  });

  test("where less is confirmed at a gate than has to be", () => {
    const whole = { ...guess, items: ["a", "b"] };
    const used = (items?: string[]) =>
      sameLater(before, whole, foreseen, { ...event, ...(items && { items }) }) !== null;
    expect([used(["b", "a"]), used(["a"]), used([]), used()]).toEqual([true, false, false, false]);
  });
});
