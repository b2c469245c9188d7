import { describe, expect, test } from "vitest";
import {
  changeAnswer,
  memoryOf,
  metaOf,
  record,
  replay,
  resume,
  type Session,
  sameLater,
  startSession,
  stillSo,
} from "../../src/session/index.ts";
import { createTexts, turnOf } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";
import { type Answers, at, flowOf, follow, healthy, inTradeOrder, take } from "./drive.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);
const start = startSession(guide, at(0));
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const shown = (session: Session) => turnOf(session, texts, at(0));
function words(session: Session): string {
  const { body, ending } = shown(session);
  return [...body, ...(ending?.back ?? [])].join("\n");
}
const turn = (session: Session) => metaOf(session).turn;
const stateOf = (session: Session, one: "water" | "plug" | "machine" | "bin") =>
  memoryOf(session).prepared[one]?.is;
const copyOf = <T>(one: T): T => JSON.parse(JSON.stringify(one));
const minutesOf = (session: Session) =>
  (Date.parse(session.log.events.at(-1)?.at ?? at(0)) - Date.parse(at(0))) / 60_000;
const ready = (session: Session, minutes: number, more: object = {}) =>
  record(session, {
    type: "answered",
    turn: turn(session),
    answer: "ready",
    items: [stillSo],
    at: at(minutesOf(session) + minutes),
    ...more,
  });

const low: Answers = { ...healthy, "flow-test.run": flowOf(5), "flow-without-filter.have": "no-plug" };
/** The tap was closed for a look at it, and stands closed at the next step that needs it so. */
const closed = follow(start, low, "supply-line.gate-water-supply");
/** The machine is pulled out, the plug out, the tap closed. */
const behind = follow(start, low, "filter-seated.gate-water-supply");
const leak: Answers = {
  ...healthy,
  "opening.symptom": "leaking",
  "opening.leak": "away",
  "leak-stop.stops": "stops",
};

describe("a gate that was confirmed in full a moment ago", () => {
  test("asks in one line, with one tap, whether it is still so", () => {
    expect(shown(closed).gate).toMatchObject({ short: true, facts: [] });
    expect(shown(closed).gate?.items.map(({ text }) => text)).toEqual([
      "The small tap is still closed, and the floor is dry",
    ]);
    const { session, refusal } = ready(closed, 1);
    expect([turn(session), refusal]).toEqual(["supply-line.gate-pulled-out", null]);
    expect(shown(session).gate?.short).toBe(false);
  });

  test("is asked in full after a reload, and after every gate of that visit", () => {
    const back = resume(guide, copyOf(closed.log), at(minutesOf(closed) + 1)).session;
    expect([turn(back), shown(back).gate?.short]).toEqual(["supply-line.gate-water-supply", false]);
    const measuring = follow(start, low, "tap-reopen.open");
    const later = follow(resume(guide, measuring.log, at(minutesOf(measuring) + 1)).session, {
      ...low,
      "tap-reopen.open": "opened",
    });
    expect(memoryOf(later).confirmed).toEqual({});
  });

  test("is asked in full once its quarter of an hour is over, also where it was asked in short before", () => {
    const late = ready(closed, 20).session;
    expect([turn(late), shown(late).gate?.short]).toEqual(["supply-line.gate-water-supply", false]);
  });

  test("is asked in full where somebody else goes on", () => {
    const other = ready(closed, 1, { by: "helper" }).session;
    expect([turn(other), shown(other).gate?.short]).toEqual(["supply-line.gate-water-supply", false]);
  });

  test("is asked in full when something has changed, and once the tap was open meanwhile", () => {
    const changed = take(closed, "changed");
    expect([turn(changed), shown(changed).gate?.short]).toEqual(["supply-line.gate-water-supply", false]);
    const opened = follow(start, { ...low, "stop-tap.open": "opened" }, "supply-line.gate-water-supply");
    expect([stateOf(opened, "water"), shown(opened).gate?.short]).toEqual(["open", false]);
  });

  test("is not taken from what was worked out ahead once its quarter of an hour is over", () => {
    const seen = follow(start, low, "stop-tap.open");
    const answer = (minutes: number) =>
      ({
        type: "answered",
        turn: "stop-tap.open",
        answer: "was-open",
        at: at(minutesOf(seen) + minutes),
      }) as const;
    const led = record(seen, answer(1)).session;
    expect(metaOf(led).short).toBe(true);
    const soon = sameLater(seen, answer(1), led, answer(2));
    expect(soon && memoryOf(soon)).toEqual(memoryOf(record(seen, answer(2)).session));
    expect(sameLater(seen, answer(1), led, answer(60))).toBeNull();
    expect(metaOf(record(seen, answer(60)).session).short).toBeUndefined();
  });

  test("takes no answer without its line", () => {
    expect(ready(closed, 1, { items: [] }).refusal).toBe("items-missing");
  });
});

describe("a gate that a person can't confirm", () => {
  test("takes every step behind it with it, and leaves the other gates open", () => {
    const refused = take(follow(start, low, "stop-tap.gate-water-supply"), "cannot");
    const ended = follow(refused, low);
    const gates = ended.log.events.flatMap((event) =>
      "turn" in event && event.turn.includes(".gate-water") ? [event.turn] : [],
    );
    expect(gates).toEqual(["stop-tap.gate-water-supply"]);
    const tube = take(follow(start, healthy, "fill-tube.gate-plug-out"), "cannot");
    expect(turn(tube)).toBe("inlet-valve.gate-water-supply");
  });

  test("opens again once that answer is changed", () => {
    const ended = follow(take(follow(start, low, "stop-tap.gate-water-supply"), "cannot"), low);
    const place = ended.log.events.findIndex((one) => "turn" in one && one.turn.includes(".gate-water"));
    const back = changeAnswer(ended, place, at(900)).session;
    expect(memoryOf(back).refused).toEqual([]);
    expect(turn(take(back, "ready"))).toBe("stop-tap.open");
  });
});

describe("hands in the ice maker", () => {
  const jammed: Answers = { ...healthy, "ice-under-maker.look": "ice-there" };

  test("go in only behind a gate of their own, which a look alone does not meet", () => {
    const asked = follow(start, jammed, "ice-under-maker.gate-still");
    expect(shown(asked).gate?.items[0]?.text).toMatch(/pulled the plug.*15 minutes/);
    expect(turn(take(asked, "ready"))).toBe("ice-under-maker.remove");
    const { log } = follow(start, healthy, "too-full.look");
    expect(JSON.stringify(log)).not.toContain("gate-still");
  });

  test("stay out where that can't be confirmed, and nobody is asked again", () => {
    const refused = take(follow(start, jammed, "ice-under-maker.gate-still"), "cannot");
    expect(memoryOf(refused).causes["ice-jammed"]).toBe("found");
    const iced = { ...jammed, "ice-bin.look": "sensor-blocked" };
    const other = take(follow(start, iced, "ice-bin.gate-still"), "cannot");
    expect(turn(take(follow(other, iced, "ice-under-maker.look"), "ice-there"))).not.toMatch(
      /^ice-under-maker/,
    );
  });
});

describe("a machine that is pulled out", () => {
  test("has its plug out before anybody reaches behind it; water near the plug stops everything", () => {
    const asked = follow(start, low, "supply-line.gate-pulled-out");
    expect(shown(asked).gate?.items[0]?.text).toMatch(/pulled the plug out/);
    expect(metaOf(take(asked, "water-near-socket")).outcome).toBe("stopped");
    expect([stateOf(behind, "plug"), stateOf(behind, "machine")]).toEqual(["out", "pulled-out"]);
  });

  test("stays so while the steps need it, then the tap is opened first and all else put back after it", () => {
    const tap = follow(behind, { ...low, "filter-seated.gate-water-supply": "ready" }, "tap-reopen.open");
    const rest = take(tap, "opened");
    expect(turn(rest)).toBe("put-back.all");
    expect(words(rest)).toMatch(/Push the fridge back[\s\S]*plug/);
    const done = take(rest, "back");
    expect([stateOf(done, "plug"), stateOf(done, "machine")]).toEqual(["in", "in-place"]);
  });

  test("is spoken of at an ending that comes early, and at one where it can't be put back", () => {
    const helped = record(behind, { type: "help-asked", at: at(900) }).session;
    expect(words(helped)).toMatch(/Open the small tap[\s\S]*Push the fridge back[\s\S]*Put the plug in/);
    const stopped = record(behind, { type: "danger-reported", danger: "gas", at: at(900) }).session;
    expect(words(stopped)).toMatch(/Leave it where it is[\s\S]*Leave it out/);
    expect(words(stopped)).not.toMatch(/open it|push the fridge back/i);
    const left = follow(behind, { ...low, "put-back.all": "cannot" });
    expect(words(left)).toContain("Push the fridge back");
  });
});

test("a bin that was taken out is spoken of at an ending, and is in again for a test run", () => {
  const out = follow(start, healthy, "too-full.look");
  expect(stateOf(out, "bin")).toBe("out");
  expect(words(record(out, { type: "help-asked", at: at(900) }).session)).toContain("Slide the ice bin in");
  expect(stateOf(follow(start, healthy, "reset.cycle"), "bin")).toBe("in");
});

describe("a tap that we had closed", () => {
  const reopen = "tap-reopen.open";
  const asked = follow(behind, low, reopen);

  test("is opened again before a professional is called, and is not spoken of then", () => {
    const ended = follow(asked, low);
    expect(metaOf(ended).outcome).toBe("professional");
    expect(stateOf(ended, "water")).toBe("open");
    expect(words(ended)).not.toContain("small tap");
  });

  test("is not opened by changing an earlier answer, nor by a new start: what follows says so", () => {
    const back = changeAnswer(closed, 4, at(900)).session;
    expect(stateOf(back, "water")).toBe("closed");
    const again = replay(guide, copyOf(back.log)).session;
    expect([turn(again), stateOf(again, "water")]).toEqual([turn(back), "closed"]);
    expect(words(record(back, { type: "help-asked", at: at(901) }).session)).toContain("Open the small tap");
  });

  test("that drips when it is opened is closed again, and a plumber is called", () => {
    const ended = take(asked, "drips");
    expect([turn(ended), memoryOf(ended).cause, memoryOf(ended).who]).toEqual([
      "professional.end",
      "joint-leaks",
      "plumber",
    ]);
    expect(words(ended)).toMatch(/Leave the small tap closed[\s\S]*Put the plug in/);
  });

  test("that can't be opened keeps no ice waited for, and the ending says that it is closed", () => {
    for (const answer of ["cannot", "not-sure"])
      expect(words(follow(take(asked, answer), low))).toContain("the small tap");
  });

  test("is not spoken of where nobody closed it", () => {
    const fresh = follow(start, healthy, "door-seal.look");
    expect(words(record(fresh, { type: "help-asked", at: at(900) }).session)).not.toContain("small tap");
  });

  test("stays closed for a damaged line until the part is in, but the plug goes back", () => {
    const model = follow(start, { ...low, "supply-line.look": "damaged" }, "part.model");
    expect(model.log.events.at(-1)).toMatchObject({ turn: "put-back.all" });
    const code = { type: "model-given", turn: "part.model", code: "TR-01", typed: "", at: at(900) } as const;
    const card = record(model, code).session;
    expect(stateOf(card, "water")).toBe("closed");
    expect(words(card)).toContain("Leave the small tap closed until the new part is in");
    expect(words(card)).not.toMatch(/open it again/i);
  });

  test("stays closed in a search for a leak, also when help is asked for at once", () => {
    const ended = record(follow(start, leak, "leak-where.look"), { type: "help-asked", at: at(900) }).session;
    expect(words(ended)).toContain("Leave the small tap closed");
    expect(words(ended)).not.toMatch(/open it again/i);
  });

  test("is closed only after it is known that there is a bypass plug, and come back to by the turn that opens it", () => {
    const have = take(follow(start, low, "flow-without-filter.have"), "have-plug");
    expect(turn(have)).toBe("flow-without-filter.gate-water-supply");
    const left = follow(
      have,
      { ...low, "flow-without-filter.prepare": "plug-fitted" },
      "flow-without-filter.run",
    );
    expect(stateOf(left, "water")).toBe("open");
    const back = record(left, { type: "session-resumed", at: at(900) }).session;
    expect(turn(take(back, "ready"))).toBe("flow-without-filter.prepare");
  });
});

describe("a log from before all of this was asked", () => {
  const without = (session: Session, ...turns: string[]) => ({
    ...session.log,
    events: copyOf(session.log.events).filter((event) => !("turn" in event) || !turns.includes(event.turn)),
  });

  test("keeps what was answered behind a gate that is new, and asks that gate of whoever comes back to it", () => {
    const jammed = { ...healthy, "ice-under-maker.look": "ice-there", "ice-under-maker.remove": "removed" };
    const old = without(follow(start, jammed, "door-seal.look"), "ice-under-maker.gate-still");
    const { session, dropped } = replay(guide, old);
    expect([turn(session), dropped]).toEqual(["door-seal.look", 0]);
    expect(memoryOf(session).causes["ice-jammed"]).toBe("fixed");
    expect(Object.values(memoryOf(session).confirmed)).toMatchObject([{ by: "log" }]);
  });

  test("keeps what was answered behind a gate that has another name now, but every line of it", () => {
    const seen = follow(start, { ...healthy, "fill-tube.look": "clear" }, "inlet-valve.gate-water-supply");
    const renamed = JSON.stringify(seen.log).replace("gate-plug-out", "gate-back-panel");
    expect(replay(guide, JSON.parse(renamed)).dropped).toBe(0);
    expect(replay(guide, JSON.parse(renamed.replace('"plug-in-sight",', ""))).dropped).toBeGreaterThan(0);
  });

  test("goes on where it went although things were not put back, and says so where they are needed", () => {
    const end = follow(asked(), low);
    const old = without(end, "tap-reopen.open", "put-back.all");
    const { session, dropped } = replay(guide, old);
    expect(dropped).toBe(0);
    expect(stateOf(session, "plug")).toBe("out");
    expect(words(record(session, { type: "help-asked", at: at(900) }).session)).toContain("Put the plug in");
  });

  test("keeps a tap closed that it says was left closed", () => {
    const log = { ...start.log, events: [{ type: "water-left", water: "closed-by-us", at: at(1) } as const] };
    expect(stateOf(replay(guide, log).session, "water")).toBe("closed");
  });

  function asked(): Session {
    return follow(behind, low, "tap-reopen.open");
  }
});
