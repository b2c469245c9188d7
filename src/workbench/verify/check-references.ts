import type { Check, Opening, Outcome, Path, TurnRule } from "../../guide/index.ts";
import { verdictsOf } from "../../instruments/index.ts";
import { checkStates } from "./machine-references.ts";
import type { NameCheck } from "./name-check.ts";
import { valueAt } from "./shape.ts";
import { nearest } from "./suggest.ts";

const endings = ["done", "fixed", "professional", "stopped"];

/** Judges every name in a check. */
export function checkNamesOfCheck(at: NameCheck, check: Check): void {
  checkNamesOfTurns(at, check);
  at.one("station", "station", check.station, ["station"]);
  at.one("access", "access", check.access, ["access"]);
  at.each("hazard", "hazards", check.hazards, ["hazards"]);
  at.each("gate", "gates", check.gates, ["gates"]);
  for (const [name, turn] of Object.entries(check.turns)) {
    const path = ["turns", name];
    if (turn.access) at.one("access", "access", turn.access, [...path, "access"]);
    at.each("hazard", "hazards", turn.hazards, [...path, "hazards"]);
    at.each("gate", "gates", turn.gates, [...path, "gates"]);
  }
  checkOutcomes(at, check);
}

/** Judges every name in the turns of a check, or of the opening. */
export function checkNamesOfTurns(at: NameCheck, { turns, start, greets = start }: Opening): void {
  const names = Object.keys(turns);
  for (const [key, id] of Object.entries({ start, greets }) as ["start" | "greets", string][]) {
    if (names.includes(id) || (key === "greets" && id === start)) continue;
    const suggestion = nearest(id, names);
    at.report({ code: `unknown-turn/${key}`, path: [key], id, suggestion });
    at.repair([key], suggestion ?? names[0]);
  }
  for (const [name, turn] of Object.entries(turns)) {
    const path = ["turns", name];
    checkTurn(at, path, turn);
    if (turn.then) checkTarget(at, [...path, "then"], turn.then, names);
    for (const where of ["answers", "verdicts"] as const)
      for (const [answer, outcome] of Object.entries(turn[where] ?? {}))
        checkOutcome(at, [...path, where, answer], outcome, names);
    for (const where of ["not-sure", "cannot"] as const)
      if (turn[where]) checkOutcome(at, [...path, where], turn[where], names);
  }
}

/** What a turn of each kind must have to be asked at all. */
function checkTurn(at: NameCheck, path: Path, turn: TurnRule): void {
  const needs = { choice: ["answers"], reading: ["instrument", "verdicts"], wait: ["lasts", "then"] }[
    turn.kind ?? "choice"
  ];
  for (const key of needs)
    if (valueAt(turn, [key]) === undefined) at.report({ code: "missing-key/turn", path, key });
  if (turn.picture) at.one("picture", "picture", turn.picture, [...path, "picture"]);
  if (turn.lasts) at.one("limit", "lasts", turn.lasts, [...path, "lasts"]);
  for (const [place, { after }] of (turn.inside ?? []).entries())
    if (after) at.one("limit", "after", after, [...path, "inside", place, "after"]);
  checkReading(at, path, turn);
}

/** Every verdict of the instrument leads somewhere and no other does; what it is compared with is measured. */
function checkReading(at: NameCheck, path: Path, { instrument, verdicts, against = [] }: TurnRule): void {
  const possible: readonly string[] = instrument ? verdictsOf(instrument) : [];
  const given = Object.keys(verdicts ?? {});
  for (const key of verdicts ? possible : [])
    if (!given.includes(key)) at.report({ code: "missing-key/verdict", path: [...path, "verdicts"], key });
  for (const answer of given)
    if (instrument && !possible.includes(answer))
      at.report({
        code: "unknown-answer/verdict",
        path: [...path, "verdicts", answer],
        at: "key",
        answer,
        instrument,
        suggestion: nearest(answer, possible),
      });
  for (const [place, other] of against.entries()) {
    const here = [...path, "against", place];
    const [check = "", name = ""] = other.split(".");
    if (at.names.idsOf("check")?.includes(check) && !at.names.takesReading(check, name))
      at.report({ code: "wrong-value/against", path: here, other });
    else at.one("check", "against", check, here);
  }
}

function checkOutcome(at: NameCheck, path: Path, outcome: Outcome, turns: string[]): void {
  checkTarget(at, [...path, "to"], outcome.to, [...turns, ...endings]);
  for (const word of ["finds", "remedies"] as const) {
    const here = [...path, word];
    if (outcome[word]) at.one("cause", word, outcome[word], here, here);
  }
  for (const word of ["clears", "suspects"] as const)
    at.each("station", word, outcome[word], [...path, word]);
}

function checkTarget(at: NameCheck, path: Path, to: string, known: string[]): void {
  if (known.includes(to)) return;
  const suggestion = nearest(to, known);
  at.report({ code: "unknown-target", path, to, suggestion });
  at.repair(path, suggestion ?? "done");
}

/** The outcomes of a check as one experiment: each finding in one outcome only, each cause spoken of in known words. */
function checkOutcomes(at: NameCheck, { id, by, turns, outcomes = {} }: Check): void {
  const counted = new Map<string, string>();
  const findings = Object.keys(turns).flatMap((turn) =>
    (at.names.answersOf(id, turn) ?? []).map((answer) => `${turn}.${answer}`),
  );
  const all = Object.entries(outcomes);
  for (const [name, { from, sees, shows = [], caught, says = {} }] of all) {
    for (const [place, finding] of from.entries()) {
      const path = ["outcomes", name, "from", place];
      const before = counted.get(finding);
      if (before) at.report({ code: "finding-told-twice", path, finding, before });
      counted.set(finding, name);
      if (!findings.includes(finding))
        at.report({ code: "unknown-finding", path, finding, suggestion: nearest(finding, findings) });
    }
    const path = ["outcomes", name, "says"];
    for (const [cause, word] of Object.entries(says)) {
      const here = [...path, cause];
      if (cause !== "otherwise") at.one("cause", "says/cause", cause, here, here);
      at.one("likelihood", "says", word, here, here);
    }
    at.each("cause", "says/cause", sees, ["outcomes", name, "sees"]);
    for (const [place, states] of shows.entries())
      checkStates(at, states, ["outcomes", name, "shows", place]);
    if (caught) at.one("likelihood", "says", caught, ["outcomes", name, "caught"]);
  }
  const observed = all.filter(([, { says }]) => !says?.otherwise);
  const plain = observed.filter(([, { sees, shows }]) => !sees && !shows);
  if (observed.length && !by) at.report({ code: "missing-key/by", path: ["outcomes"] });
  if (observed.length && plain.length !== 1)
    at.report({ code: "missing-key/plain", path: ["outcomes"], outcomes: plain.map(([name]) => name) });
}
