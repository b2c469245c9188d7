import { describe, expect, test } from "vitest";
import { record, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, turnOf, viewOf } from "../../src/turn/index.ts";
import { ownFlow } from "../own-flow.ts";
import {
  type Answers,
  at,
  celsius,
  fittedOn,
  flowOf,
  follow,
  healthy,
  inTradeOrder,
  take,
} from "../session/drive.ts";
import { readerOf } from "./reader.ts";
import { words } from "./words.ts";

const flow = ownFlow;
const start = startSession(inTradeOrder(flow), at(0));
const texts = createTexts({ "en-GB": words }, "en-GB", readerOf(flow));
const lowFlow: Answers = { ...healthy, "flow-test.run": flowOf(5) };

describe("the earlier answers", () => {
  test("are one line each, in order, with what changing one would drop", () => {
    const session = follow(
      start,
      { ...healthy, "ice-bin.look": "full", "ice-bin.empty": "emptied" },
      "too-full.look",
    );
    const { lines } = viewOf(session, texts, at(0), []);
    const empty = lines.findIndex(({ turn }) => turn === "ice-bin.empty");
    expect(lines.map(({ turn }) => turn)).toEqual(
      session.log.events.flatMap((event) => ("turn" in event ? [event.turn] : [])),
    );
    expect(lines[empty]).toEqual({
      index: empty,
      turn: "ice-bin.empty",
      title: "Emptying",
      answer: "It is empty",
      drops: lines.length - empty - 1,
      canChange: true,
    });
  });

  test("can't be changed once a danger has stopped the search", () => {
    const stopped = take(start, "gas");
    expect(viewOf(stopped, texts, at(0), []).lines.map(({ canChange }) => canChange)).toEqual([false]);
  });

  test("keep pointing at the right event of the log when other events lie between", () => {
    const step = follow(start, lowFlow, "stop-tap.open");
    const again = take(record(step, { type: "session-resumed", at: at(90) }).session, "ready");
    const last = viewOf(again, texts, at(0), []).lines.at(-1);
    expect(last).toMatchObject({
      index: again.log.events.length - 1,
      title: "Water off",
      answer: "confirmed",
    });
    expect(again.log.events[last?.index ?? 0]).toMatchObject({ turn: "stop-tap.gate-water-supply" });
  });

  test("tell a reading with its doubt and its verdict", () => {
    const answers = {
      ...lowFlow,
      "freezer-temperature.read": celsius(-5),
      "freezer-temperature.colder": "cannot",
      "filter-age.fitted": fittedOn("2025-01-15"),
    };
    const { lines } = viewOf(follow(start, answers, "stop-tap.gate-water-supply"), texts, at(0), []);
    const answerOf = (turn: string) => lines.find((line) => line.turn === turn)?.answer;
    // Thermometer ±1 K, anything between alike: within 0.98 K with 98 % (JCGM 101 6.4.2).
    expect(answerOf("freezer-temperature.read")).toBe("\u22125 °C ± 1, too warm");
    // Two runs of 50 g in 10 s: u = √((1/√3·√2)² + (5·0.1·√2)²)/20 = 0.054 ml/s, times 2.33 and 10 s = 1.3.
    expect(answerOf("flow-test.run")).toBe("50 ± 1 in 10 s, bad");
    // 15 January 2025 to 2 March 2026: 13 months and 15 days.
    expect(answerOf("filter-age.fitted")).toBe("13 to 14 months, bad");
    expect(answerOf("freezer-temperature.colder")).toBe("could not");
  });
});

describe("the ice path", () => {
  const markOf = (session: Session, station: string) =>
    turnOf(session, texts, at(0)).path.find((mark) => mark.station === station)?.state;

  test("has every station, in the order that the water takes, with the one at hand marked", () => {
    const { path } = turnOf(follow(start, healthy, "ice-bin.look"), texts, at(0));
    expect(path.map(({ station }) => station)).toEqual(flow.stations.order);
    expect(path.filter(({ here }) => here).map(({ station, name }) => [station, name])).toEqual([
      ["ice-bin", "Ice bin"],
    ]);
  });

  test("clears what was looked at and found good, and leaves the rest unseen", () => {
    const session = follow(start, healthy, "ice-under-maker.look");
    expect(markOf(session, "ice-bin")).toBe("clear");
    expect(markOf(session, "door")).toBe("clear");
    expect(markOf(session, "inlet-valve")).toBe("unseen");
  });

  test("does not clear what nobody could look at", () => {
    const session = follow(start, { ...healthy, "ice-bin.look": "not-sure" }, "ice-under-maker.look");
    expect(markOf(session, "ice-bin")).toBe("unseen");
  });

  test("keeps a fault that was found suspect until it is put right, and then says fixed", () => {
    const found = { ...healthy, "ice-bin.look": "full" };
    expect(markOf(follow(start, found, "ice-bin.empty"), "ice-bin")).toBe("suspect");
    const left = follow(start, { ...found, "ice-bin.empty": "cannot" }, "too-full.look");
    expect(markOf(left, "ice-bin")).toBe("suspect");
    const emptied = follow(start, { ...found, "ice-bin.empty": "emptied" }, "too-full.look");
    expect(markOf(emptied, "ice-bin")).toBe("fixed");
  });

  test("suspects all the water's way when too little comes, and clears it when enough does", () => {
    const way = ["stop-tap", "supply-line", "filter"];
    const low = follow(start, lowFlow, "stop-tap.gate-water-supply");
    expect(way.map((station) => markOf(low, station))).toEqual(["suspect", "suspect", "suspect"]);
    const good = follow(start, healthy, "fill-tube.gate-plug-out");
    expect(way.map((station) => markOf(good, station))).toEqual(["clear", "clear", "clear"]);
  });

  test("keeps what was put right marked so when a later check finds the station good", () => {
    const opened = { ...lowFlow, "stop-tap.open": "opened", "flow-again.run": flowOf(25) };
    expect(markOf(follow(start, opened, "wait-for-ice.wait"), "stop-tap")).toBe("fixed");
  });
});

test("a turn is made once for a day, and anew on the next", () => {
  const asked = follow(start, lowFlow, "filter-age.fitted");
  const turnAt = (now: string) => viewOf(asked, texts, now, []).turn;
  const turn = turnAt("2026-03-02T09:00:00Z");
  expect(turnAt("2026-03-02T23:00:00Z")).toBe(turn);
  expect(turn?.reading).toMatchObject({ today: "2026-03-02" });
  expect(turnAt("2026-03-03T00:10:00Z")?.reading).toMatchObject({ today: "2026-03-03" });
});
