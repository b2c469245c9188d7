import type { Check, Opening, Outcome, Path, TurnRule } from "../../guide/index.ts";
import { verdictsOf } from "../../instruments/index.ts";
import { nearest } from "./nearest.ts";
import type { Referee } from "./referee.ts";
import { valueAt } from "./shape.ts";

const endings = ["done", "fixed", "professional", "stopped"];

/** Judges every name in the opening. */
export function referOpening(at: Referee, opening: Opening): void {
  referTurns(at, opening, "The opening");
}

/** Judges every name in a check. */
export function referCheck(at: Referee, check: Check): void {
  const subject = `Check "${check.id}"`;
  referTurns(at, check, subject);
  at.refer("station", check.station, ["station"], `${subject} looks at the station`);
  at.refer("access", check.access, ["access"], `${subject} needs the access`);
  at.referAll("hazard", check.hazards ?? [], ["hazards"], `${subject} exposes to`);
  at.referAll("gate", check.gates ?? [], ["gates"], `${subject} stands behind the gate`);
  referOutcomes(at, check);
}

function referTurns(at: Referee, { turns, start }: Opening, subject: string): void {
  const names = Object.keys(turns);
  if (!names.includes(start)) {
    const near = nearest(start, names);
    at.report("unknown-turn", ["start"], `${subject} starts with "${start}", which does not exist.`, near);
    at.mend(["start"], near ?? names[0]);
  }
  for (const [name, turn] of Object.entries(turns)) {
    const path = ["turns", name];
    referTurn(at, path, turn, `${subject}, turn "${name}",`);
    if (turn.then) referTarget(at, [...path, "then"], turn.then, names, subject);
    for (const where of ["answers", "verdicts", "not-sure", "cannot"]) {
      const held = valueAt(turn, [where]);
      const single = where === "not-sure" || where === "cannot";
      const outcomes = single ? { "": held } : (held as Record<string, unknown> | undefined);
      for (const [answer, outcome] of Object.entries(outcomes ?? {}))
        if (outcome)
          referOutcome(at, [...path, where, ...(single ? [] : [answer])], outcome as Outcome, names, subject);
    }
  }
}

/** What a turn of each kind must have to be asked at all. */
function referTurn(at: Referee, path: Path, turn: TurnRule, subject: string): void {
  const needs = { choice: ["answers"], reading: ["instrument", "verdicts"], wait: ["lasts", "then"] }[
    turn.kind ?? "choice"
  ];
  for (const need of needs)
    if (valueAt(turn, [need]) === undefined) at.report("missing-key", path, `${subject} has no "${need}".`);
  if (turn.lasts) at.refer("limit", turn.lasts, [...path, "lasts"], `${subject} lasts`);
  for (const [place, { after }] of (turn.inside ?? []).entries())
    if (after)
      at.refer("limit", after, [...path, "inside", place, "after"], `${subject} shows a stage that begins`);
  referReading(at, path, turn, subject);
}

/** Every verdict of the instrument leads somewhere and no other does; what it is compared with is measured. */
function referReading(at: Referee, path: Path, turn: TurnRule, subject: string): void {
  const possible: readonly string[] = turn.instrument ? verdictsOf(turn.instrument) : [];
  const given = Object.keys(turn.verdicts ?? {});
  for (const verdict of turn.verdicts ? possible : [])
    if (!given.includes(verdict))
      at.report("missing-key", [...path, "verdicts"], `${subject} does not go on from "${verdict}".`);
  for (const verdict of given)
    if (turn.instrument && !possible.includes(verdict))
      at.report(
        "unknown-answer",
        [...path, "verdicts", verdict],
        `${subject} goes on from "${verdict}", which the instrument "${turn.instrument}" never says.`,
        nearest(verdict, [...possible]),
        "key",
      );
  for (const [place, other] of (turn.against ?? []).entries()) {
    const [check = "", name = ""] = other.split(".");
    if (at.names.idsOf("check")?.includes(check) && !at.names.takesReading(check, name))
      at.report(
        "wrong-value",
        [...path, "against", place],
        `${subject} is compared with "${other}", which takes no reading.`,
      );
    else at.refer("check", check, [...path, "against", place], `${subject} is compared with the check`);
  }
}

function referOutcome(at: Referee, path: Path, outcome: Outcome, turns: string[], subject: string): void {
  referTarget(at, [...path, "to"], outcome.to, [...turns, ...endings], subject);
  for (const word of ["finds", "remedies"] as const)
    if (outcome[word])
      at.refer("cause", outcome[word], [...path, word], `${subject} ${word}`, [...path, word]);
  for (const word of ["clears", "suspects"] as const)
    at.referAll("station", outcome[word] ?? [], [...path, word], `${subject} ${word}`);
}

function referTarget(at: Referee, path: Path, to: string, known: string[], subject: string): void {
  if (known.includes(to)) return;
  const near = nearest(to, known);
  at.report("unknown-target", path, `${subject} goes to "${to}", which does not exist.`, near);
  at.mend(path, near ?? "done");
}

/** The outcomes of a check as one experiment: each finding in one outcome only, each cause spoken of in known words. */
function referOutcomes(at: Referee, { id, turns, outcomes = {} }: Check): void {
  const told = new Map<string, string>();
  const findings = Object.keys(turns).flatMap((turn) =>
    (at.names.answersOf(id, turn) ?? []).map((answer) => `${turn}.${answer}`),
  );
  for (const [name, { from, says }] of Object.entries(outcomes)) {
    const subject = `Check "${id}", outcome "${name}",`;
    for (const [place, finding] of from.entries()) {
      const path = ["outcomes", name, "from", place];
      const twice = told.get(finding);
      if (twice)
        at.report(
          "finding-told-twice",
          path,
          `${subject} counts "${finding}", which outcome "${twice}" counts already.`,
        );
      told.set(finding, name);
      if (!findings.includes(finding))
        at.report(
          "unknown-finding",
          path,
          `${subject} comes from "${finding}", which the check cannot find.`,
          nearest(finding, findings),
        );
    }
    const path = ["outcomes", name, "says"];
    for (const [cause, word] of Object.entries(says)) {
      if (cause !== "otherwise")
        at.refer("cause", cause, [...path, cause], `${subject} speaks of the cause`, [...path, cause]);
      at.refer("likelihood", word, [...path, cause], `${subject} says`, [...path, cause]);
    }
    if (!says.otherwise)
      at.report("missing-key", path, `${subject} has no "otherwise" for the causes that it does not name.`);
  }
}
