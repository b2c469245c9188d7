import type { Note, TurnMeta } from "../../chart/index.ts";
import { type Preparation, preparations, statesIn } from "../../guide/index.ts";
import { placeOf } from "../../instruments/index.ts";
import { literal } from "./scxml-guards.ts";

/** The data model: what guards can ask and what an ending rests on, with the values before the first answer. */
export const memory: Record<string, string> = {
  findings: "{}",
  measured: "{}",
  read: "{}",
  causes: "{}",
  done: "[]",
  again: "[]",
  mended: "[]",
  untried: "[]",
  fitted: "[]",
  advice: "null",
  now: "null",
  waits: "{}",
  remedies: "0",
  remediesAtWait: "0",
  returnTo: "null",
  prepared: "{}",
  confirmed: "{}",
  refused: "[]",
  lastFixed: "null",
  cause: "null",
  who: "null",
  danger: "null",
  model: "null",
};

type Assignment = [place: string, expr: string];

/** What a transition notes down, as assignments in an order that gives the same memory as the chart's own. */
export function compileNote(note: Note, event: string | null, meta: TurnMeta | undefined): Assignment[] {
  const all: Assignment[] = [];
  const put = (place: string, expr: string) => all.push([place, expr]);
  const word = (value: string | null) => (value === null ? "null" : literal(value));
  // A transition without an event may begin a wait, and not every interpreter still knows the event by then.
  if (event !== null) {
    put("now", "_event.data.at");
    put("advice", "_event.data.advice");
  }
  if (note.turn && note.answer) {
    put(`findings[${literal(note.turn)}]`, literal(note.answer));
    if (meta?.instrument) {
      put(`measured[${literal(note.turn)}]`, String(event === "measured"));
      const place = placeOf(meta.instrument, meta);
      if (place && event === "measured") put(`read[${literal(note.turn)}]`, `[${literal(place)}, now]`);
    }
  }
  if (note.forgets) put("findings", without(note.forgets));
  if (note.again) {
    put("again", `again.concat([${literal(note.again.check)}])`);
    put("findings", without([note.again.check]));
    for (const cause of note.again.found)
      put(`causes[${literal(cause)}]`, `causes[${literal(cause)}] === 'fixed' ? 'fixed' : null`);
  }
  if (note.fitted) put("fitted", "fitted.concat([cause])");
  if (note.cause !== undefined) put("cause", word(note.cause));
  if (note.finds) put(`causes[${literal(note.finds)}]`, "'found'");
  if (note.remedies) {
    put(`causes[${literal(note.remedies)}]`, "'fixed'");
    put("remedies", "remedies + 1");
    put("untried", `untried.concat([${literal(note.remedies)}])`);
    put("lastFixed", literal(note.remedies));
    put("mended", `mended.concat([${literal(note.turn?.split(".")[0] ?? "")}])`);
  }
  // Owed to what this very answer put right, where it did, so it comes after the remedy of the same note.
  if (note.creditsLastFix) put("cause", "lastFixed");
  if (note.done)
    put(
      "done",
      `done.filter(function (one) { return one !== ${literal(note.done)}; }).concat([${literal(note.done)}])`,
    );
  if (note.waitStarts) put(`waits[${literal(note.waitStarts)}]`, "now");
  if (note.inVain) put("untried", "[]");
  if (note.waited) put("remediesAtWait", "remedies");
  if (note.returnTo !== undefined) put("returnTo", word(note.returnTo));
  if (note.who) put("who", literal(note.who));
  if (note.calls === "by-belief")
    put("who", "advice !== null && advice.call && advice.call.who ? advice.call.who : who");
  if (note.danger) put("danger", literal(note.danger));
  for (const [one, state] of statesIn(note.leaves)) {
    const place = `prepared[${literal(one)}]`;
    put(place, `${preparedAfter(one, state)}`);
  }
  if (note.returns) put("confirmed", "{}");
  if (note.confirms) put(`confirmed[${literal(note.confirms)}]`, "now");
  if (note.refuses) put("refused", `refused.concat([${literal(note.refuses)}])`);
  if (event === "model-given") put("model", "_event.data.code");
  return all;
}

/** How a preparation stands after a step: a state that goes on keeps the instant at which it began. */
function preparedAfter(one: Preparation, state: string): string {
  const place = `prepared[${literal(one)}]`;
  const { ours, left } = preparations[one];
  const changed = `{ is: ${literal(state)}, since: now }`;
  const same = `${place} && ${place}.is === ${literal(state)}`;
  if (state === ours) return `${same} ? ${place} : ${changed}`;
  const may = state === left ? `${place} && ${place}.is === ${literal(ours)}` : place;
  return `(${may}) && !(${same}) ? ${changed} : ${place}`;
}

/** The findings without those of some checks, whose turns all begin with the check's name. */
function without(checks: string[]): string {
  const own = `[${checks.map(literal).join(", ")}].indexOf(turn.split('.')[0])`;
  return `Object.keys(findings).reduce(function (kept, turn) { if (${own} < 0) kept[turn] = findings[turn]; return kept; }, {})`;
}
