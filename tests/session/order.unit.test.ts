import { describe, expect, test } from "vitest";
import { metaOf, startSession } from "../../src/session/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, at, celsius, healthy, take } from "./drive.ts";

// The order of a person at a spares counter: what is free before what needs a jug, and nothing that was just learnt.
// Common practice, no source, unless a line says otherwise.

const flow = ownFlow;
const guide = guideFor(flow);

/** How a sound machine answers; a test says what is different. */
const sound: Answers = { ...healthy, "fridge-temperature.read": celsius(4) };

type Conversation = { asked: string[]; ending: string };

/** The turns of a whole conversation, gates included, in their order. What nobody has an answer for is 'not sure'. */
function converse(opening: Answers, answers: Answers = {}): Conversation {
  const said: Answers = { ...sound, "opening.danger": "none", ...opening, ...answers };
  const asked: string[] = [];
  let session = startSession(guide, at(0));
  for (;;) {
    const { turn, kind, gate } = metaOf(session);
    if (kind === "ending" || turn === "part.model") return { asked, ending: turn.split(".")[0] ?? "" };
    asked.push(turn);
    const known = Object.keys(
      flow.checks[turn.split(".")[0] ?? ""]?.turns[turn.split(".")[1] ?? ""]?.answers ?? {},
    );
    const unknown = kind === "wait" ? (known[0] ?? "cannot") : "not-sure";
    session = take(session, said[turn] ?? (gate ? "ready" : unknown));
    if (asked.length > 60) throw new Error(`No end: ${asked.join(" ")}`);
  }
}

const noIce: Answers = {
  "opening.symptom": "no-ice",
  "opening.supply": "plumbed",
  "opening.changed": "nothing",
};
const noIceFromTank: Answers = { ...noIce, "opening.supply": "tank" };
const tooWarm: Answers = { "opening.symptom": "too-warm", "opening.changed": "nothing" };
const leaking: Answers = {
  "opening.symptom": "leaking",
  "opening.leak": "away",
  "opening.supply": "plumbed",
};
const notDispensed: Answers = { "opening.symptom": "not-dispensed" };
const clumped: Answers = { "opening.symptom": "odd-ice", "opening.odd": "clumped" };
const newFilter: Answers = { ...noIce, "opening.symptom": "after-change", "opening.changed": "new-filter" };

/** Everything of a scenario that is asked after the opening. */
const afterOpening = ({ asked }: Conversation) => asked.filter((turn) => !turn.startsWith("opening."));

const checksOf = (talk: Conversation) => [...new Set(afterOpening(talk).map((turn) => turn.split(".")[0]))];

describe("The first question", () => {
  test("of a machine with a tank is whether the tank is empty", () => {
    expect(afterOpening(converse(noIceFromTank))[0]).toBe("tank.look");
  });

  test("of a warm machine is which part of it is too warm", () => {
    expect(afterOpening(converse(tooWarm))[0]).toBe("warm-where.look");
  });

  test("of a leak, once the water is off, is where the water is found", () => {
    const [first] = checksOf(converse(leaking)).filter((check) => check !== "leak-stop");
    expect(first).toBe("leak-where");
  });
});

describe("What is free", () => {
  const measured = ["freezer-temperature", "flow-test", "tap-fill", "reset", "fridge-temperature"];

  test("comes before a thermometer, a jug and a test run: is it on, is it locked, what is in the bin", () => {
    const checks = checksOf(converse(noIce));
    const firstMeasured = checks.findIndex((check) => measured.includes(check ?? ""));
    const before = checks.slice(0, firstMeasured);
    expect(before).toEqual(expect.arrayContaining(["ice-maker-switch", "control-lock", "ice-bin"]));
  });

  test.each([
    ["no ice", noIce, ["ice-maker-switch", "control-lock", "door-closing", "ice-bin", "too-full"]],
    ["too warm", tooWarm, ["door-closing", "too-full", "cooling-settings"]],
    ["nothing comes out", notDispensed, ["control-lock", "door-closing", "ice-bin"]],
  ])("is all asked before anybody is called without a cause: %s", (_, opening, free) => {
    const talk = converse(opening);
    expect(talk.ending).toBe("professional");
    expect(checksOf(talk)).toEqual(expect.arrayContaining(free));
  });
});

describe("Nothing just learnt is asked again", () => {
  test("the age of a filter that was changed a day ago", () => {
    expect(checksOf(converse(newFilter))).not.toContain("filter-age");
  });

  test("a flush after a filter that was never changed", () => {
    expect(checksOf(converse(noIce))).not.toContain("flush");
  });

  test("lever and lock where the motor hums at the press of the lever", () => {
    const hums: Answers = { "dispense-listen.listen": "hums" };
    const { asked } = converse(notDispensed, { ...hums, "control-lock.look": "not-sure" });
    const after = asked.slice(asked.indexOf("dispense-listen.listen") + 1);
    expect(after.filter((turn) => /^(lever|control-lock)\./.test(turn))).toEqual([]);
  });

  test("six minutes of watching a tray that did not move when the button was pressed", () => {
    const { asked } = converse(noIce, { "reset.hold": "nothing", "reset.test": "nothing-moved" });
    expect(asked.filter((turn) => turn === "reset.cycle").length).toBeLessThanOrEqual(1);
  });
});

describe("A gate", () => {
  test("that somebody can't confirm is not put before them a second time", () => {
    const declined = Object.fromEntries(
      Object.values(flow.checks).flatMap(({ id, gates = [] }) =>
        gates.map((gate) => [`${id}.gate-${gate}`, "cannot"] as const),
      ),
    );
    for (const opening of [noIce, newFilter]) {
      const gates = converse(opening, declined).asked.flatMap((turn) => turn.split(".gate-")[1] ?? []);
      expect(gates).toEqual([...new Set(gates)]);
    }
  });
});

describe("What changed lately", () => {
  test.each([
    ["ice that sticks together", clumped],
    ["ice that does not come out", notDispensed],
  ])("is asked of %s: a power cut or a holiday explains much", (_, opening) => {
    expect(converse(opening).asked).toContain("opening.changed");
  });
});

describe("Who was not sure at first", () => {
  test("is asked once more what lies in the bin, though a later step of that look has a gate", () => {
    const { asked } = converse(notDispensed, {
      "dispense-listen.listen": "hums",
      "ice-bin.look": "not-sure",
    });
    expect(asked.filter((turn) => turn === "ice-bin.look")).toHaveLength(2);
  });

  test("is asked once more whether the tank has water, though that comes before any advice", () => {
    const { asked } = converse(noIceFromTank, { "tank.look": "not-sure" });
    expect(asked.filter((turn) => turn === "tank.look")).toHaveLength(2);
  });
});

describe("A leak whose water nobody can close", () => {
  const open = { "leak-stop.gate-water-supply": "cannot" };

  test("ends with a plumber where it comes from the floor, once that is known and nothing more is asked", () => {
    const talk = converse(leaking, { ...open, "leak-where.look": "floor" });
    expect([talk.ending, ...checksOf(talk)]).toEqual(["professional", "leak-stop", "leak-where"]);
  });

  test("is searched on where it shows below the drawers: the drain takes no tap", () => {
    expect(checksOf(converse(leaking, { ...open, "leak-where.look": "bottom" }))).toContain("drain");
  });
});

describe("What was put right", () => {
  test("is given time, and nobody is called, where it is likely and the person would rather not wait", () => {
    const emptied: Answers = {
      "ice-bin.look": "clumped",
      "ice-bin.tip-out": "tipped-out",
      "dispense-listen.listen": "hums",
      "wait-for-ice.wait": "keep-checking",
    };
    expect(converse(notDispensed, emptied).ending).toBe("later");
  });

  test("is waited for until there is new ice where the old one was thawed out of the bin", () => {
    const thawed: Answers = {
      "dispense-listen.listen": "hums",
      "auger.look": "frozen",
      "auger.thaw": "turns-now",
    };
    const { asked } = converse(notDispensed, thawed);
    expect(asked[asked.indexOf("auger.thaw") + 1]).toBe("wait-for-ice.wait");
  });
});
