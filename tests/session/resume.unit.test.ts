import { describe, expect, test } from "vitest";
import {
  changeAnswer as changing,
  memoryOf,
  metaOf,
  record,
  replay,
  resume,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at, celsius, flowOf, follow, healthy, inTradeOrder, runsOut, strips, take } from "./drive.ts";
import { copyOf, standOf } from "./walker.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);
const start = startSession(guide, at(0));
const lowFlow = { ...healthy, "flow-test.run": flowOf(5) };
const back = (session: Session, minutes: number) => resume(guide, copyOf(session.log), at(minutes)).session;
const turnOf = (session: Session) => metaOf(session).turn;
const changeAnswer = (...at: Parameters<typeof changing>) => changing(...at).session;

describe("coming back to a kept log", () => {
  test("leads to the very turn that was left", () => {
    const left = follow(start, healthy, "door-seal.feel");
    const again = back(left, 500);
    expect(turnOf(again)).toBe("door-seal.feel");
    expect(standOf(again)).toBe(standOf(left));
  });

  test("in a hazardous step asks its gate again, and then the very turn that was left", () => {
    const left = follow(start, { ...healthy, "fill-tube.look": "frozen" }, "fill-tube.thaw");
    const looking = take(left, "thawed");
    expect(turnOf(looking)).toBe("fill-tube.look-again");
    const again = back(looking, 600);
    expect(turnOf(again)).toBe("fill-tube.gate-plug-out");
    expect(turnOf(take(again, "ready"))).toBe("fill-tube.look-again");
  });

  test("twice in a row asks the gate once, and still leads back", () => {
    const left = follow(start, { ...healthy, "fill-tube.look": "frozen" }, "fill-tube.thaw");
    const again = back(back(left, 100), 200);
    expect(turnOf(again)).toBe("fill-tube.gate-plug-out");
    expect(turnOf(take(again, "ready"))).toBe("fill-tube.thaw");
  });

  test("behind two gates asks both again", () => {
    let session = back(follow(start, lowFlow, "supply-line.look"), 600);
    const asked = [];
    while (turnOf(session) !== "supply-line.look") {
      asked.push(turnOf(session));
      session = take(session, "ready");
    }
    expect(asked).toEqual(["supply-line.gate-water-supply", "supply-line.gate-pulled-out"]);
  });

  test("between two gates asks the first again: the tap may have been opened meanwhile", () => {
    const left = follow(start, lowFlow, "supply-line.gate-pulled-out");
    expect(turnOf(back(left, 600))).toBe("supply-line.gate-water-supply");
  });

  test("at a gate that a person can no longer confirm leads past the step", () => {
    const again = back(follow(start, lowFlow, "stop-tap.open"), 600);
    expect(turnOf(take(again, "cannot"))).toBe("tap-reopen.open");
  });

  test("does not lead back into a step that was passed by since", () => {
    const passed = take(back(follow(start, lowFlow, "stop-tap.open"), 600), "cannot");
    const next = take(passed, "opened");
    expect(turnOf(next)).not.toMatch(/^stop-tap/);
    expect(memoryOf(next).returnTo).toBeNull();
  });

  test("to an ending stays there", () => {
    expect(turnOf(back(take(start, "gas"), 600))).toBe("stopped.end");
  });
});

describe("a wait", () => {
  const waiting = follow(
    start,
    { ...healthy, "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" },
    "wait-for-ice.wait",
  );
  const since = memoryOf(waiting).waits["wait-for-ice.wait"] ?? "";
  const day = 24 * 60;
  const began = (Date.parse(since) - Date.parse(at(0))) / 60_000;
  const endAt = (when: string) => record(waiting, { type: "wait-ended", at: when });

  test("keeps its start when the person comes back", () => {
    expect(since).toBe(waiting.log.events.at(-1)?.at);
    const again = back(back(waiting, began + 100), began + 200);
    expect(memoryOf(again).waits["wait-for-ice.wait"]).toBe(since);
    expect(turnOf(again)).toBe("wait-for-ice.wait");
  });

  test("keeps its start behind a gate that is asked again", () => {
    const thawing = follow(start, { ...healthy, "fill-tube.look": "frozen" }, "fill-tube.thaw");
    const from = memoryOf(thawing).waits["fill-tube.thaw"];
    const again = take(back(thawing, 100), "ready");
    expect(turnOf(again)).toBe("fill-tube.thaw");
    expect(memoryOf(again).waits["fill-tube.thaw"]).toBe(from);
  });

  test("is not over a minute early, and over on time", () => {
    expect(endAt(at(began + day - 1)).refusal).toBe("not-now");
    expect(turnOf(endAt(at(began + day)).session)).toBe("wait-for-ice.came");
  });

  test("that is over when the person comes back is ended then", () => {
    expect(turnOf(back(waiting, began + day - 1))).toBe("wait-for-ice.wait");
    expect(turnOf(back(waiting, began + day))).toBe("wait-for-ice.came");
  });

  test("is as long for a person who flies to another time zone", () => {
    for (const offset of ["-08:00", "+05:30", "+14:00"]) {
      expect(endAt(at(began + day - 1, offset)).refusal).toBe("not-now");
      expect(endAt(at(began + day, offset)).refusal).toBeNull();
    }
  });

  test("is not over because somebody set the clock back", () => {
    expect(endAt(at(began - 3 * day)).refusal).toBe("not-now");
  });

  test("can't be ended where nothing waits", () => {
    expect(record(start, { type: "wait-ended", at: at(9 * day) }).refusal).toBe("not-now");
  });
});

/**
 * Central European time springs forward on 29 March 2026 at 01:00 UTC and falls back on 25 October 2026 at
 * 01:00 UTC: last Sundays, Directive 2000/84/EC. 24 hours of waiting are 24 hours, whatever the
 * clock on the wall says.
 */
describe("a wait over a change of the clocks", () => {
  const switchedOff = {
    ...healthy,
    "ice-maker-switch.look": "off",
    "ice-maker-switch.switch-on": "switched-on",
  };
  const waitFrom = (from: string) => {
    const before = follow(startSession(guide, from), switchedOff, "ice-maker-switch.switch-on");
    const turn = turnOf(before);
    return record(before, { type: "answered", turn, answer: "switched-on", at: from }).session;
  };

  test.each([
    ["to summer time", "2026-03-28T20:00:00+01:00", "2026-03-29T20:59:59+02:00", "2026-03-29T21:00:00+02:00"],
    ["to winter time", "2026-10-24T20:00:00+02:00", "2026-10-25T18:59:59+01:00", "2026-10-25T19:00:00+01:00"],
  ])("%s lasts a true day", (_, from, early, onTime) => {
    const waiting = waitFrom(from);
    expect(turnOf(waiting)).toBe("wait-for-ice.wait");
    expect(record(waiting, { type: "wait-ended", at: early }).refusal).toBe("not-now");
    expect(record(waiting, { type: "wait-ended", at: onTime }).refusal).toBeNull();
  });
});

describe("changing an earlier answer", () => {
  const indexOf = (session: Session, turn: string) =>
    session.log.events.findIndex((event) => "turn" in event && event.turn === turn);

  test("goes back to that turn and drops what was answered after it", () => {
    const far = follow(start, healthy, "door-seal.look");
    const changed = changeAnswer(far, indexOf(far, "ice-bin.look"), at(500));
    expect(turnOf(changed)).toBe("ice-bin.look");
    const before = far.log.events.slice(0, indexOf(far, "ice-bin.look"));
    // No change of an answer puts the ice bin back.
    const left = { type: "prepared-left", left: { bin: "out" }, at: at(500) };
    expect(changed.log.events).toEqual([...before, left]);
    expect(memoryOf(changed).done).not.toContain("too-full");
  });

  test("takes back what the later answers had found and put right", () => {
    const answers = { ...healthy, "ice-bin.look": "full", "ice-bin.empty": "emptied" };
    const far = follow(start, answers, "door-seal.look");
    expect(memoryOf(far).causes).toEqual({ "bin-full": "fixed" });
    const changed = changeAnswer(far, indexOf(far, "ice-bin.look"), at(500));
    expect([memoryOf(changed).causes, memoryOf(changed).remedies]).toEqual([{}, 0]);
  });

  test("of a hazardous turn asks its gate first", () => {
    const far = follow(start, lowFlow, "supply-line.look");
    const changed = changeAnswer(far, indexOf(far, "stop-tap.open"), at(500));
    expect(turnOf(changed)).toBe("stop-tap.gate-water-supply");
    expect(turnOf(take(changed, "ready"))).toBe("stop-tap.open");
  });

  test("of the second of two gates asks the first again", () => {
    const far = follow(start, lowFlow, "supply-line.look");
    const changed = changeAnswer(far, indexOf(far, "supply-line.gate-pulled-out"), at(500));
    expect(turnOf(changed)).toBe("supply-line.gate-water-supply");
  });

  test("leaves the session that was there untouched", () => {
    const far = follow(start, healthy, "door-seal.look");
    const before = standOf(far);
    changeAnswer(far, 2, at(500));
    expect(standOf(far)).toBe(before);
  });

  test("is possible at an ending too: a slip of the thumb is no end", () => {
    const helped = record(take(start, "none"), { type: "help-asked", at: at(2) }).session;
    expect(turnOf(helped)).toBe("professional.end");
    expect(turnOf(changeAnswer(helped, 0, at(3)))).toBe("opening.danger");
  });

  test.each([
    ["a danger", ["shock"]],
    ["a danger that nobody is sure of", ["not-sure", "not-sure"]],
    ["a leak near a socket", ["none", "leaking", "water-near-socket", "water-near-socket"]],
  ])("leads out of no stop, such as by %s", (_, answers) => {
    const stopped = answers.reduce(take, start);
    expect(turnOf(stopped)).toBe("stopped.end");
    for (const index of answers.keys()) expect(changeAnswer(stopped, index, at(9))).toBe(stopped);
  });
});

describe("a log that a newer flow does not take to its end", () => {
  const older = follow(start, healthy, "door-seal.look");
  const without = structuredClone(flow);
  const look = without.checks["ice-bin"]?.turns.look;
  if (look) look.answers = { spotless: { to: "done" } };

  test("is replayed up to the first event that no longer fits, and the rest is counted", () => {
    const place = older.log.events.findIndex((event) => "turn" in event && event.turn === "ice-bin.look");
    const { session, dropped } = replay(inTradeOrder(without), older.log);
    expect(turnOf(session)).toBe("ice-bin.look");
    expect(session.log.events).toEqual(older.log.events.slice(0, place));
    expect(dropped).toBe(older.log.events.length - place);
    expect(dropped).toBeGreaterThan(1);
  });

  test("goes on from there", () => {
    const { session, dropped } = resume(inTradeOrder(without), older.log, at(500));
    expect(dropped).toBeGreaterThan(0);
    expect(turnOf(take(session, "spotless"))).toBe("ice-under-maker.look");
  });

  test("never opens a gate that asks for more than was ticked then", () => {
    const stricter = structuredClone(flow);
    stricter.gates["water-supply"]?.items.push("neighbour-told");
    const { session, dropped } = replay(
      inTradeOrder(stricter),
      follow(start, lowFlow, "supply-line.look").log,
    );
    expect(turnOf(session)).toBe("stop-tap.gate-water-supply");
    expect(dropped).toBeGreaterThan(0);
  });

  test("does not take a reading that a narrower limit no longer believes", () => {
    const narrower = structuredClone(flow);
    narrower.limits["temperature-lowest"] = { value: -10, unit: "°C" };
    const { session } = replay(inTradeOrder(narrower), older.log);
    expect(turnOf(session)).toBe("door-seal.look");
    const colder = take(follow(start, healthy, "freezer-temperature.read"), celsius(-18));
    expect(turnOf(replay(inTradeOrder(narrower), colder.log).session)).toBe("freezer-temperature.read");
  });

  test("keeps its own order of checks where today's advice would have asked others", () => {
    const advised = guideFor(flow);
    const { session, dropped } = replay(advised, older.log);
    expect(dropped).toBe(0);
    expect(session.log.events).toEqual(older.log.events);
    expect(turnOf(session)).not.toBe(turnOf(older));
    expect(turnOf(replay(advised, session.log).session)).toBe(turnOf(session));
  });

  test("is led to no check that is not allowed, past no gate, and to no part that is not advised", () => {
    const advised = guideFor(flow);
    const forged = (turn: string) => {
      const log = structuredClone(older.log);
      log.events.splice(4, 0, { type: "answered", turn, answer: "clean", at: at(5) });
      return turnOf(replay(advised, log).session);
    };
    expect(forged("fill-tube-again.look")).not.toMatch(/^fill-tube-again/);
    expect(forged("inlet-valve.screen")).toBe("inlet-valve.gate-water-supply");
    const worn = { ...healthy, "door-seal.look": "dirty", "door-seal.clean": "cleaned" };
    const found = {
      ...worn,
      "door-seal.paper-strip": strips(1, 5, 8),
      "door-seal.strip-again": strips(1, 5, 8),
    };
    const sold = follow(start, found, "part.model");
    expect(turnOf(sold)).toBe("part.model");
    const given = {
      type: "model-given",
      turn: "part.model",
      code: "TR-01",
      typed: "tr 01",
      at: at(90),
    } as const;
    const card = record(sold, given).session;
    const { session } = replay(advised, card.log);
    const part = session.adviser?.advise(memoryOf(session)).part;
    expect(turnOf(session) === "part.card").toBe(part === "seal-worn");
  });

  test("with nothing to drop says so", () => {
    expect(replay(guide, older.log).dropped).toBe(0);
  });
});

test("a wait that ran out and brought no ice leads on, and is not asked about again", () => {
  const answers = { ...healthy, "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" };
  const session = follow(
    start,
    { ...answers, "wait-for-ice.wait": runsOut, "wait-for-ice.came": "no-ice" },
    "door-closing.look",
  );
  expect(memoryOf(session).findings["wait-for-ice.came"]?.answer).toBe("no-ice");
});
