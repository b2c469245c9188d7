import { describe, expect, test } from "vitest";
import { memoryOf, metaOf, record, type Session, startSession } from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, celsius, flowOf, follow, healthy, inTradeOrder, take } from "./drive.ts";
import { standOf } from "./walker.ts";

const flow = ownFlow;
const start = startSession(inTradeOrder(flow), at(0));
const atGate = follow(start, { ...healthy, "flow-test.run": flowOf(5) }, "stop-tap.gate-water-supply");

/** That an event is refused, why, and that nothing whatever changed. */
function expectRefused(session: Session, event: Parameters<typeof record>[1], refusal: string) {
  const before = standOf(session);
  const after = record(session, event);
  expect(after.refusal).toBe(refusal);
  expect(after.session).toBe(session);
  expect(standOf(after.session)).toBe(before);
}

describe("an answer", () => {
  test("is added to the log and leads on", () => {
    const next = take(start, "none");
    expect(next.log.events).toEqual([
      { type: "answered", turn: "opening.danger", answer: "none", at: at(1) },
    ]);
    expect(metaOf(next).turn).toBe("opening.symptom");
    expect(start.log.events).toEqual([]);
  });

  test("tapped twice counts once: the second tap finds another turn and changes nothing", () => {
    const tap = { type: "answered", turn: "opening.danger", answer: "none", at: at(1) } as const;
    expectRefused(record(start, tap).session, tap, "other-turn");
  });

  test("that the turn does not have is refused", () => {
    for (const answer of ["maybe", "", "*", "ready", "not-sure.", "__proto__"])
      expectRefused(start, { type: "answered", turn: "opening.danger", answer, at: at(1) }, "unknown-answer");
  });

  test("after the end is refused, and so is one for the ending itself", () => {
    const stopped = take(start, "gas");
    expectRefused(
      stopped,
      { type: "answered", turn: "opening.danger", answer: "none", at: at(2) },
      "other-turn",
    );
    expectRefused(
      stopped,
      { type: "answered", turn: "stopped.end", answer: "none", at: at(2) },
      "unknown-answer",
    );
  });
});

describe("a gate", () => {
  const items = flow.gates["water-supply"]?.items ?? [];
  const ready = (ticked: string[] | undefined) =>
    ({
      type: "answered",
      turn: "stop-tap.gate-water-supply",
      answer: "ready",
      ...(ticked ? { items: ticked } : {}),
      at: at(60),
    }) as const;

  test("opens when every single item is ticked", () => {
    expect(items.length).toBeGreaterThan(2);
    expect(metaOf(record(atGate, ready(items)).session).turn).toBe("stop-tap.open");
  });

  test("stays shut while any one item is not ticked, whichever it is", () => {
    for (const missing of items)
      expectRefused(atGate, ready(items.filter((item) => item !== missing)), "items-missing");
    expectRefused(atGate, ready([]), "items-missing");
    expectRefused(atGate, ready(undefined), "items-missing");
  });

  test("stays shut for ticks that are another gate's", () => {
    expectRefused(atGate, ready(flow.gates["pulled-out"]?.items ?? []), "items-missing");
  });

  test("counts ticks however often and in whatever order they came", () => {
    expect(record(atGate, ready([...items, ...items].reverse())).refusal).toBeNull();
  });

  test("lets a person pass by who can't do it, without opening", () => {
    const by = take(atGate, "cannot");
    expect(metaOf(by).gate).toBeUndefined();
    expect(memoryOf(by).refused).toEqual(["water-supply"]);
    expect(memoryOf(by).done).toContain("stop-tap");
  });

  test("is not passed by an answer to the step behind it", () => {
    expectRefused(
      atGate,
      { type: "answered", turn: "stop-tap.open", answer: "opened", at: at(60) },
      "other-turn",
    );
  });
});

describe("a reading", () => {
  const freezer = follow(start, healthy, "freezer-temperature.read");
  const measured = (reading: unknown) =>
    ({ type: "measured", turn: "freezer-temperature.read", reading: reading as never, at: at(30) }) as const;

  test("is kept with its verdict", () => {
    const next = record(freezer, measured(celsius(-20))).session;
    expect(memoryOf(next).findings["freezer-temperature.read"]).toEqual({
      answer: "passes",
      reading: celsius(-20),
      at: at(30),
    });
  });

  test("that nobody can believe is refused, so that it can be put right", () => {
    expectRefused(freezer, measured(celsius(180)), "unreadable");
    expectRefused(freezer, measured(celsius(-180)), "unreadable");
  });

  test("of another instrument is refused", () => {
    expectRefused(freezer, measured(flowOf(20)), "unreadable");
    expectRefused(freezer, measured({ kind: "flow", runs: [] }), "unreadable");
  });

  test("is no answer to a question", () => {
    expectRefused(
      start,
      { type: "measured", turn: "opening.danger", reading: celsius(-18) as never, at: at(1) },
      "unreadable",
    );
  });
});

describe("from everywhere in a check", () => {
  const turns = ["control-lock.look", "reset.cycle", "stop-tap.gate-water-supply", "stop-tap.open"];
  const sessions = turns.map((turn) => follow(start, { ...healthy, "flow-test.run": flowOf(5) }, turn));

  test("danger can be reported, and nothing follows on it", () => {
    for (const session of sessions) {
      const stopped = record(session, { type: "danger-reported", danger: "sparks", at: at(90) }).session;
      expect([metaOf(stopped).outcome, memoryOf(stopped).danger]).toEqual(["stopped", "sparks"]);
      for (const type of ["help-asked", "ice-returned", "session-resumed"] as const)
        expectRefused(stopped, { type, at: at(91) }, "not-now");
    }
  });

  test("a danger that nobody knows is refused rather than lost in the chart", () => {
    expectRefused(start, { type: "danger-reported", danger: "ghosts", at: at(1) }, "not-now");
  });

  test("a person can be asked for, and ice be reported", () => {
    for (const session of sessions) {
      expect(metaOf(record(session, { type: "help-asked", at: at(90) }).session).outcome).toBe(
        "professional",
      );
      expect(metaOf(record(session, { type: "ice-returned", at: at(90) }).session).outcome).toBe("fixed");
    }
  });

  test("danger can still be reported at the card of a part", () => {
    const model = follow(start, { ...healthy, "reset.test": "nothing-moved" }, "part.model");
    const given = { type: "model-given", turn: "part.model", code: null, typed: "", at: at(90) } as const;
    const card = record(model, given).session;
    expect(metaOf(card).turn).toBe("part.card");
    const stopped = record(card, { type: "danger-reported", danger: "gas", at: at(91) }).session;
    expect([metaOf(stopped).outcome, memoryOf(stopped).cause]).toEqual(["stopped", null]);
  });
});
