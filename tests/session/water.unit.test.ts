import { describe, expect, test } from "vitest";
import {
  changeAnswer as changing,
  memoryOf,
  metaOf,
  record,
  replay,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { createTexts, turnOf } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { readerOf } from "../turn/reader.ts";
import { type Answers, at, flowOf, follow, healthy, inTradeOrder, take } from "./drive.ts";

const flow = readFlow();
const guide = inTradeOrder(flow);
const start = startSession(guide, at(0));
const texts = createTexts(readLocales(), "en-GB", readerOf(flow));
const words = (session: Session) => turnOf(session, texts, at(0)).body.join("\n");
const turn = (session: Session) => metaOf(session).turn;
const reopen = "tap-reopen.open";
const changeAnswer = (...at: Parameters<typeof changing>) => changing(...at).session;

/** The panel was opened and the tube behind it looked at; the tap is closed since. */
const tubeSeen: Answers = {
  ...healthy,
  "fill-tube.look": "clear",
  "inlet-valve.gate-water-supply": "cannot",
};
/** With nothing known of the flow, what was put right is waited for only after that look. */
const binFull: Answers = {
  ...tubeSeen,
  "flow-test.run": "cannot",
  "ice-bin.look": "full",
  "ice-bin.empty": "emptied",
};
const leak: Answers = {
  ...healthy,
  "opening.symptom": "leaking",
  "opening.leak": "away",
  "leak-stop.stops": "stops",
};

describe("a tap that a gate had closed", () => {
  const closed = follow(start, tubeSeen, "inlet-valve.gate-water-supply");

  test("is remembered as closed by us, and as open once an answer says so", () => {
    expect(memoryOf(start).water).toBe("as-found");
    expect(memoryOf(closed).water).toBe("closed-by-us");
    const open = follow(start, { ...healthy, "flow-test.run": flowOf(5) }, "supply-line.gate-water-supply");
    expect(memoryOf(open).water).toBe("open");
  });

  test("is opened again before a professional is called", () => {
    const asked = take(closed, "cannot");
    expect(turn(asked)).toBe(reopen);
    expect(words(asked)).toMatch(/slowly[\s\S]*drips/);
    const ended = take(asked, "opened");
    expect(turn(ended)).toBe("professional.end");
    expect(memoryOf(ended).water).toBe("open");
    expect(words(ended)).not.toContain("stop tap");
  });

  test("is not opened by changing an earlier answer: the turn and every ending after it still say so", () => {
    const back = changeAnswer(closed, 4, at(900));
    expect(memoryOf(back).water).toBe("closed-by-us");
    const { session: again } = replay(guide, JSON.parse(JSON.stringify(back.log)));
    expect(memoryOf(again).water).toBe("closed-by-us");
    expect(turn(again)).toBe(turn(back));
    const helped = record(back, { type: "help-asked", at: at(901) }).session;
    expect(words(helped)).toContain("closed the stop tap");
    const measuring = changeAnswer(
      closed,
      closed.log.events.findIndex((event) => "turn" in event && event.turn === "flow-test.run"),
      at(900),
    );
    expect(turn(measuring)).toBe(reopen);
  });

  test("is opened again before ice is waited for, and the wait begins after that", () => {
    const asked = follow(start, binFull, reopen);
    expect(memoryOf(asked).waits).not.toHaveProperty("wait-for-ice.wait");
    const waiting = take(asked, "opened");
    expect(turn(waiting)).toBe("wait-for-ice.wait");
    expect(memoryOf(waiting).waits["wait-for-ice.wait"]).toBe(waiting.log.events.at(-1)?.at);
  });

  test("that drips when it is opened is closed again, and a plumber is called", () => {
    const ended = take(take(closed, "cannot"), "drips");
    expect([turn(ended), memoryOf(ended).cause, memoryOf(ended).who]).toEqual([
      "professional.end",
      "joint-leaks",
      "plumber",
    ]);
    expect(words(ended)).toContain("Leave the stop tap closed");
  });

  test("that can't be opened keeps no ice waited for, and the ending says that it is closed", () => {
    for (const answer of ["cannot", "not-sure"]) {
      const ended = follow(take(follow(start, binFull, reopen), answer), tubeSeen);
      expect(turn(ended)).toBe("professional.end");
      expect(words(ended)).toContain("You closed the stop tap");
    }
  });

  test("is spoken of at every early way out: opened when help is called or ice comes, left closed in danger", () => {
    const endingOn = (event: object) => words(record(closed, { ...event, at: at(900) } as never).session);
    expect(endingOn({ type: "help-asked" })).toMatch(/You closed the stop tap[\s\S]*Open it again/);
    expect(endingOn({ type: "ice-returned" })).toMatch(/You closed the stop tap[\s\S]*Open it again/);
    const stopped = endingOn({ type: "danger-reported", danger: "gas" });
    expect(stopped).toContain("Leave the stop tap closed");
    expect(stopped).not.toMatch(/open it/i);
  });

  test("is not spoken of where nobody closed it", () => {
    const fresh = follow(start, healthy, "door-seal.look");
    expect(words(record(fresh, { type: "help-asked", at: at(900) }).session)).not.toContain("stop tap");
  });
});

describe("a tap closed because of a leak", () => {
  test("stays closed for a damaged line, until the part is in", () => {
    const low = { ...healthy, "flow-test.run": flowOf(5), "supply-line.look": "damaged" };
    const model = follow(start, low, "part.model");
    const card = record(model, {
      type: "model-given",
      turn: "part.model",
      code: "TR-01",
      typed: "",
      at: at(900),
    }).session;
    expect(memoryOf(card).water).toBe("closed-by-us");
    expect(words(card)).toContain("Leave it closed until the new part is in");
    expect(words(card)).not.toMatch(/open it again/i);
  });

  test("stays closed in a search for a leak, also when help is asked for at once", () => {
    const stopped = follow(start, leak, "leak-where.look");
    const ended = record(stopped, { type: "help-asked", at: at(900) }).session;
    expect(words(ended)).toContain("Leave the stop tap closed");
    expect(words(ended)).not.toMatch(/open it again/i);
  });

  test("is opened again to watch whether what was put right was all", () => {
    const sealed = {
      ...leak,
      "leak-where.look": "floor",
      "tap-joint.look": "dry",
      "purge-air.run": "steady",
    };
    const asked = follow(start, sealed, reopen);
    expect(turn(asked)).toBe(reopen);
  });
});

describe("a measurement behind a gate that closes the tap", () => {
  test("is come back to by the turn that opens it", () => {
    const low = { ...healthy, "flow-test.run": flowOf(5), "flow-without-filter.prepare": "plug-fitted" };
    const left = follow(start, low, "flow-without-filter.run");
    expect(memoryOf(left).water).toBe("open");
    const back = record(left, { type: "session-resumed", at: at(900) }).session;
    expect(turn(take(back, "ready"))).toBe("flow-without-filter.prepare");
  });
});

describe("a log from before the tap was asked about", () => {
  const without = (session: Session) => ({
    ...session.log,
    events: session.log.events.filter((event) => !("turn" in event) || event.turn !== reopen),
  });

  test("goes on where it went, and the wait says that the tap was closed", () => {
    const old = without(take(take(follow(start, binFull, reopen), "opened"), "keep-checking"));
    const cut = { ...old, events: old.events.slice(0, -1) };
    const { session, dropped } = replay(guide, old);
    expect(dropped).toBe(0);
    expect(memoryOf(session).water).toBe("closed-by-us");
    expect(turn(replay(guide, cut).session)).toBe(reopen);
  });

  test("keeps the model number that it was given at the end", () => {
    const faulty = { ...healthy, "fill-tube.look": "clear", "inlet-valve.screen": "clean" };
    const low = { ...faulty, "inlet-valve.arrives": "strong", [reopen]: "opened" };
    const model = follow(start, low, "part.model");
    const { session, dropped } = replay(guide, without(model));
    expect([turn(session), dropped]).toEqual(["part.model", 0]);
  });

  test("and one from after it keeps its own order too", () => {
    const live = take(take(follow(start, binFull, reopen), "opened"), "keep-checking");
    expect(replay(guide, live.log)).toMatchObject({ dropped: 0 });
    expect(memoryOf(replay(guide, live.log).session)).toEqual(memoryOf(live));
  });
});
