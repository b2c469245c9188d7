import type { Turn } from "../../../src/turn/index.ts";
import { hooks, measure } from "./answers/index.ts";
import { said } from "./errors.ts";
import type { Scene } from "./scene.ts";

/** What these people send: an answer, a confirmed gate, a reading, no model code, or that they wait. */
export type Reply =
  | { answer: string; items?: string[] }
  | { reading: object }
  | { code: null }
  | { wait: true };

/** @param unknown takes the id of a turn that has no rule here */
export function replyTo(scene: Scene, turn: Turn, at: string, unknown: (id: string) => void): Reply {
  const own = turn.answers.filter(({ role }) => role === "own").map(({ id }) => id);
  const has = (id: string) => turn.answers.some((answer) => answer.id === id);
  const instead = (wished: string) =>
    has(wished) ? wished : has("not-sure") ? "not-sure" : has("cannot") ? "cannot" : (own.at(-1) ?? wished);
  if (turn.kind === "model") return { code: null };
  if (turn.kind === "gate") return confirm(scene, turn);
  if (turn.kind === "wait") return waits(scene, turn) ? { wait: true } : { answer: wontWait(turn, own) };
  if (turn.turn.startsWith("opening."))
    return { answer: instead(openingAnswer(scene, turn.turn) ?? "not-sure") };
  if (turn.kind === "reading") {
    const { instrument } = turn.reading ?? { instrument: "" };
    const place = (turn.reading as { place?: "freezer" | "fridge" } | null)?.place ?? "freezer";
    const measured = measure(scene, { turn: turn.turn, instrument, place, at });
    return typeof measured === "string" ? { answer: instead(measured) } : { reading: measured };
  }
  const hook = hooks[turn.turn];
  if (!hook) {
    unknown(turn.turn);
    return { answer: instead("not-sure") };
  }
  const truth = hook.truth(scene, own);
  if (truth === null) return { answer: instead("cannot") };
  if (!has(truth)) unknown(`${turn.turn}:${truth}`);
  return { answer: instead(said(scene, turn.turn, hook.way, truth, own)) };
}

/** Whether what each item of a gate asks can be done here, by what the items are about. */
function confirm({ home, person, machine, trait }: Scene, { gate, answers }: Turn): Reply {
  const items = gate?.items.map(({ id }) => id) ?? [];
  const about = (words: RegExp) => items.some((id) => words.test(id));
  if (home.wetPlug && about(/plug-out|unplug/) && answers.some(({ id }) => id === "water-near-socket"))
    return { answer: "water-near-socket" };
  const tap = machine.water === "tank" || (machine.tapInReach && trait("tap turns")() < 0.95);
  const can =
    (!about(/tap|water-off/) || tap) &&
    (!about(/two-people|move|pulled/) || person.movesMachine) &&
    (!about(/plug-out|unplug/) || person.reachesPlug || person.movesMachine) &&
    (!about(/circuit|panel|cover/) || person.takesPanelOff);
  return can ? { answer: "ready", items } : { answer: "cannot" };
}

/** A quarter of an hour everybody waits; hours not all. */
function waits({ person }: Scene, turn: Turn): boolean {
  const minutes = turn.wait ? (Date.parse(turn.wait.until) - Date.parse(turn.wait.from)) / 60_000 : 0;
  return minutes <= 30 || person.waits;
}

/** The way on without waiting; the answers that say it has come already are not theirs. */
function wontWait(turn: Turn, own: readonly string[]): string {
  const refuses = own.find((id) => /keep-checking|no-time|not-wait|go-on/.test(id));
  return refuses ?? (turn.answers.some(({ id }) => id === "cannot") ? "cannot" : "wait");
}

function openingAnswer({ home, machine, perfect, trait }: Scene, turn: string): string | null {
  const { complaint, hazard, changed } = home;
  const answers: Record<string, string> = {
    "opening.danger": hazard && hazard !== "water-near-socket" ? hazard : "none",
    "opening.wet": complaint.trouble === "leak" ? "wet" : "dry",
    "opening.leak": hazard === "water-near-socket" ? hazard : "away",
    "opening.symptom": complaint.symptom,
    "opening.bin": inBin(complaint.trouble),
    "opening.odd": complaint.odd,
    "opening.supply": machine.water,
    // Some have forgotten, some did not see that it mattered.
    "opening.changed": !perfect && changed !== "new" && trait("forgot")() < 0.1 ? "nothing" : changed,
  };
  return answers[turn] ?? null;
}

function inBin(trouble: string): string {
  if (trouble === "no-ice" || trouble === "little-ice") return "no-new";
  if (trouble === "not-dispensed") return "good-ice";
  return trouble === "clumped" || trouble === "odd-shape" || trouble === "taste"
    ? "odd-ice"
    : "something-else";
}
