import { describe, expect, test } from "vitest";
import type { Finding } from "../../src/chart/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import { verdictOn } from "../../src/instruments/index.ts";
import {
  journalOf,
  type LogEvent,
  memoryOf,
  parseJournal,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { createTexts, turnOf } from "../../src/turn/index.ts";
import { readingText } from "../../src/turn/reading-text.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import {
  type Answers,
  at,
  celsius,
  flowOf,
  fridgeCelsius,
  gramsEach,
  inTradeOrder,
  kilograms,
  kilopascals,
  litresPerMinute,
  strips,
  take,
} from "../session/drive.ts";
import { reach } from "../session/reach.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const start = startSession(inTradeOrder(flow), at(0));
const shown = (session: Session) => turnOf(session, texts, at(0));

/** How a reading stands among the earlier answers. */
function said(turn: string, reading: Reading): string {
  const finding: Finding = { answer: verdictOn(reading, flow.limits, at(0)) ?? "", reading, at: at(0) };
  return readingText(turn, finding, start.flow, texts);
}

describe("a reading as evidence", () => {
  test.each<[turn: string, reading: Reading, says: string]>([
    // 15 l in 60 s is 15 l/min.
    ["tap-fill.fill", litresPerMinute(15), "15 litres a minute ± 0.7: strong enough"],
    // ±20 kPa, even: within 19.6 with 98 %.
    ["tap-fill.fill", kilopascals(1000), "1000 kPa ± 19.6: too strong"],
    // 40 psi is 275.8 kPa (NIST SP 811), and 19.6 kPa are 2.8 psi.
    ["tap-fill.fill", { kind: "supply", by: "gauge", value: 40, unit: "psi" }, "40 psi ± 2.8: strong enough"],
    // What was typed in a unit is told in it: 2 US gallons in 30 s.
    [
      "tap-fill.fill",
      { kind: "supply", by: "fill", volume: 2, unit: "us-gal", seconds: 30 },
      "4 US gallons a minute ± 0.2: strong enough",
    ],
    [
      "flow-test.run",
      { kind: "flow", runs: [{ volume: 1.25, unit: "us-cup", seconds: 10 }] },
      "1.25 US cups in 10 s ± 0.08: enough water",
    ],
    // A fifth of the flow is left: 1 − 0.2² is 96 % of the pressure, to less than half a percent after so long.
    [
      "flow-without-filter.run",
      {
        kind: "flow",
        runs: [{ volume: 3000, unit: "ml", seconds: 100 }],
        before: [{ volume: 1200, unit: "ml", seconds: 200 }],
      },
      "300 ml in 10 s ± 15: enough water without the filter. The filter takes about 96 % of the pressure",
    ],
    ["cube-weight.weigh", { kind: "cubes", pieces: 8, mass: 0.3, unit: "lb" }, "0.6 oz each ± 0: full cubes"],
    [
      "ice-yield.count",
      { kind: "ice", by: "pieces", amount: 8, hours: 12, wanted: null },
      "8 to 24 cubes a day: too close to call",
    ],
    ["fridge-temperature.read", fridgeCelsius(3), "3 °C ± 1: cold enough for food"],
    ["cube-weight.weigh", gramsEach(17.5), "17.5 g each ± 0.1: full cubes"],
    ["door-seal.paper-strip", strips(3), "1 of 12 places slip: slips at one corner"],
    [
      "door-seal.paper-strip",
      { kind: "seal", door: "drawer", spots: [null, "slips", null, "slips", "grips", "drags", "slips"] },
      "3 of 5 places slip: slips at several places",
    ],
  ])("at %s it is told with its doubt and its verdict", (turn, reading, says) => {
    expect(said(turn, reading)).toBe(says);
  });

  test("a day's ice is told as the range in which it lies", () => {
    expect(said("ice-yield.count", kilograms(1.8))).toMatch(/^1\.7\d to 1\.8\d kg a day: as much as it can$/);
    expect(said("ice-yield.count", kilograms(1.2, "much"))).toMatch(/but you use more$/);
  });

  test("a flow without the filter is told with the filter's share of the pressure", () => {
    const before = flowOf(12.5);
    if (before.kind !== "flow") throw new Error("No flow");
    // Half the flow: 1 − 0.5² = 75 % (a fixed supply and a quadratic circuit).
    const reading = { ...(flowOf(25) as typeof before), before: before.runs };
    const [, low, high] = /takes (\d+) to (\d+) %/.exec(said("flow-without-filter.run", reading)) ?? [];
    expect(Number(low)).toBeLessThanOrEqual(75);
    expect(Number(high)).toBeGreaterThanOrEqual(75);
    expect(Number(high) - Number(low)).toBeLessThan(6);
  });

  test("a filter is told with what ran through it, where the use is known", () => {
    const reading: Reading = {
      kind: "filter-age",
      fitted: { by: "date", date: "2026-02-20" },
      use: { people: 2, habit: "glasses" },
    };
    // Ten days of two people with a quarter to one litre each.
    expect(said("filter-age.fitted", reading)).toContain("5 to 20 litres used");
  });

  test("every kind survives being stored", () => {
    const readings = [
      litresPerMinute(15),
      kilopascals(800),
      fridgeCelsius(3),
      kilograms(1.8),
      gramsEach(17.5),
      strips(3),
    ];
    const events = readings.map(
      (reading) => ({ type: "measured", turn: "t", reading, at: at(0) }) as unknown as LogEvent,
    );
    const journal = journalOf({ model: null, started: at(0), events });
    expect(parseJournal(JSON.parse(JSON.stringify(journal)))).toEqual(journal);
  });
});

describe("an instrument knows what was measured before", () => {
  test("the runs with the filter, where it is measured without", () => {
    const low: Answers = { "flow-test.run": flowOf(5), "flow-without-filter.prepare": "plug-fitted" };
    const { reading } = shown(reach(start, "flow-without-filter.run", low));
    expect(reading).toMatchObject({ instrument: "flow", before: (flowOf(5) as { runs: unknown }).runs });
    expect(shown(reach(start, "flow-test.run")).reading).toMatchObject({ before: null });
  });

  test("the cold, where a day's ice is judged", () => {
    const before = reach(start, "ice-yield.count", { "freezer-temperature.read": celsius(-15) });
    const { reading } = shown(before);
    const found = memoryOf(before).findings["freezer-temperature.read"];
    expect(reading).toMatchObject(
      found ? { instrument: "ice", celsius: { value: -15 } } : { instrument: "ice", celsius: null },
    );
  });

  test("the first survey of a seal, where its second comes after cleaning", () => {
    const first = strips(1, 5, 8);
    const { reading } = shown(reach(start, "door-seal.strip-again", { "door-seal.paper-strip": first }));
    expect(reading).toMatchObject({ instrument: "seal", before: { reading: first, verdict: "fails" } });
    expect(shown(reach(start, "door-seal.paper-strip")).reading).toMatchObject({ before: null });
  });

  test("since when ice was waited for, where it is counted", () => {
    const session = reach(start, "ice-count.count");
    const { reading } = shown(session);
    expect(reading).toMatchObject({ since: memoryOf(session).waits["ice-count.wait"] });
    expect(memoryOf(session).waits["ice-count.wait"]).toBeDefined();
    expect(shown(reach(start, "ice-yield.count")).reading).toMatchObject({ since: null });
  });

  test("a freezer's reading is none for a fridge", () => {
    const session = reach(start, "fridge-temperature.read");
    expect(session.snapshot.can({ type: "measured", reading: fridgeCelsius(3), at: at(9) } as never)).toBe(
      true,
    );
    expect(session.snapshot.can({ type: "measured", reading: celsius(-18), at: at(9) } as never)).toBe(false);
  });
});

describe("a wait tells what goes on inside", () => {
  test("each stage with the instant at which it begins, the first at once", () => {
    const off = { "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" };
    const { wait } = shown(reach(start, "wait-for-ice.wait", off));
    const hours = wait?.inside.map(({ from }) => (Date.parse(from) - Date.parse(wait.from)) / 3_600_000);
    const limit = (id: string) => flow.limits[id]?.value;
    expect(hours).toEqual([0, limit("stage-tray-cold"), limit("stage-first-ice")]);
    for (const { text } of wait?.inside ?? []) expect(text).toMatch(/\w.*\.$/);
  });

  test("its stages begin before it ends, and one after the other", () => {
    const waits = Object.values(flow.checks).flatMap(({ turns }) => Object.values(turns));
    const minutes = (id: string | undefined) => {
      const limit = flow.limits[id ?? ""];
      return (limit?.value ?? 0) * (limit?.unit === "h" ? 60 : 1);
    };
    for (const { inside = [], lasts } of waits) {
      const begin = inside.map(({ after }) => minutes(after));
      expect(begin).toEqual([...new Set(begin)].sort((a, b) => a - b));
      if (begin.length) expect(begin.at(-1)).toBeLessThan(minutes(lasts));
    }
  });
});

describe("an ending where nothing was broken", () => {
  test("says that the machine makes what it can, not that it works again", () => {
    const reading = kilograms(1.2, "much");
    const counted = reach(start, "ice-yield.plan", { "ice-yield.count": reading });
    const ended = shown(take(counted, "will-store"));
    expect(ended.ending).toMatchObject({ outcome: "fixed", causeId: "demand-high" });
    expect(ended.heading).toBe("It makes all it can");
    expect(ended.body.join(" ")).toContain("No part makes it faster");
    const found = ended.ending?.evidence.find(({ turn }) => turn === "ice-yield.count")?.found;
    expect(found).toMatch(/as much as it can, but you use more$/);
  });

  test("any other that was put right says that it works again", () => {
    const full = { "ice-bin.look": "full", "ice-bin.empty": "emptied", "wait-for-ice.wait": "ice-came" };
    expect(shown(reach(start, "fixed.end", full, "bin-full")).heading).toBe("It works again");
  });
});

describe("a house supply that no part can help", () => {
  test("too strong a one ends with a plumber where the machine leaks, and says so", () => {
    const strong = { "tap-fill.fill": kilopascals(1000) };
    const { ending } = shown(reach(start, "professional.end", strong, "supply-strong"));
    expect(ending?.cause).toContain("No part for the machine will fix that");
    expect(ending?.who).toMatch(/^A plumber/);
  });

  test("too weak a one ends with a plumber once the way to the machine is known to be open", () => {
    const weak = { "tap-fill.fill": litresPerMinute(3), "flow-test.run": flowOf(5) };
    const { ending } = shown(reach(start, "professional.end", weak, "supply-weak"));
    expect(ending?.cause).toContain("No part for the machine will fix that");
  });
});
