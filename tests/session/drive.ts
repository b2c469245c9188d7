import { createListAdviser } from "../../src/advice/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import { type Guide, type LogEvent, metaOf, record, type Session, stillSo } from "../../src/session/index.ts";
import { guideFor } from "../compiled-once.ts";

/** A guide that asks in the trade's order and greets nobody, for tests that are not about what comes next. */
export function inTradeOrder(flow: Flow): Guide {
  const { greets: _, ...opening } = flow.opening;
  const plain = ungreeted.get(flow) ?? { ...flow, opening };
  ungreeted.set(flow, plain);
  return guideFor(plain, createListAdviser);
}

/** Many files ask for the same one. */
const ungreeted = new WeakMap<Flow, Flow>();

/** What a householder answers at a turn: an answer's id, a reading, or that a wait ran to its end. */
export type Answers = Record<string, string | Reading>;

/** At a wait: nothing is answered, its time comes. */
export const runsOut = "(runs out)";

/** An instant some minutes after the session began, at an offset of the reader's own. */
export function at(minutes: number, offset = "+00:00"): string {
  const local = Date.parse("2026-03-02T08:00:00Z") + minutes * 60_000 + hours(offset) * 3_600_000;
  return new Date(local).toISOString().replace(".000Z", offset);
}

function hours(offset: string): number {
  return Number(`${offset.slice(0, 1)}1`) * (Number(offset.slice(1, 3)) + Number(offset.slice(4)) / 60);
}

/** Two runs on kitchen scales: W4's limit of 15 ml/s is far from any of the values used here. */
export const flowOf = (perSecond: number): Reading => ({
  kind: "flow",
  runs: [
    { volume: perSecond * 10, unit: "g", seconds: 10 },
    { volume: perSecond * 10, unit: "g", seconds: 10 },
  ],
});

export const celsius = (value: number): Reading => ({
  kind: "temperature",
  value,
  unit: "C",
  with: "thermometer",
});

/** The house supply by a large vessel, so that the limits of 4 and 9 l/min are far from any of the values used here. */
export const litresPerMinute = (value: number): Reading => ({
  kind: "supply",
  by: "fill",
  volume: value,
  unit: "l",
  seconds: 60,
});

/** What a gauge at the tap shows. */
export const kilopascals = (value: number): Reading => ({ kind: "supply", by: "gauge", value, unit: "kPa" });

/** A thermometer where the ice is made. */
export const iceCelsius = (value: number): Reading => ({
  kind: "temperature",
  value,
  unit: "C",
  with: "thermometer",
  place: "ice-maker",
});

/** A glass of water in the fridge. */
export const fridgeCelsius = (value: number): Reading => ({
  kind: "temperature",
  value,
  unit: "C",
  with: "thermometer",
  place: "fridge",
});

/** A day's ice on kitchen scales, with nothing known of cold and water. */
export const kilograms = (value: number, wanted: "little" | "much" = "little"): Reading => ({
  kind: "ice",
  by: "weight",
  amount: value,
  unit: "kg",
  hours: 24,
  wanted,
});

/** Ten pieces on kitchen scales. */
export const gramsEach = (value: number): Reading => ({
  kind: "cubes",
  pieces: 10,
  mass: value * 10,
  unit: "g",
});

/** A paper strip all round the door; `slipping` are the places where it slipped, clockwise from the top left corner. */
export const strips = (...slipping: number[]): Reading => ({
  kind: "seal",
  door: "one",
  spots: Array.from({ length: 12 }, (_, spot) => (slipping.includes(spot) ? "slips" : "grips")),
});

export const fittedOn = (date: string): Reading => ({ kind: "filter-age", fitted: { by: "date", date } });

/** A plumbed machine with nothing wrong that a look could find, and no ice. */
export const healthy: Answers = {
  "opening.danger": "none",
  "opening.symptom": "no-ice",
  "opening.supply": "plumbed",
  "opening.changed": "nothing",
  "power.light": "alive",
  "control-lock.look": "lock-off",
  "ice-maker-switch.look": "on",
  "running-time.since": "over-a-day",
  "cooling-settings.look": "usual",
  "door-closing.look": "closes",
  "ice-bin.look": "fine",
  "bin-arm.look": "moves",
  "ice-under-maker.look": "clear",
  "too-full.look": "room",
  "room-warmth.look": "usual",
  "ice-compartment.look": "in-freezer",
  "fan-air.feel": "blows",
  "filter-kind.look": "same",
  "door-seal.look": "sound",
  "door-seal.feel": "no-draught",
  "freezer-temperature.read": celsius(-18),
  "reset.find": "found",
  "reset.hold": "nothing",
  "reset.cycle": "finished",
  "reset.test": "moved-dry",
  "reset.unplug": "was-out",
  "reset.hold-again": "held",
  "reset.cycle-again": "finished",
  "reset.test-again": "nothing-again",
  "ice-place-cold.read": iceCelsius(-18),
  "freezer-now.read": celsius(-18),
  "filter-age.fitted": fittedOn("2026-02-01"),
  "flow-test.run": flowOf(25),
  "tap-fill.fill": litresPerMinute(15),
  "filter-seated.look": "seated",
  "stop-tap.open": "was-open",
  "supply-line.look": "sound",
  "flow-without-filter.have": "have-plug",
  "tap-reopen.open": "opened",
  "put-back.all": "back",
};

/** The event by which a person gives this answer at the session's turn; a gate gets all its items ticked. */
export function answerTo(session: Session, answer: string | Reading, when: string): LogEvent {
  const { turn, gate, short } = metaOf(session);
  if (typeof answer !== "string") return { type: "measured", turn, reading: answer as never, at: when };
  const items = short ? [stillSo] : gate ? session.flow.gates[gate]?.items : undefined;
  return { type: "answered", turn, answer, ...(items ? { items } : {}), at: when };
}

/** Takes one answer, a minute after the last one. @throws Error where the session refuses it. */
export function take(session: Session, answer: string | Reading): Session {
  const { turn, lasts = 0 } = metaOf(session);
  const { started, events } = session.log;
  const passed = (Date.parse(events.at(-1)?.at ?? started) - Date.parse(at(0))) / 60_000;
  const event: LogEvent =
    answer === runsOut
      ? { type: "wait-ended", at: at(passed + lasts) }
      : answerTo(session, answer, at(passed + 1));
  const { session: next, refusal } = record(session, event);
  if (refusal) throw new Error(`${turn} refuses ${JSON.stringify(answer)}: ${refusal}`);
  return next;
}

/**
 * Answers turn after turn until an ending, or until the turn `stop`. Gates are confirmed unless told otherwise.
 * @throws Error at a turn without an answer, and at one that comes up a second time
 */
export function follow(start: Session, answers: Answers, stop?: string): Session {
  let session = start;
  const asked = new Set<string>();
  for (;;) {
    const { turn, kind } = metaOf(session);
    if (turn === stop || kind === "ending") return session;
    if (asked.has(turn) && !/^(wait-for-ice|tap-reopen|put-back)/.test(turn))
      throw new Error(`${turn} came up again`);
    asked.add(turn);
    const answer = answers[turn] ?? (kind === "gate" ? "ready" : undefined);
    if (answer === undefined) throw new Error(`No answer for ${turn}`);
    session = take(session, answer);
  }
}
