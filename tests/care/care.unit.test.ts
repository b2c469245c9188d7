import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  answered,
  endedAt,
  filterOf,
  filterUntil,
  isFilterNear,
  keptBounds,
  noteEnding,
  nothingKept,
  parseKept,
  questionOf,
  recordOf,
  stepsOf,
} from "../../src/care/index.ts";
import { careOf } from "../../src/compile/index.ts";
import { careTimes } from "../../src/guide/index.ts";
import { metaOf, record, type Session, startSession } from "../../src/session/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { at, fittedOn, follow, healthy, inTradeOrder, runsOut, take } from "../session/drive.ts";
import { readerOf } from "../turn/reader.ts";

const flow = ownFlow;
const rules = careOf(flow);
const start = startSession(inTradeOrder(flow), at(0));
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));

/** An ice maker that was off, switched on, and ice after a wait. */
const fixed = follow(start, {
  ...healthy,
  "ice-maker-switch.look": "off",
  "ice-maker-switch.switch-on": "switched-on",
  "wait-for-ice.wait": runsOut,
  "wait-for-ice.came": "ice-came",
});
/** A part for a cause that a check proved. */
const inNeedOfPart = record(follow(start, { ...healthy, "reset.test": "nothing-moved" }, "part.model"), {
  type: "model-given",
  turn: "part.model",
  code: "TR-01",
  typed: "tr01",
  at: at(90),
}).session;
const hoursAfter = (session: Session, hours: number) =>
  new Date(Date.parse(endedAt(session)) + hours * 3_600_000).toISOString();
const asks = (session: Session, hours: number, kept = nothingKept) =>
  questionOf(kept, session, texts, hoursAfter(session, hours));

describe("a day after an ending", () => {
  test("it is asked whether it still works, and not an hour before", () => {
    expect(metaOf(fixed).outcome).toBe("fixed");
    // Up to 24 h before ice after a reset, a new filter or an installation: common practice, no source.
    expect(asks(fixed, 23.9)).toBeNull();
    expect(asks(fixed, 24)?.answers.map(({ id }) => id)).toEqual(["yes", "no"]);
    expect(asks(fixed, 24)?.ask).toMatch(/^It worked again on 3 March 2026\./);
  });

  test("whoever was named a part can say that nothing is mended yet, and is asked again a day later", () => {
    expect(asks(inNeedOfPart, 30)?.answers.map(({ id }) => id)).toEqual(["yes", "no", "not-yet"]);
    const put = answered(nothingKept, inNeedOfPart, "not-yet", hoursAfter(inNeedOfPart, 30));
    expect(asks(inNeedOfPart, 53, put)).toBeNull();
    expect(asks(inNeedOfPart, 54, put)).not.toBeNull();
  });

  test("what was answered is not asked again, unless the search has ended anew", () => {
    const said = answered(nothingKept, fixed, "yes", hoursAfter(fixed, 25));
    expect(asks(fixed, 100, said)).toBeNull();
    expect(asks(inNeedOfPart, 30, said)).not.toBeNull();
  });

  test("nothing is asked in the midst of a search", () => {
    expect(questionOf(nothingKept, start, texts, hoursAfter(start, 100))).toBeNull();
  });

  test("a clock that was set back asks nothing", () => {
    expect(asks(fixed, -50)).toBeNull();
  });
});

describe("what is kept of a machine", () => {
  test("how a search ended, its readings and its model number, once however often it is noted", () => {
    const once = noteEnding(nothingKept, inNeedOfPart, rules, texts, "S-7");
    expect(once).toMatchObject({ model: "TR-01", serial: "S-7" });
    expect(once.searches).toHaveLength(1);
    expect(once.searches[0]).toMatchObject({ outcome: "part", at: at(90) });
    expect(once.searches[0]?.said.at(-1)).toBe(texts("parts.ice-maker.name"));
    expect(once.searches[0]?.readings.join("\n")).toMatch(/−18.°C/);
    expect(noteEnding(once, inNeedOfPart, rules, texts, "S-7").searches).toHaveLength(1);
  });

  test("a new filter is good for six months from the day on which it was found to help", () => {
    expect(flow.causes["filter-clogged"]?.part).toBe("water-filter");
    const session = Object.assign(Object.create(Object.getPrototypeOf(fixed)), fixed, {
      snapshot: Object.assign(Object.create(Object.getPrototypeOf(fixed.snapshot)), fixed.snapshot, {
        context: { ...fixed.snapshot.context, fitted: ["filter-clogged"] },
      }),
    }) as Session;
    const { filterDue } = noteEnding(nothingKept, session, rules, texts, undefined);
    // Change the filter every 6 months: common practice, no source.
    expect(filterDue).toBe(filterUntil(endedAt(fixed), rules, fixed));
    expect(filterDue).toBe("2026-09-03");
  });

  test("a filter whose age was told is due six months after it was fitted", () => {
    const session = take(follow(start, healthy, "filter-age.fitted"), fittedOn("2026-02-10"));
    const ended = record(session, { type: "help-asked", at: at(80) }).session;
    expect(noteEnding(nothingKept, ended, rules, texts, undefined).filterDue).toBe("2026-08-10");
  });

  test("ten searches at most, the newest first", () => {
    const many = Array.from({ length: 14 }, (_, index) => ({
      at: at(-1000 * (index + 1)),
      outcome: "fixed",
      said: ["x"],
      readings: [],
    }));
    const { searches } = noteEnding({ ...nothingKept, searches: many }, fixed, rules, texts, undefined);
    expect(searches).toHaveLength(keptBounds.searches);
    expect(searches[0]?.at).toBe(endedAt(fixed));
  });

  test("on a page it has headings with lines, and none where nothing is kept", () => {
    expect(recordOf(nothingKept, texts, at(0)).parts).toEqual([]);
    const kept = {
      ...noteEnding(nothingKept, inNeedOfPart, rules, texts, undefined),
      filterDue: "2026-08-10",
    };
    const page = recordOf(kept, texts, at(0));
    expect(page.parts.map(({ heading }) => heading)).toEqual([
      "The machine",
      "Water filter",
      "What happened",
      "Last readings",
    ]);
    expect(page.parts[1]?.lines).toEqual(["The water filter is due on 10 August 2026."]);
  });

  test("what was kept comes back as it was, and anything else counts as nothing", () => {
    const kept = answered(noteEnding(nothingKept, fixed, rules, texts, "S"), fixed, "yes", at(5000));
    expect(parseKept(JSON.stringify(kept))).toEqual(kept);
    expect(parseKept(null)).toEqual(nothingKept);
    expect(parseKept(`${JSON.stringify(kept)}${" ".repeat(keptBounds.whole)}`)).toEqual(nothingKept);
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const read = parseKept(text);
        expect(recordOf(read, texts, at(0)).title).not.toBe("");
        expect(read.searches.length).toBeLessThanOrEqual(keptBounds.searches);
      }),
    );
  });
});

describe("a filter that is due", () => {
  test("is spoken of from two weeks before, and is over on its day", () => {
    expect(isFilterNear("2026-08-10", "2026-07-26T12:00:00+01:00", 14)).toBe(false);
    expect(isFilterNear("2026-08-10", "2026-07-27T12:00:00+01:00", 14)).toBe(true);
    expect(isFilterNear(null, "2026-07-27T12:00:00+01:00", 14)).toBe(false);
    expect(filterOf("2026-08-10", "2026-08-09T23:00:00+01:00")).toEqual({ day: "2026-08-10", isOver: false });
    expect(filterOf("2026-08-10", "2026-08-10T00:00:00+01:00")).toEqual({ day: "2026-08-10", isOver: true });
  });
});

describe("what keeps it well", () => {
  const idsAt = (time: "use" | "away" | "return", session: Session) =>
    stepsOf(rules, time, session, texts).map(({ id }) => id);
  const tank = take(follow(start, healthy, "opening.supply"), "tank");

  test("speaks of the tap to a plumbed machine, and of the tank to one with a tank", () => {
    expect(idsAt("away", fixed)).toContain("close-tap");
    expect(idsAt("away", fixed)).not.toContain("empty-tank");
    expect(idsAt("away", tank)).toContain("empty-tank");
    expect(idsAt("away", tank)).not.toContain("close-tap");
    expect(idsAt("use", tank)).not.toContain("new-filter");
  });

  test("has the tap behind the very gate that stands before it in a search", () => {
    const step = stepsOf(rules, "away", fixed, texts).find(({ id }) => id === "close-tap");
    expect(step?.gate?.items.map(({ id }) => id)).toEqual(flow.gates["water-supply"]?.items);
    expect(step?.gate?.signal).toBe(flow.gates["water-supply"]?.signal);
    expect(step?.gate?.facts.join(" ")).toMatch(/local plumbing and electrical codes/);
  });

  test("shows no step that exposes a person to what needs a gate without one that covers it", () => {
    for (const time of careTimes)
      for (const { id, access, gate } of flow.care[time])
        for (const hazard of flow.access[access] ?? [])
          if (flow.hazards[hazard]?.gate === "required")
            expect(flow.gates[gate ?? ""]?.covers ?? [], `${time} ${id}`).toContain(hazard);
  });

  test("has words for each step, every one of them a sentence", () => {
    for (const time of careTimes)
      for (const { text } of stepsOf(
        { ...rules, [time]: rules[time].map(({ when: _, ...step }) => step) },
        time,
        fixed,
        texts,
      ))
        expect(text).toMatch(/^[A-Z].*\.$/);
  });
});
