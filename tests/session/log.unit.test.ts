import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  createLog,
  journalOf,
  type Log,
  parseEvent,
  parseJournal,
  replay,
  standingOf,
  startSession,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { answerTo, at, celsius, fittedOn, flowOf, inTradeOrder, take } from "./drive.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);

describe("a journal from storage, a link or a file", () => {
  test("comes back from JSON as it went in", () => {
    const session = take(startSession(guide, at(0), "TR-01"), "none");
    const kept = parseJournal(JSON.parse(JSON.stringify(journalOf(session.log))));
    expect(kept && standingOf(kept).log).toEqual(session.log);
  });

  test("is null for whatever is no log, and never throws", () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true }), (value) => {
        expect(parseJournal(value)).toBeNull();
        expect(parseEvent(value)).toBeNull();
      }),
      { seed: 11, numRuns: 1000 },
    );
  }, 60_000);

  test("is null for a journal of another format, without a start, or with one entry that is none", () => {
    const journal = journalOf({ ...createLog(at(0)), events: [{ type: "help-asked", at: at(1) }] });
    const [entry] = journal.entries;
    expect(parseJournal(journal)).toEqual(journal);
    expect(parseJournal({ ...journal, format: 3 })).toBeNull();
    expect(parseJournal({ ...journal, started: "yesterday" })).toBeNull();
    expect(parseJournal({ ...journal, model: 7 })).toBeNull();
    expect(parseJournal({ ...journal, entries: [{ ...entry, event: { type: "gate-opened" } }] })).toBeNull();
    expect(parseJournal({ ...journal, entries: [{ ...entry, by: "somebody" }] })).toBeNull();
    expect(parseJournal({ ...journal, entries: "none" })).toBeNull();
  });

  test("keeps no property that it does not know, such as a script somebody smuggled in", () => {
    const event = { type: "help-asked", at: at(0), onclick: "alert(1)" };
    expect(parseEvent(event)).toEqual({ type: "help-asked", at: at(0) });
    const journal = journalOf({ ...createLog(at(0)), events: [{ type: "help-asked", at: at(0) }] });
    const [entry] = journal.entries;
    expect(parseJournal({ ...journal, html: "<b>", entries: [{ ...entry, html: "<b>" }] })).toEqual(journal);
  });

  test("cannot reach into the prototype of anything", () => {
    const hostile = JSON.parse(
      '{"type":"help-asked","at":"2026-03-02T08:00:00Z","__proto__":{"polluted":true}}',
    );
    expect(Object.keys(parseEvent(hostile) ?? {})).toEqual(["type", "at"]);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

describe("the time of an event", () => {
  // RFC 3339 section 5.6 and its examples in section 5.8.
  test.each([
    "1985-04-12T23:20:50.52Z",
    "1996-12-19T16:39:57-08:00",
    "1937-01-01T12:00:27.87+00:20",
    "2026-03-02T08:00:00+13:45",
  ])("may be %s", (time) => {
    expect(parseEvent({ type: "help-asked", at: time })).toEqual({ type: "help-asked", at: time });
  });

  test.each([
    "2026-03-02",
    "2026-03-02 08:00:00Z",
    "2026-03-02T08:00:00",
    "2026-03-02T08:00Z",
    "2026-13-02T08:00:00Z",
    "2026-03-02T99:00:00Z",
    "2026-03-02T08:00:00+99:99",
    "Mon, 2 Mar 2026 08:00:00 GMT",
    "1772438400000",
    "",
  ])("may not be %j: no wait could be counted from it", (time) => {
    expect(parseEvent({ type: "help-asked", at: time })).toBeNull();
    expect(parseJournal(journalOf(createLog(time)))).toBeNull();
  });
});

describe("a reading in a log", () => {
  const session = startSession(guide, at(0));

  test.each([
    ["a flow", flowOf(20)],
    ["a temperature", celsius(-18)],
    ["a filter's age", fittedOn("2026-01-01")],
  ])("is kept as measured: %s", (_, reading) => {
    const event = answerTo(session, reading, at(1));
    expect(parseEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
  });

  test.each([
    ["no number", { ...celsius(0), value: "-18" }],
    ["no finite number", { ...celsius(0), value: Number.POSITIVE_INFINITY }],
    ["not a number", { ...celsius(0), value: Number.NaN }],
    ["another unit", { ...celsius(0), unit: "K" }],
    ["another instrument", { kind: "weight", value: 3 }],
    ["runs that are none", { kind: "flow", runs: [{ volume: 1 }] }],
  ])("is refused with %s", (_, reading) => {
    expect(parseEvent({ type: "measured", turn: "x.y", reading, at: at(1) })).toBeNull();
  });
});

test("a hostile log of well-formed events is replayed as far as it fits, and nothing is thrown", () => {
  const anyEvent = fc.oneof(
    fc.record({
      type: fc.constant("answered"),
      turn: fc.constantFrom(
        "opening.danger",
        "opening.symptom",
        "__proto__",
        "constructor.name",
        "part.card",
      ),
      answer: fc.oneof(fc.constantFrom("none", "no-ice", "*", "", "toString"), fc.string()),
      at: fc.constant(at(1)),
    }),
    fc.record({
      type: fc.constant("danger-reported"),
      danger: fc.oneof(fc.constantFrom("burning", "*", "toString"), fc.string()),
      at: fc.constant(at(1)),
    }),
    fc.record({
      type: fc.constantFrom("help-asked", "ice-returned", "session-resumed", "wait-ended"),
      at: fc.constant(at(1)),
    }),
    fc.record({
      type: fc.constant("measured"),
      turn: fc.constant("opening.danger"),
      reading: fc.record({ kind: fc.constant("flow"), runs: fc.constant([]) }),
      at: fc.constant(at(1)),
    }),
  );
  fc.assert(
    fc.property(fc.array(anyEvent, { maxLength: 8 }), (events) => {
      const journal = parseJournal(journalOf({ ...createLog(at(0)), events: events as Log["events"] }));
      if (!journal) throw new Error("well formed, and yet no journal");
      const { session, dropped } = replay(guide, standingOf(journal).log);
      expect(session.log.events.length + dropped).toBe(events.length);
      expect(session.log.events).toEqual(events.slice(0, events.length - dropped));
    }),
    { seed: 12, numRuns: 100 },
  );
}, 60_000);

describe("a journal without bounds", () => {
  const journalWith = (events: object[]) =>
    journalOf({ ...createLog(at(0)), events: events as Log["events"] });

  const measured = (runs: number) => ({
    type: "measured",
    turn: "flow-test.run",
    reading: {
      kind: "flow",
      runs: Array.from({ length: runs }, () => ({ volume: 150, unit: "ml", seconds: 10 })),
    },
    at: at(1),
  });

  test("is none with two thousand runs in a reading; as many as a person might make are taken", () => {
    expect(parseEvent(measured(12))).not.toBeNull();
    expect(parseEvent(measured(2000))).toBeNull();
    expect(parseJournal(journalWith([measured(2000)]))).toBeNull();
  });

  test("is none with more entries than a session can have", () => {
    const event = { type: "help-asked", at: at(0) };
    expect(parseJournal(journalWith(Array(900).fill(event)))).not.toBeNull();
    expect(parseJournal(journalWith(Array(1100).fill(event)))).toBeNull();
  });

  test.each<[what: string, event: object]>([
    ["a turn", { type: "answered", turn: "x".repeat(1000), answer: "none" }],
    ["an answer", { type: "answered", turn: "x.y", answer: "x".repeat(1000) }],
    ["items", { type: "answered", turn: "x.y", answer: "ready", items: Array(1000).fill("x") }],
    [
      "a typed code",
      { type: "model-given", turn: "part.model", code: null, typed: "\u0301".repeat(100_000) },
    ],
    ["a code", { type: "model-given", turn: "part.model", code: "\u0301".repeat(100_000), typed: "" }],
    ["a danger", { type: "danger-reported", danger: "x".repeat(1000) }],
    ["a number", { type: "measured", turn: "x.y", reading: { ...celsius(0), value: 1e300 } }],
    ["a fraction of a second", { type: "help-asked", at: `2026-03-02T08:00:00.${"1".repeat(100_000)}Z` }],
  ])("is none where %s is out of all bounds", (_, event) => {
    expect(parseEvent({ at: at(1), ...event })).toBeNull();
  });

  test("does not begin with a model code that is none", () => {
    expect(createLog(at(0), "W".repeat(1000)).model).toBeNull();
  });
});
