import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  advance,
  append,
  compact,
  createFeed,
  createJournal,
  type Journal,
  type LogEvent,
  memoryOf,
  metaOf,
  parseJournal,
  replay,
  resume,
  standingOf,
  startSession,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { counts } from "../soak/counts.ts";
import { at, follow, healthy, inTradeOrder } from "./drive.ts";
import { copyOf, standOf } from "./walker.ts";

const guide = inTradeOrder(ownFlow);
type Said = Journal["entries"][number]["event"];

/** A journal in which this was said, a minute after each other; the ids are a, b, c … */
const journalOf = (...said: Said[]): Journal =>
  said.reduce(
    (journal, event, place) => append(journal, { id: String.fromCharCode(97 + place), at: at(place), event }),
    createJournal(at(0)),
  );
const answered = (turn: string, answer: string): Said => ({ type: "answered", turn, answer });
const none = answered("opening.danger", "none");
const noIce = answered("opening.symptom", "no-ice");
const tookBack = (entries: string[], held: string[] = []): Said => ({ type: "took-back", entries, held });
const counter = () => {
  let count = 0;
  return () => `n${count++}`;
};

describe("what of a journal is in force", () => {
  test("is all but what was taken back", () => {
    const journal = journalOf(none, noIce, tookBack(["b"]), answered("opening.symptom", "leaking"));
    expect(standingOf(journal)).toMatchObject({
      log: { events: [{ answer: "none" }, { answer: "leaking" }] },
      ids: ["a", "d"],
    });
  });

  test("is nothing from before the latest new start, which is when it began", () => {
    const journal = journalOf(none, noIce, { type: "started-again" }, none);
    expect(standingOf(journal)).toMatchObject({ log: { started: at(2) }, ids: ["d"], held: [] });
  });

  test("holds an answer that a change took back until its turn is answered again", () => {
    const changed = journalOf(
      none,
      noIce,
      answered("opening.supply", "plumbed"),
      tookBack(["b", "c"], ["c"]),
    );
    expect(standingOf(changed).held).toMatchObject([{ id: "c", event: { answer: "plumbed" } }]);
    const again = append(changed, { id: "x", at: at(9), event: answered("opening.supply", "tank") });
    expect(standingOf(again).held).toEqual([]);
  });

  test("is no end of a wait that another device's clock has seen, whatever it says", () => {
    const journal = append(journalOf(none), {
      id: "x",
      at: at(9),
      written: "2099-01-01T00:00:00Z",
      event: { type: "wait-ended" },
    });
    expect(standingOf(journal).ids).toEqual(["a"]);
    const own = append(journalOf(none), { id: "x", at: at(9), event: { type: "wait-ended" } });
    expect(standingOf(own).ids).toEqual(["a", "x"]);
  });

  test("counts a wait begun elsewhere from when this device heard of it", () => {
    const answers = {
      ...healthy,
      "ice-maker-switch.look": "off",
      "ice-maker-switch.switch-on": "switched-on",
    };
    const waiting = follow(startSession(guide, at(0)), answers, "wait-for-ice.wait");
    const before = advance(standingOf(createJournal(at(0))), waiting.log, at(100), counter());
    const [first, last] = [before.journal.entries.slice(0, -1), before.journal.entries.at(-1)];
    const elsewhere = {
      ...(last as Journal["entries"][number]),
      at: at(100),
      written: "2020-01-01T00:00:00Z",
    };
    const { log } = standingOf({ ...before.journal, entries: [...first, elsewhere] });
    expect(metaOf(resume(guide, log, at(101)).session).turn).toBe("wait-for-ice.wait");
    expect(memoryOf(resume(guide, log, at(101)).session).waits["wait-for-ice.wait"]).toBe(at(100));
  });
});

const turns = ["opening.danger", "opening.symptom", "opening.supply", "opening.changed", "control-lock.look"];
const anyEvent = fc.oneof(
  fc.record({
    type: fc.constant("answered"),
    turn: fc.constantFrom(...turns),
    answer: fc.constantFrom("none", "no-ice", "plumbed", "nothing"),
  }),
  fc.constantFrom(
    { type: "session-resumed" },
    { type: "help-asked" },
    { type: "water-left", water: "closed-by-us" },
  ),
) as fc.Arbitrary<Said>;
const anyEntry = fc.oneof(
  { weight: 8, arbitrary: anyEvent },
  {
    weight: 2,
    arbitrary: fc
      .array(fc.nat(30), { maxLength: 3 })
      .map((ids) => tookBack(ids.map(String), ids.map(String))),
  },
  { weight: 1, arbitrary: fc.constant<Said>({ type: "started-again" }) },
);
const anyJournal = fc
  .array(anyEntry, { maxLength: 30 })
  .map((said) =>
    said.reduce(
      (journal, event, place) => append(journal, { id: `${place}`, at: at(place), event }),
      createJournal(at(0)),
    ),
  );

/** What is in force, said in another way: from the end, up to the latest new start. */
function eventsInForce({ entries }: Journal): object[] {
  const gone = new Set<string>();
  const events: object[] = [];
  for (const { id, at, event } of [...entries].reverse()) {
    if (event.type === "started-again") break;
    if (event.type === "took-back") for (const one of event.entries) gone.add(one);
    else if (event.type !== "times-corrected" && !gone.has(id)) events.unshift({ ...event, at });
  }
  return events;
}

test("any journal leads where its effective events alone lead, also once it is compacted", () => {
  fc.assert(
    fc.property(anyJournal, (journal) => {
      const standing = standingOf(journal);
      expect(standing.log.events).toEqual(eventsInForce(journal));
      const alone = { ...standing.log, events: eventsInForce(journal) as LogEvent[] };
      const compacted = parseJournal(copyOf(compact(standing).journal));
      if (!compacted) throw new Error("a compacted journal is none");
      expect(compacted.entries).toHaveLength(standing.log.events.length);
      const stands = [standing.log, alone, standingOf(compacted).log].map((log) =>
        standOf(replay(guide, log).session),
      );
      expect(new Set(stands).size).toBe(1);
    }),
    { seed: 41, numRuns: counts.journals },
  );
}, 600_000);

test("a journal that goes on as a log does has that log in force, whatever became of the log", () => {
  const anyLog = fc.array(anyEvent, { maxLength: 8 });
  fc.assert(
    fc.property(fc.array(anyLog, { maxLength: 6 }), fc.boolean(), (logs, isLate) => {
      const newId = counter();
      let standing = standingOf(createJournal(at(0)));
      for (const [round, said] of logs.entries()) {
        const events = said.map((event, place) => ({
          ...event,
          at: at(isLate ? round + place : place),
        })) as LogEvent[];
        const log = { model: null, started: at(0), events };
        const before = standing.journal.entries;
        standing = advance(standing, log, at(100 + round), newId);
        expect(standingOf(parseJournal(copyOf(standing.journal)) as Journal).log).toEqual(log);
        expect(standing.journal.entries.slice(0, before.length)).toEqual(before);
      }
    }),
    { seed: 42, numRuns: counts.journals * 4 },
  );
}, 600_000);

describe("a journal near its bound", () => {
  test("is made anew from what is in force, and loses nothing of it", () => {
    const newId = counter();
    let standing = standingOf(journalOf(none));
    const log = { ...standing.log, events: [...standing.log.events, { ...noIce, at: at(1) } as LogEvent] };
    for (let change = 0; change < 500; change++) {
      standing = advance(standing, log, at(2), newId);
      standing = advance(standing, { ...log, events: log.events.slice(0, 1) }, at(3), newId);
    }
    expect(standing.journal.entries.length).toBeLessThan(801);
    const after = parseJournal(copyOf(standing.journal)) as Journal;
    expect(standingOf(after).log.events).toEqual(log.events.slice(0, 1));
    expect(standingOf(after).ids).toEqual(["a"]);
  });
});

describe("a hostile journal", () => {
  const entry = { id: "a", seq: 1, by: "householder", at: at(1), event: { type: "help-asked" } };
  const withEntries = (...entries: object[]) => ({ ...createJournal(at(0)), entries });

  test.each([
    ["two entries of one id", [entry, { ...entry, seq: 2 }]],
    ["a seq that does not rise", [entry, { ...entry, id: "b" }]],
    ["a seq that is none", [{ ...entry, seq: 0.5 }]],
    ["an entry without an id", [{ ...entry, id: "" }]],
    ["an id without bounds", [{ ...entry, id: "x".repeat(1000) }]],
    ["ids without bounds", [{ ...entry, event: tookBack(["x".repeat(1000)]) }]],
    ["a list without bounds", [{ ...entry, event: tookBack(Array(2000).fill("x")) }]],
    ["a tap that it says is open", [{ ...entry, event: { type: "water-left", water: "open" } }]],
    ["a time that is none", [{ ...entry, event: { type: "times-corrected", times: ["tomorrow"] } }]],
  ])("is none with %s", (_, entries) => {
    expect(parseJournal(withEntries(...entries))).toBeNull();
    expect(parseJournal(withEntries(entry))).not.toBeNull();
  });

  test("that takes back what it does not have takes back nothing", () => {
    expect(standingOf(journalOf(none, tookBack(["x", "b", "__proto__"]))).ids).toEqual(["a"]);
  });
});

describe("a log as earlier versions kept it", () => {
  /** Written by hand: what an earlier version kept after the tap was closed, another answer given, and a reload. */
  const kept = {
    format: 1,
    flow: "0f3a",
    model: "TR-01",
    started: "2026-03-02T09:00:00+01:00",
    water: "closed-by-us",
    events: [
      { type: "answered", turn: "opening.danger", answer: "none", at: "2026-03-02T09:01:00+01:00" },
      { type: "answered", turn: "opening.symptom", answer: "no-ice", at: "2026-03-02T09:02:00+01:00" },
      { type: "session-resumed", at: "2026-03-02T09:03:00+01:00" },
      { type: "model-given", turn: "part.model", code: null, typed: "tr1", at: "2026-03-02T09:04:00+01:00" },
      {
        type: "answered",
        turn: "fill-tube.gate-plug-out",
        answer: "ready",
        items: ["unplugged"],
        at: "2026-03-02T09:05:00+01:00",
      },
      {
        type: "measured",
        turn: "freezer-temperature.read",
        reading: { kind: "temperature", value: -18, unit: "C", with: "display" },
        at: "2026-03-02T09:06:00+01:00",
      },
      { type: "danger-reported", danger: "gas", at: "2026-03-02T09:07:00+01:00" },
    ],
  };

  test("is carried over with all that it says", () => {
    const journal = parseJournal(copyOf(kept));
    const { log } = standingOf(journal as Journal);
    const left = { type: "water-left", water: "closed-by-us", at: kept.started };
    expect(log).toEqual({ model: kept.model, started: kept.started, events: [left, ...kept.events] });
    expect(parseJournal(copyOf(journal))).toEqual(journal);
  });

  test("gives the same entries in every tab that reads it", () => {
    expect(parseJournal(copyOf(kept))).toEqual(parseJournal(copyOf(kept)));
  });

  test("is none beyond its own bounds, or with one event that is none", () => {
    const [event] = kept.events;
    expect(parseJournal({ ...kept, events: Array(600).fill(event) })).toBeNull();
    expect(parseJournal({ ...kept, events: [{ ...event, at: "yesterday" }] })).toBeNull();
    expect(parseJournal({ ...kept, water: "open" })).toBeNull();
    expect(parseJournal({ ...kept, started: "" })).toBeNull();
  });
});

test("whoever follows a journal hears of each entry once, and of none that another tab has stored", () => {
  const first = journalOf(none);
  const feed = createFeed(first);
  const heard: string[][] = [];
  const stop = feed.subscribe((_, added) => heard.push(added.map(({ id }) => id)));
  const second = append(first, { id: "x", at: at(1), event: noIce });
  feed.put(second);
  const third = append(second, { id: "y", at: at(2), event: { type: "help-asked" } });
  feed.take(third);
  feed.put(append(third, { id: "z", at: at(3), event: { type: "started-again" } }));
  stop();
  feed.put(first);
  expect(heard).toEqual([["x"], ["z"]]);
});
