import { describe, expect, test } from "vitest";
import type { StateConfig, TurnMeta } from "../../src/chart/index.ts";
import { createWish } from "../../src/embed/wish.ts";
import { metaOf, startSession } from "../../src/session/index.ts";
import { createActions, type Suggested, type Turn, takeOffer, type View } from "../../src/turn/index.ts";
import { compiledOnce } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { turnWith, viewOf } from "../panel/gallery/turns.ts";
import { at, follow, healthy, inTradeOrder } from "../session/drive.ts";
import { openRoom } from "./live-room.ts";
import { createMemory, open } from "./open-controller.ts";

/*
 * An agent confirms no gate, records no reading, answers nothing in the householder's name and opens no hazardous step: the
 * phone is the journal's only writer.
 */

const { start, scenarios } = compiledOnce(ownFlow);

function* metasIn(states: Record<string, StateConfig>): Generator<TurnMeta> {
  for (const { meta, states: inner } of Object.values(states)) {
    if (meta?.turn) yield meta;
    yield* metasIn(inner ?? {});
  }
}

/** Every turn of every chart, as far as a suggestion may look at it. */
const metas = [start, ...scenarios].flatMap(({ chart }) => [...metasIn(chart.states)]);
const answers = ["ready", "none", "fine", "cannot", "not-sure", "gas"];
const shown = ({ turn, kind, gate, outcome }: TurnMeta): View =>
  viewOf(
    turnWith({
      turn,
      kind: kind as Turn["kind"],
      gate: gate
        ? { id: gate, short: false, signal: "danger", items: [], facts: [], next: "", minutes: 5 }
        : null,
      answers: answers.map((id) => ({ id, text: id, role: "own" as const })),
      ending: outcome ? ({ outcome } as Turn["ending"]) : null,
    }),
    { ways: ["danger", "ice", "help"] },
  );

/** All that an agent can suggest about a turn. */
const suggestionsAt = (turn: string): Suggested[] => [
  ...answers.flatMap((answer): Suggested[] => [
    { kind: "point", turn, answer },
    { kind: "propose", turn, answer, why: "" },
    { kind: "told", facts: [{ turn, answer }], words: "heard" },
  ]),
  ...Object.keys(ownFlow.checks).map((check): Suggested => ({ kind: "propose", check, why: "" })),
  { kind: "propose", ending: "fixed", why: "" },
  { kind: "propose", ending: "professional", why: "" },
  { kind: "correct", model: "WX-40B8/E", why: "" },
];

/** What a tap on a suggestion does, by the name of the householder's action; each text is there. */
function tapOn(suggested: Suggested, view: View): string[] {
  const done: string[] = [];
  const actions = createActions((name) => void done.push(name));
  const live = { lookNext: () => void done.push("lookNext") };
  takeOffer(suggested, view, (key) => key, actions, live);
  return done;
}

describe("a suggestion that is tapped", () => {
  const of = (kind: string) => metas.filter((meta) => meta.kind === kind);

  test("never answers a gate, an instrument, a wait or the question for the model, nor leads out of an ending", () => {
    for (const kind of ["gate", "reading", "wait", "model", "ending"]) {
      expect(of(kind).length, kind).toBeGreaterThan(0);
      for (const meta of of(kind))
        for (const suggested of suggestionsAt(meta.turn)) {
          const done = tapOn(suggested, shown(meta));
          expect(done, `${meta.turn} ${JSON.stringify(suggested)}`).not.toContain("answer");
          expect(done).not.toContain("confirmGate");
          expect(done).not.toContain("measure");
        }
    }
    expect(of("gate").length).toBeGreaterThan(20);
  });

  test("does one thing of the householder's at most, and that is an answer of the open question, a way out or a word", () => {
    for (const meta of metas)
      for (const suggested of suggestionsAt(meta.turn)) {
        const done = tapOn(suggested, shown(meta));
        expect(done.length).toBeLessThanOrEqual(1);
        for (const name of done)
          expect([
            "answer",
            "reportIce",
            "askForHelp",
            "tell",
            "giveModel",
            "reportDanger",
            "lookNext",
          ]).toContain(name);
      }
  });

  test("answers a plain question that is open, and no other", () => {
    const [meta] = of("choice").filter(({ turn }) => turn === "ice-bin.look");
    if (!meta) throw new Error("There is no such question");
    expect(tapOn({ kind: "propose", turn: meta.turn, answer: "fine", why: "" }, shown(meta))).toEqual([
      "answer",
    ]);
    expect(tapOn({ kind: "propose", turn: "tray.look", answer: "fine", why: "" }, shown(meta))).toEqual([]);
    expect(tapOn({ kind: "propose", turn: meta.turn, answer: "blue", why: "" }, shown(meta))).toEqual([]);
  });

  test("does nothing after a stop", () => {
    const stop = metas.find(({ outcome }) => outcome === "stopped");
    if (!stop) throw new Error("There is no stop");
    for (const suggested of suggestionsAt(stop.turn)) expect(tapOn(suggested, shown(stop))).toEqual([]);
  });

  test("reports a danger that was heard on the phone", () => {
    const view = { ...viewOf(turnWith({ turn: "ice-bin.look" })), dangers: [{ id: "gas", text: "Gas" }] };
    expect(
      tapOn({ kind: "told", facts: [{ turn: "opening.danger", answer: "gas" }], words: "" }, view),
    ).toEqual(["reportDanger"]);
  });

  test("of a name that every object has is none", () => {
    const view = viewOf(turnWith({ turn: "ice-bin.look" }));
    for (const check of ["constructor", "toString", "__proto__", "tray.look", ""])
      expect(tapOn({ kind: "propose", check, why: "" }, view)).toEqual([]);
  });
});

describe("an agent in the room", () => {
  test("changes not a byte of the journal by anything they send, at any turn on the way", () => {
    const memory = createMemory();
    const clock = { now: at(0) };
    const here = openRoom();
    const panel = open(memory, clock, null, undefined, undefined, {
      show: (view) => {
        here.state.view = view;
      },
    });
    here.letIn();
    const kinds = new Set<string>();
    for (let step = 0; step < 60; step++) {
      const { turn, ways } = here.state.view as View;
      if (!turn || turn.ending) break;
      kinds.add(turn.kind);
      const before = memory.read();
      for (const suggested of suggestionsAt(turn.turn)) {
        const { kind, ...body } = suggested;
        here.suggest(kind, body);
      }
      panel.tick();
      expect(memory.read(), turn.turn).toBe(before);
      expect(ways).toContain("danger");
      clock.now = at(step + 1);
      const own = turn.answers.map(({ id }) => id).find((id) => id === healthy[turn.turn]) ?? "not-sure";
      if (turn.gate) panel.actions.confirmGate(turn.turn, ownFlow.gates[turn.gate.id]?.items ?? []);
      else if (turn.kind === "wait") panel.actions.answer(turn.turn, "cannot");
      else panel.actions.answer(turn.turn, own);
    }
    expect([...kinds]).toEqual(expect.arrayContaining(["choice", "gate", "reading"]));
  });
});

describe("a check that is wished for", () => {
  const guide = inTradeOrder(ownFlow);
  const atBin = follow(startSession(guide, at(0)), healthy, "ice-bin.look");
  const event = { type: "answered" as const, turn: "ice-bin.look", answer: "fine", at: at(400) };
  const ledTo = (check: string) => {
    const wish = createWish();
    wish.want(check);
    const led = wish.led(atBin, event);
    return led && metaOf(led);
  };

  test("comes next where the chart allows it, always at its beginning, and at its gate where it has one", () => {
    const led = Object.keys(ownFlow.checks).flatMap((check) => ledTo(check) ?? []);
    expect(led.length).toBeGreaterThan(3);
    for (const { turn, kind, gated } of led) {
      expect(gated && kind !== "gate", turn).toBeFalsy();
      const [check = ""] = turn.split(".");
      const gates = ownFlow.checks[check]?.gates ?? [];
      if (gates[0]) expect(turn).toBe(`${check}.gate-${gates[0]}`);
    }
    expect(led.some(({ kind }) => kind === "gate")).toBe(true);
  });

  test.each(["part", "later", "professional", "fixed", "stopped", "opening", "nonsense", "constructor"])(
    "is none that is called '%s'",
    (check) => {
      expect(ledTo(check)).toBeNull();
    },
  );
});
