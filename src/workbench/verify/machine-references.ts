import type { Machine, Path, Spread, States } from "../../guide/index.ts";
import type { NameCheck } from "./name-check.ts";

/** Quantities follow only those before them, and every state that is named is one of theirs. */
export function checkQuantities(at: NameCheck, quantities: Machine["quantities"]): void {
  const before: string[] = [];
  for (const [id, { follows = [] }] of Object.entries(quantities)) {
    for (const [place, { when = {}, is }] of follows.entries()) {
      const path = [id, "follows", place];
      checkStates(at, when, [...path, "when"]);
      for (const other of Object.keys(when))
        if (Object.hasOwn(quantities, other) && !before.includes(other)) {
          at.report({ code: "quantity-upstream", path: [...path, "when", other], at: "key", id: other });
          at.repair([...path, "when", other]);
        }
      checkSpread(at, id, is, [...path, "is"]);
    }
    before.push(id);
  }
}

export function checkComplaints(at: NameCheck, complaints: Machine["complaints"]): void {
  for (const [complaint, quantities] of Object.entries(complaints))
    for (const [quantity, spread] of Object.entries(quantities)) {
      const path = [complaint, quantity];
      if (isThere(at, quantity, path)) checkSpread(at, quantity, spread, path);
    }
}

export function checkDisturbances(at: NameCheck, causes: Machine["causes"]): void {
  for (const [cause, { lately = {}, does = {} }] of Object.entries(causes)) {
    at.one("cause", "shares", cause, [cause], [cause]);
    const changes = at.names.answersOf("opening", "changed");
    for (const answer of Object.keys(lately))
      if (changes && !changes.includes(answer)) {
        const path = [cause, "lately", answer];
        at.report({ code: "unknown-answer", path, at: "key", turn: "opening.changed", answer });
        at.repair(path);
      }
    for (const [quantity, spread] of Object.entries(does)) {
      const path = [cause, "does", quantity];
      if (isThere(at, quantity, path)) checkSpread(at, quantity, spread, path);
    }
  }
}

/** Judges what a check shows. */
export function checkStates(at: NameCheck, states: States, path: Path): void {
  for (const [quantity, named] of Object.entries(states)) {
    const here = [...path, quantity];
    if (isThere(at, quantity, here))
      for (const [place, state] of named.entries()) checkState(at, quantity, state, [...here, place]);
  }
}

function checkSpread(at: NameCheck, quantity: string, spread: Spread, path: Path): void {
  for (const state of Object.keys(spread)) checkState(at, quantity, state, [...path, state]);
  if (Object.values(spread).some((chance) => chance > 0)) return;
  at.report({ code: "spread-of-nothing", path, at: "key" });
  at.repair(path);
}

function isThere(at: NameCheck, quantity: string, path: Path): boolean {
  at.one("quantity", "quantity", quantity, path, path);
  return at.names.statesOf(quantity) !== null;
}

function checkState(at: NameCheck, quantity: string, id: string, path: Path): void {
  const states = at.names.statesOf(quantity);
  if (!states || states.includes(id)) return;
  at.report({
    code: "unknown-state",
    path,
    id,
    quantity,
    ...(path.at(-1) === id ? { at: "key" as const } : {}),
  });
  at.repair(path);
}
