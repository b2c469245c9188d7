import { describe, expect, test } from "vitest";
import {
  changeAnswer,
  memoryOf,
  metaOf,
  record,
  resume,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { createTexts, turnOf } from "../../src/turn/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";
import { type Answers, at, follow, healthy, inTradeOrder, runsOut, take } from "./drive.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);
const start = startSession(guide, at(0));
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
function words(session: Session): string {
  const { body, ending } = turnOf(session, texts, at(0));
  return [...body, ...(ending?.back ?? [])].join("\n");
}
const turn = (session: Session) => metaOf(session).turn;
const helped = (session: Session) => words(record(session, { type: "help-asked", at: at(9000) }).session);

describe("a plug that is pulled within a turn", () => {
  const still: Answers = { ...healthy, "reset.test": "nothing-moved" };
  const asked = follow(start, still, "reset.unplug");

  test("is out for whoever can't say whether it is back in, and is asked about next", () => {
    const unsure = take(asked, "not-sure");
    expect(memoryOf(unsure).prepared.plug?.is).toBe("out");
    expect(helped(unsure)).toContain("Put the plug in, or the power on");
    expect(turn(follow(unsure, still, "put-back.all"))).toBe("put-back.all");
  });

  test("is in for whoever put it back, also after a reload", () => {
    const back = take(asked, "was-out");
    expect(memoryOf(back).prepared.plug?.is).not.toBe("out");
    expect(turn(resume(guide, back.log, at(9000)).session)).toBe("reset.hold-again");
  });

  test("is no way past a danger: water at the socket stops all, whatever was shown", () => {
    expect(words(asked)).toContain("Touch nothing if there's water near the plug or socket");
    expect(turnOf(asked, texts, at(0)).note).toContain("choose “Danger?”");
  });

  test("stands in for the lock and the switch, and goes back in before anything that needs power", () => {
    const dumb: Answers = { ...healthy, "opening.symptom": "not-dispensed", "lever.look": "moves" };
    const unlocked = { ...dumb, "dispense-listen.listen": "light-only", "auger.look": "turns" };
    const lever = follow(start, { ...unlocked, "chute-flap.look": "clear" }, "lever.look");
    expect(helped(take(lever, "moves"))).toContain("Switch the control lock off, or put the plug back in");
  });
});

describe("a machine without power", () => {
  const dark = follow(start, { ...healthy, "power.light": "dead" }, "power.plug");

  test("that trips its switch again, or stays dead, ends the search at once", () => {
    for (const [answer, cause] of [
      ["trips-again", "power-trips"],
      ["stays-dead", "stays-dead"],
    ] as const) {
      const ended = take(dark, answer);
      expect([metaOf(ended).outcome, memoryOf(ended).cause, memoryOf(ended).who]).toEqual([
        "professional",
        cause,
        "appliance-engineer",
      ]);
    }
  });

  test("has its plug put back before it is looked at again", () => {
    const unsure = take(dark, "not-sure");
    expect(memoryOf(unsure).prepared.plug?.is).toBe("out");
    expect(turn(unsure)).toBe("put-back.all");
  });
});

describe("water and power that were turned off for a leak", () => {
  const wet: Answers = {
    ...healthy,
    "opening.symptom": "leaking",
    "opening.leak": "water-near-socket",
    "opening.leak-power": "power-off",
    "leak-stop.stops": "stops",
  };

  test("are both spoken of when help is asked for, the power only for where all is dry", () => {
    const said = helped(follow(start, wet, "leak-where.look"));
    expect(said).toContain("Leave the small tap closed");
    expect(said).toContain("Make sure all is dry around the plug.\nPut the plug in, or the power on");
  });

  test("stay in mind when an earlier answer is changed", () => {
    const back = changeAnswer(follow(start, wet, "leak-where.look"), 5, at(9000)).session;
    expect(helped(back)).toContain("the power on");
  });

  test("the tap is closed again by whoever sees it leak again", () => {
    const away: Answers = {
      ...wet,
      "opening.leak": "away",
      "leak-where.look": "floor",
      "purge-air.run": "steady",
      "drain.look": "free",
    };
    const watching = follow(
      start,
      { ...away, "tap-joint.look": "drips", "tap-joint.tighten": "dry-now", "watch-leak.fill": runsOut },
      "watch-leak.filled",
    );
    expect(memoryOf(watching).prepared.water?.is).toBe("open");
    expect(helped(take(watching, "wet"))).toContain("Leave the small tap closed");
  });
});
