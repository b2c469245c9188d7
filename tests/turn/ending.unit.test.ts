import { describe, expect, test } from "vitest";
import { memoryOf, record, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, turnOf, viewOf } from "../../src/turn/index.ts";
import { ownFlow } from "../own-flow.ts";
import {
  type Answers,
  at,
  celsius,
  flowOf,
  follow,
  healthy,
  inTradeOrder,
  runsOut,
  take,
} from "../session/drive.ts";
import { readerOf } from "./reader.ts";
import { words } from "./words.ts";

const flow = ownFlow;
const start = startSession(inTradeOrder(flow), at(0));
const texts = createTexts({ "en-GB": words }, "en-GB", readerOf(flow));
const shown = (session: Session) => turnOf(session, texts, at(0));
const lowFlow: Answers = { ...healthy, "flow-test.run": flowOf(5) };

describe("an ending on screen", () => {
  const broken = { ...healthy, "reset.test": "nothing-moved" };

  test("with a part names its kind, claim and cause, and asks for nothing more", () => {
    const model = follow(start, broken, "part.model");
    expect(shown(model)).toMatchObject({ kind: "model", heading: "Which model?", body: ["On the plate."] });
    const given = {
      type: "model-given",
      turn: "part.model",
      code: "TR-01",
      typed: "tr01",
      at: at(90),
    } as const;
    const card = record(model, given).session;
    expect(shown(card)).toMatchObject({ heading: "The ice maker is broken", answers: [] });
    expect(shown(card).ending).toMatchObject({
      outcome: "part",
      causeId: "ice-maker-faulty",
      cause: "The ice maker is broken",
      who: "",
      part: { kind: "ice-maker", name: "Ice maker", claim: "proved", claimText: "Proved", model: "TR-01" },
    });
    expect(viewOf(card, texts, at(0), []).lines.at(-1)?.answer).toBe("TR-01");
  });

  test("shows what was found, with what proves the cause marked and nothing else", () => {
    const { evidence } = shown(follow(startSession(inTradeOrder(flow), at(0), "TR-01"), broken)).ending ?? {
      evidence: [],
    };
    const proving = evidence.filter(({ proves }) => proves).map(({ turn }) => turn);
    expect(proving.sort()).toEqual([
      "control-lock.look",
      "cooling-settings.look",
      "ice-bin.look",
      "ice-maker-switch.look",
      "ice-place-cold.read",
      "ice-under-maker.look",
      "reset.hold-again",
      "reset.test",
      "reset.test-again",
      "reset.unplug",
    ]);
    expect(evidence.map(({ turn }) => turn)).toContain("door-seal.look");
    expect(evidence.find(({ turn }) => turn === "ice-bin.look")).toMatchObject({
      check: "Bin",
      found: "All fine",
    });
  });

  test("counts only the way in which a cause was proved, where there are two", () => {
    const warm: Answers = {
      ...healthy,
      "reset.find": "cannot",
      "door-closing.look": "stays-open",
      "door-closing.blocked-front": "cleared",
      "door-closing.again": "closes-now",
      "freezer-temperature.read": celsius(-5),
      "freezer-temperature.colder": "set-colder",
      "wait-for-ice.wait": runsOut,
      "wait-for-ice.came": "no-ice",
      "freezer-again.read": celsius(-5),
    };
    const { causeId, evidence } = shown(follow(start, warm)).ending ?? { causeId: "", evidence: [] };
    expect(causeId).toBe("cooling-fault");
    expect(evidence.filter(({ proves }) => proves).map(({ turn }) => turn)).toEqual(["freezer-again.read"]);
  });

  test("leaves gates and the question for danger out of the evidence", () => {
    const stuck = follow(start, { ...lowFlow, "stop-tap.open": "will-not-turn" });
    const { who, evidence } = shown(stuck).ending ?? { who: "", evidence: [] };
    expect(who).toBe("A plumber: the tap is stuck");
    expect(evidence.filter(({ turn }) => /gate-|danger/.test(turn))).toEqual([]);
  });

  test("without a cause says that none was found, and whom to ask", () => {
    const help = record(start, { type: "help-asked", at: at(1) }).session;
    expect(shown(help).heading).toBe("We did not find it");
    expect(shown(help).ending).toMatchObject({ causeId: null, who: "The shop: hello", part: null });
  });

  test("at a person's wish keeps the cause that was proved already", () => {
    const card = follow(startSession(inTradeOrder(flow), at(0), "TR-01"), broken);
    const help = record(card, { type: "help-asked", at: at(95) }).session;
    expect(shown(help)).toMatchObject({ heading: "The ice maker is broken" });
    expect(shown(help).ending).toMatchObject({
      causeId: "ice-maker-faulty",
      who: "The shop: hello",
      part: null,
    });
  });

  test("for safety says what to do, and names no cause and no part", () => {
    const stopped = shown(take(start, "gas"));
    expect(stopped).toMatchObject({
      heading: "Leave the house",
      body: ["Open a window.", "Leave."],
      answers: [],
    });
    expect(stopped.ending).toMatchObject({ outcome: "stopped", cause: "", part: null });
  });

  test("as fixed credits what was put right last", () => {
    const blockedBefore = { "door-closing.look": "stays-open", "door-closing.blocked-front": "cleared" };
    const full = { "ice-bin.look": "full", "ice-bin.empty": "emptied" };
    const answers = { ...healthy, ...blockedBefore, "door-closing.again": "closes-now", ...full };
    const session = follow(start, answers, "too-full.look");
    expect(memoryOf(session).causes).toEqual({ "door-blocked": "fixed", "bin-full": "fixed" });
    const fixed = record(session, { type: "ice-returned", at: at(90) }).session;
    expect(shown(fixed).ending).toMatchObject({ outcome: "fixed", cause: "It was the full bin" });
    expect(memoryOf(fixed).cause).toBe("bin-full");
  });
});
