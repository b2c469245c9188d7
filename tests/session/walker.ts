import type { TurnMeta } from "../../src/chart/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import {
  advance,
  changeAnswer,
  metaOf,
  putBack,
  record,
  resume,
  type Session,
  type Standing,
  startAgain,
} from "../../src/session/index.ts";
import { sound } from "../compile/scenario-paths.ts";
import { answerTo, at } from "./drive.ts";

/** One step that a walker took; `session` is what it led to. */
export type Step = {
  did: string;
  refused: boolean;
  newVisit: boolean;
  session: Session;
  /** Its journal, in which it lies as it was led to. */
  standing: Standing;
};

/** How a person who does anything at all might go on; each number of a walk decides one thing. */
export type Dice = (sides: number) => number;

/** Dice from a list of numbers; when those run out, every throw is a nought. */
export function diceOf(numbers: readonly number[]): Dice {
  let place = 0;
  return (sides) => (numbers[place++] ?? 0) % sides;
}

/**
 * One random step at `minutes` after the start: mostly a real answer of the turn, with the opening leading into
 * any of the scenarios; now and then nonsense, a report of danger or ice, or a call for help. With `wandering`
 * also a closed page, a change of an earlier answer (later ones that fit are kept) or a new start.
 */
export function wander(
  { session, standing }: Pick<Step, "session" | "standing">,
  minutes: number,
  dice: Dice,
  wandering: boolean,
): Step {
  const when = at(minutes);
  const lastId = Number(standing.journal.entries.at(-1)?.id ?? 0);
  let ids = lastId;
  const newId = () => `${++ids}`;
  const step = (did: string, led: Session, newVisit = false, held: number[] = []): Step => {
    const refused = led === session;
    const next = refused || newVisit ? led : putBack(led, standing.held, when);
    return {
      did,
      refused,
      newVisit,
      session: next,
      standing: advance(standing, next.log, when, newId, held),
    };
  };
  const chance = dice(100);
  if (wandering && chance < 4)
    return step("left and came back", resume(session.guide, copyOf(session.log), when).session, true);
  if (wandering && chance < 8) {
    const places = session.log.events.flatMap((event, place) => ("turn" in event ? [place] : []));
    const place = places[dice(Math.max(places.length, 1))];
    if (place !== undefined) {
      const { session: changed, held } = changeAnswer(session, place, when);
      return step(`changed answer ${place}`, changed, true, held);
    }
  }
  if (wandering && chance < 9) {
    const again = startAgain(standing, session, when, newId());
    return {
      did: "started again",
      refused: false,
      newVisit: true,
      session: again.session,
      standing: advance(again.standing, again.session.log, when, newId),
    };
  }
  if (chance > 98) {
    const odd = [
      { type: "help-asked", at: when },
      { type: "ice-returned", at: when },
      { type: "danger-reported", danger: "burning", at: when },
      { type: "wait-ended", at: when },
    ] as const;
    const event = odd[dice(odd.length)] ?? odd[0];
    return step(event.type, record(session, event).session);
  }
  const { turn, kind } = metaOf(session);
  if (kind === "model") {
    const code = dice(2) ? "TR-01" : null;
    return step(
      `gave ${code}`,
      record(session, { type: "model-given", turn, code, typed: "tr 01", at: when }).session,
    );
  }
  const answer = answerFor(session, dice);
  return step(JSON.stringify(answer), record(session, answerTo(session, answer, when)).session);
}

/** The log as it comes back from storage. */
export function copyOf<T>(log: T): T {
  return JSON.parse(JSON.stringify(log));
}

/** What must be equal where two sessions are equal. */
export function standOf({ snapshot, log }: Session): string {
  return JSON.stringify([snapshot.value, snapshot.context, snapshot.status, log.events]);
}

function answerFor(session: Session, dice: Dice): string | Reading {
  const meta = metaOf(session);
  const { turn, kind, answers = [], gate } = meta;
  // Half of the time nothing is wrong: else no walk came as far as the water side. A danger would end most at once,
  // a wait whose ice comes many; the rest of the opening leads everywhere alike.
  if (turn === "opening.danger" && dice(40)) return "none";
  const fine = kind === "wait" || turn.startsWith("opening.") ? undefined : sound[turn];
  if (typeof fine === "string" && dice(2)) return fine;
  if (kind === "reading" && dice(8)) return anyReading(meta, dice);
  if (gate) return dice(4) ? "ready" : "cannot";
  const options = [...answers, "not-sure", "cannot"];
  return options[dice(options.length)] ?? "cannot";
}

/** A reading of any size, some of them past belief. */
function anyReading({ instrument, place }: Partial<TurnMeta>, dice: Dice): Reading {
  if (instrument === "supply")
    return dice(2)
      ? {
          kind: "supply",
          by: "fill",
          volume: dice(20),
          unit: dice(2) ? "l" : "us-gal",
          seconds: 1 + dice(90),
        }
      : { kind: "supply", by: "gauge", value: dice(120), unit: dice(2) ? "psi" : "kPa" };
  if (instrument === "ice")
    return {
      kind: "ice",
      by: (["pieces", "weight", "batches"] as const)[dice(3)] ?? "pieces",
      amount: dice(200),
      unit: dice(2) ? "g" : "oz",
      hours: dice(60),
      wanted: (["little", "some", "much", null] as const)[dice(4)] ?? null,
    };
  if (instrument === "cubes")
    return { kind: "cubes", pieces: dice(30), mass: dice(300), unit: dice(2) ? "g" : "oz" };
  if (instrument === "seal") {
    const states = ["grips", "drags", "slips", null] as const;
    const many = dice(4);
    const spots = Array.from({ length: 12 }, () => (dice(4) > many ? "grips" : (states[dice(4)] ?? null)));
    return { kind: "seal", door: (["one", "two", "drawer"] as const)[dice(3)] ?? "one", spots };
  }
  if (instrument === "flow") {
    const units = ["ml", "g", "us-cup", "us-fl-oz"] as const;
    const runs = Array.from({ length: 1 + dice(2) }, () => {
      const unit = units[dice(4)] ?? "ml";
      return { volume: dice(unit === "ml" || unit === "g" ? 400 : 12), unit, seconds: 2 + dice(20) };
    });
    return { kind: "flow", runs };
  }
  if (instrument === "temperature")
    return {
      kind: "temperature",
      value: dice(50) - 40,
      unit: dice(3) ? "C" : "F",
      with: dice(2) ? "display" : "thermometer",
      place,
    };
  const month = `${2024 + dice(3)}-${`${1 + dice(12)}`.padStart(2, "0")}`;
  return { kind: "filter-age", fitted: dice(2) ? { by: "month", month } : { by: "since-moving", month } };
}

/** True at an ending. */
export function isOver(session: Session): boolean {
  return metaOf(session).kind === "ending";
}
