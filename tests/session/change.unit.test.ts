import { describe, expect, test } from "vitest";
import {
  advance,
  changeAnswer,
  createJournal,
  memoryOf,
  metaOf,
  putBack,
  replay,
  type Session,
  type Standing,
  standingOf,
  startAgain,
  startSession,
} from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, flowOf, follow, healthy, inTradeOrder, take } from "./drive.ts";
import { copyOf, standOf } from "./walker.ts";

const guide = inTradeOrder(ownFlow);
const start = startSession(guide, at(0));
const turnOf = (session: Session) => metaOf(session).turn;
const placeOf = (session: Session, turn: string) =>
  session.log.events.findIndex((event) => "turn" in event && event.turn === turn);
const answersOf = (session: Session) =>
  session.log.events.flatMap((event) => ("turn" in event ? [event.turn] : []));

/** Changes the answer to a turn to another one, as a person does: the turn comes up, and is answered anew. */
function changeTo(session: Session, turn: string, answer: string) {
  let ids = 0;
  const newId = () => `${ids++}`;
  const before = advance(standingOf(createJournal(at(0))), session.log, at(500), newId);
  const { session: back, held, gone } = changeAnswer(session, placeOf(session, turn), at(500));
  const asked = advance(before, back.log, at(500), newId, held);
  const answered = take(back, answer);
  const next = putBack(answered, asked.held, at(501));
  const after = advance(asked, next.log, at(501), newId);
  return { back, next, gone, after };
}

const isReplayed = ({ journal }: Standing, live: Session) =>
  standOf(replay(guide, standingOf(copyOf(journal)).log).session) === standOf(live);

const waterOf = (session: Session) => memoryOf(session).prepared.water?.is;

describe("a changed answer", () => {
  const far = follow(start, healthy, "door-seal.look");

  test("keeps all later ones where they still fit, and asks what comes next", () => {
    const { next, gone, after } = changeTo(far, "ice-bin.look", "not-sure");
    expect(turnOf(next)).toBe("door-seal.look");
    expect(answersOf(next)).toEqual(answersOf(far));
    expect(gone).toEqual([]);
    expect(isReplayed(after, next)).toBe(true);
  });

  test("says of each answer that was kept which entry it repeats", () => {
    const { next, after } = changeTo(far, "ice-bin.look", "not-sure");
    const ids = new Set(after.journal.entries.map(({ id }) => id));
    const kept = next.log.events.flatMap((event) => ("kept" in event && event.kept ? [event.kept] : []));
    expect(kept.length).toBe(far.log.events.length - placeOf(far, "ice-bin.look") - 1);
    expect(kept.every((id) => ids.has(id))).toBe(true);
  });

  test("stops at a turn that comes up in between, and keeps the rest once that is answered", () => {
    let ids = 0;
    const newId = () => `${ids++}`;
    const before = advance(standingOf(createJournal(at(0))), far.log, at(500), newId);
    const { session: back, held } = changeAnswer(far, placeOf(far, "ice-bin.look"), at(500));
    const asked = advance(before, back.log, at(500), newId, held);
    const full = putBack(take(back, "full"), asked.held, at(501));
    expect(turnOf(full)).toBe("ice-bin.empty");
    const later = advance(asked, full.log, at(501), newId);
    const emptied = putBack(take(full, "cannot"), standingOf(copyOf(later.journal)).held, at(502));
    expect(answersOf(emptied)).toEqual(expect.arrayContaining(["ice-under-maker.look", "too-full.look"]));
  });

  test("drops what leads nowhere any more: those turns do not come up", () => {
    const { next, after } = changeTo(far, "opening.symptom", "leaking");
    expect(answersOf(next)).not.toContain("ice-bin.look");
    expect(after.held.map(({ event }) => event.turn)).toContain("ice-bin.look");
    expect(isReplayed(after, next)).toBe(true);
  });
});

describe("a gate and what lies behind it", () => {
  const low = { ...healthy, "flow-test.run": flowOf(5) };
  const behind = follow(start, low, "supply-line.look");

  test("are asked again, never kept", () => {
    const { next, gone, after } = changeTo(behind, "ice-bin.look", "not-sure");
    // The tap is closed and the machine pulled out by now, and what comes next needs both back.
    expect(turnOf(next)).toBe("tap-reopen.open");
    const gate = "stop-tap.gate-water-supply";
    expect(turnOf(follow(putBack(take(take(next, "opened"), "back"), after.held, at(502)), low, gate))).toBe(
      gate,
    );
    expect(gone.map((event) => "turn" in event && event.turn)).toEqual(
      expect.arrayContaining([
        "stop-tap.gate-water-supply",
        "stop-tap.open",
        "supply-line.gate-water-supply",
        "supply-line.gate-pulled-out",
      ]),
    );
    expect(isReplayed(after, next)).toBe(true);
  });

  test("are not opened by a journal that says it holds their answers", () => {
    const held = behind.log.events.flatMap((event, place) =>
      "turn" in event ? [{ id: `${place}`, event }] : [],
    );
    const atGate = follow(start, low, "stop-tap.gate-water-supply");
    expect(putBack(atGate, held, at(500))).toBe(atGate);
    const open = take(atGate, "ready");
    expect(putBack(open, held, at(500))).toBe(open);
  });

  test("leave a tap closed that the answers before the change had opened", () => {
    expect(waterOf(behind)).toBe("closed");
    const { session } = changeAnswer(behind, placeOf(behind, "supply-line.gate-water-supply"), at(500));
    expect(waterOf(session)).toBe("closed");
    expect(standOf(replay(guide, session.log).session)).toBe(standOf(session));
  });
});

test("a wait and what came of it are asked again", () => {
  const answers = { ...healthy, "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" };
  const waited = take(follow(start, answers, "wait-for-ice.wait"), "keep-checking");
  const { next, gone } = changeTo(waited, "control-lock.look", "no-lock");
  expect(turnOf(next)).toBe("wait-for-ice.wait");
  expect(gone).toMatchObject([{ turn: "wait-for-ice.wait" }]);
});

test("a new start leaves a tap closed that we had closed, and nothing else in force", () => {
  const low = follow(start, { ...healthy, "flow-test.run": flowOf(5) }, "supply-line.look");
  const before = advance(standingOf(createJournal(at(0))), low.log, at(500), () => "x");
  const { standing, session } = startAgain(before, low, at(600), "again");
  expect(turnOf(session)).toBe("opening.danger");
  expect(waterOf(session)).toBe("closed");
  expect(standing.log).toEqual({ model: null, started: at(600), events: [] });
  expect(standing.journal.entries).toHaveLength(low.log.events.length + 1);
});
