import { describe, expect, test } from "vitest";
import { type LogEvent, record, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, turnOf, viewOf } from "../../src/turn/index.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, at, flowOf, follow, healthy, inTradeOrder, take } from "../session/drive.ts";
import { readerOf } from "./reader.ts";
import { words } from "./words.ts";

const flow = ownFlow;
const start = startSession(inTradeOrder(flow), at(0));
const texts = createTexts({ "en-GB": words }, "en-GB", readerOf(flow));
const shown = (session: Session) => turnOf(session, texts, at(0));
const lowFlow: Answers = { ...healthy, "flow-test.run": flowOf(5) };

describe("a question on screen", () => {
  const bin = shown(follow(start, healthy, "ice-bin.look"));

  test("has its words, with the steps one by one and the note apart", () => {
    expect(bin).toMatchObject({
      turn: "ice-bin.look",
      kind: "choice",
      station: "ice-bin",
      heading: "Look at the bin",
      body: ["Open the drawer.", "Look in."],
      note: "It may be full.",
      why: "A full bin stops it",
    });
  });

  test("has its own answers in the order of the flow, then 'not sure' and 'can't' in its words or the usual ones", () => {
    expect(bin.answers.map(({ id, role }) => `${id} ${role}`)).toEqual([
      ...Object.keys(flow.checks["ice-bin"]?.turns.look?.answers ?? {}).map((id) => `${id} own`),
      "not-sure not-sure",
      "cannot cannot",
    ]);
    expect(bin.answers[0]?.text).toBe("All fine");
    expect(bin.answers.slice(-2).map(({ text }) => text)).toEqual(["I can't tell", "I can't"]);
  });

  test("offers no 'can't' where the flow leaves no room for it", () => {
    expect(shown(start).answers.map(({ id }) => id)).not.toContain("cannot");
  });

  test("has no gate, reading, wait or ending", () => {
    expect([bin.gate, bin.reading, bin.wait, bin.ending]).toEqual([null, null, null, null]);
  });
});

describe("a gate on screen", () => {
  const gate = shown(follow(start, lowFlow, "stop-tap.gate-water-supply"));

  test("lists every item, its facts and its words", () => {
    expect(gate.kind).toBe("gate");
    expect(gate.gate?.items.map(({ id }) => id)).toEqual(flow.gates["water-supply"]?.items);
    expect(gate.gate?.items[0]?.text).toBe("I know the tap");
    expect(gate.gate?.facts).toContain("Local codes apply");
    expect(gate.answers.map(({ id, text }) => [id, text])).toEqual([
      ["ready", "All done"],
      ["cannot", "I can't turn it off"],
    ]);
  });

  test("shows the hazards that it covers, and the step behind it shows them again as a reminder", () => {
    expect(gate.gated).toBe(false);
    expect(gate.hazards.map(({ id }) => id)).toEqual(["water-supply", "wet-floor"]);
    const step = shown(follow(start, lowFlow, "stop-tap.open"));
    expect([step.gated, step.hazards.map(({ text }) => text)]).toEqual([
      true,
      ["Water may spill", "Wet floor"],
    ]);
  });

  test("names the most severe hazard first (the order of signal words in ANSI Z535.6)", () => {
    const atValve = { ...healthy, "fill-tube.look": "clear" };
    const signals = shown(follow(start, atValve, "inlet-valve.screen")).hazards.map(({ signal }) => signal);
    const order = ["danger", "warning", "caution", "notice"];
    expect(signals).toEqual([...signals].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(new Set(signals)).toEqual(new Set(order));
  });
});

describe("an instrument on screen", () => {
  test("gets its numbers from the limits", () => {
    expect(shown(follow(start, healthy, "flow-test.run")).reading).toMatchObject({
      instrument: "flow",
      limits: {
        minimum: flow.limits["flow-minimum"]?.value,
        aimSeconds: flow.limits["flow-seconds"]?.value,
      },
    });
    expect(shown(follow(start, healthy, "freezer-temperature.read")).reading).toMatchObject({
      instrument: "temperature",
      limits: { limitC: flow.limits["freezer-for-ice"]?.value },
    });
  });

  test("that asks for a date gets today's in the person's own time zone", () => {
    const age = follow(start, healthy, "filter-age.fitted");
    const today = turnOf(age, texts, "2026-03-02T23:30:00-08:00").reading;
    expect(today).toMatchObject({ instrument: "filter-age", today: "2026-03-02" });
  });
});

describe("a wait on screen", () => {
  test("tells from when until when, a day later to the minute", () => {
    const off = { "ice-maker-switch.look": "off", "ice-maker-switch.switch-on": "switched-on" };
    const waiting = follow(start, { ...healthy, ...off }, "wait-for-ice.wait");
    const { wait, answers } = shown(waiting);
    const from = waiting.log.events.at(-1)?.at ?? "";
    expect(wait?.from).toBe(from);
    expect(Date.parse(wait?.until ?? "") - Date.parse(from)).toBe(24 * 3_600_000);
    expect(answers.map(({ id }) => id)).not.toContain("not-sure");
  });

  test("offers 'can't wait' in words of its own", () => {
    const thawing = shown(follow(start, { ...healthy, "fill-tube.look": "frozen" }, "fill-tube.thaw"));
    expect(thawing.answers.at(-1)).toEqual({ id: "cannot", text: "I can't wait", role: "cannot" });
  });
});

describe("what a screen may offer at any time", () => {
  test("is every danger of the opening, in its words", () => {
    const { dangers } = viewOf(start, texts, at(0), []);
    expect(dangers.map(({ id }) => id)).toEqual(["burning", "sparks", "water-near-socket", "gas", "shock"]);
    expect(dangers.find(({ id }) => id === "gas")?.text).toBe("Gas");
  });

  test("is offered wherever the chart takes it, and only there", () => {
    const places = [
      start,
      follow(start, healthy, "ice-bin.look"),
      follow(start, lowFlow, "stop-tap.gate-water-supply"),
      follow(start, { ...healthy, "reset.test": "nothing-moved" }, "part.model"),
      take(start, "gas"),
      record(start, { type: "help-asked", at: at(1) }).session,
    ];
    for (const session of places) {
      const takes = (event: LogEvent) => record(session, event).refusal === null;
      const { ways } = viewOf(session, texts, at(0), []);
      expect(ways.includes("ice")).toBe(takes({ type: "ice-returned", at: at(90) }));
      expect(ways.includes("help")).toBe(takes({ type: "help-asked", at: at(90) }));
      expect(ways.includes("danger")).toBe(takes({ type: "danger-reported", danger: "gas", at: at(90) }));
    }
  });
});
