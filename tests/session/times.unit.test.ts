import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  holdTimes,
  journalOf,
  type Log,
  memoryOf,
  metaOf,
  parseJournal,
  record,
  resume,
  settle,
  startSession,
  straightenTimes,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, follow, healthy, inTradeOrder, runsOut, take } from "./drive.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);
const start = startSession(guide, at(0));
const switchedOff = {
  ...healthy,
  "ice-maker-switch.look": "off",
  "ice-maker-switch.switch-on": "switched-on",
};
const waiting = follow(start, switchedOff, "wait-for-ice.wait");
const waited = take(take(waiting, runsOut), "no-ice");
const wait = "wait-for-ice.wait";
const dayMs = 24 * 3_600_000;
const now = "2026-06-01T12:00:00Z";
const hours = (count: number) => new Date(Date.parse(now) + count * 3_600_000).toISOString();
const resumed = (log: Log, when = now) => resume(guide, log, when);
const withTimes = (log: Log, times: string[]): Log => ({
  ...log,
  started: times[0] ?? log.started,
  events: log.events.map((event, place) => ({ ...event, at: times[place + 1] ?? event.at })),
});

/** Any instant between 1970 and 2099, most of them around now. */
const instant = fc
  .oneof(
    fc.integer({ min: Date.parse(now) - 3 * dayMs, max: Date.parse(now) + 3 * dayMs }),
    fc.integer({ min: 0, max: Date.parse("2099-12-31T00:00:00Z") }),
  )
  .map((time) => new Date(time).toISOString());
const timesFor = (log: Log) =>
  fc.array(instant, { minLength: log.events.length + 1, maxLength: log.events.length + 1 });

describe("the times of a log that something else has written", () => {
  test("are in order, none later than now, and no event is dropped, whatever was written", () => {
    fc.assert(
      fc.property(timesFor(waited.log), instant, fc.nat({ max: 30 }), (times, when, slip) => {
        const log = straightenTimes(withTimes(waited.log, times), when, slip);
        const instants = [log.started, ...log.events.map((event) => event.at)].map((text) =>
          Date.parse(text),
        );
        expect(instants).toEqual([...instants].sort((a, b) => a - b));
        expect(instants.at(-1)).toBeLessThanOrEqual(Date.parse(when));
        expect(log.events.map(({ at: _, ...what }) => what)).toEqual(
          waited.log.events.map(({ at: _, ...what }) => what),
        );
        expect(parseJournal(journalOf(log))).not.toBeNull();
        expect(straightenTimes(log, when, slip)).toBe(log);
      }),
      { seed: 31, numRuns: 2000 },
    );
  });

  test("stay as they are where they can be true, with the person's own offset", () => {
    const log = withTimes(waiting.log, [at(0, "+05:30")]);
    expect(straightenTimes(log, now)).toBe(log);
    const ahead = straightenTimes(withTimes(start.log, ["2027-01-01T00:00:00+05:30"]), now);
    expect(ahead.started).toBe("2026-06-01T17:30:00.000+05:30");
  });

  test("of a clock that ran a year ahead keep what lay between them", () => {
    const ahead = waited.log.events.map((_, place) => hours(365 * 24 + place));
    const log = straightenTimes(withTimes(waited.log, [hours(365 * 24), ...ahead]), now);
    const gaps = log.events.slice(1).map((event, place) => {
      return Date.parse(event.at) - Date.parse(log.events[place]?.at ?? "");
    });
    expect(new Set(gaps)).toEqual(new Set([3_600_000]));
    expect(log.events.at(-1)?.at).toBe("2026-06-01T12:00:00.000Z");
  });
});

describe("a wait in a log", () => {
  test("never lasts longer from now than it is long, and never ends before that has passed since it began", () => {
    const forged: Log = {
      ...waiting.log,
      events: [...waiting.log.events, { type: "wait-ended", at: now }],
    };
    fc.assert(
      fc.property(
        fc
          .constantFrom(waiting.log, waited.log, forged)
          .chain((log) => fc.tuple(fc.constant(log), timesFor(log))),
        instant,
        ([log, times], when) => {
          const { session } = resumed(withTimes(log, times), when);
          const began = Date.parse(memoryOf(session).waits[wait] ?? "");
          if (metaOf(session).turn === wait)
            expect(began + dayMs).toBeLessThanOrEqual(Date.parse(when) + dayMs);
          for (const event of session.log.events)
            if (event.type === "wait-ended")
              expect(Date.parse(event.at) - began).toBeGreaterThanOrEqual(dayMs);
        },
      ),
      { seed: 32, numRuns: 300 },
    );
  });

  test("is not ended by a word from 2099", () => {
    const times = waiting.log.events.map(() => hours(-10));
    const left = withTimes(waiting.log, [hours(-11), ...times]);
    const { session, dropped } = resumed({
      ...left,
      events: [...left.events, { type: "wait-ended", at: "2099-01-01T00:00:00Z" }],
    });
    expect([metaOf(session).turn, dropped]).toEqual([wait, 1]);
    expect(memoryOf(session).waits[wait]).toBe(hours(-10));
  });

  test("begun by a clock that was a year ahead lasts a day from now, after a reload and without one", () => {
    const log = withTimes(waiting.log, [hours(0), ...waiting.log.events.map(() => hours(365 * 24))]);
    for (const session of [resumed(log).session, holdTimes({ ...waiting, log }, now)]) {
      expect(metaOf(settle(session, hours(23.9))).turn).toBe(wait);
      expect(metaOf(settle(session, hours(24))).turn).toBe("wait-for-ice.came");
    }
  });

  test("that was over stays over when the clock is set right by a minute", () => {
    const last = waited.log.events.at(-1)?.at ?? "";
    const aMinuteBack = new Date(Date.parse(last) - 60_000).toISOString();
    const { session, dropped } = resumed(waited.log, aMinuteBack);
    expect([metaOf(session).turn, dropped]).toEqual([metaOf(waited).turn, 0]);
  });
});

describe("a danger in a log", () => {
  const danger = { type: "danger-reported", danger: "gas", at: at(60) } as const;

  test("stops although what was answered before it no longer fits", () => {
    const camel = { type: "answered", turn: "opening.symptom", answer: "by-camel", at: at(2) } as const;
    const log = { ...start.log, events: [...take(start, "none").log.events, camel, danger] };
    const { session } = resumed(log);
    expect([metaOf(session).outcome, memoryOf(session).danger]).toEqual(["stopped", "gas"]);
  });

  test("that this flow has no name for stops as one that nobody is sure of", () => {
    const camel = { type: "answered", turn: "opening.symptom", answer: "by-camel", at: at(2) } as const;
    const log = { ...start.log, events: [camel, { ...danger, danger: "ghosts" }] };
    expect(memoryOf(resumed(log).session).danger).toBe("not-sure");
  });

  test("stops from an ending too", () => {
    const helped = record(take(start, "none"), { type: "help-asked", at: at(2) }).session;
    expect(metaOf(record(helped, danger).session).outcome).toBe("stopped");
  });
});
