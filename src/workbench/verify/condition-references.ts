import type { Condition, Path } from "../../guide/index.ts";
import { standing } from "./names.ts";
import { nearest } from "./nearest.ts";
import type { Referee } from "./referee.ts";

/** Judges every name in a condition. `subject` opens the messages: what the condition belongs to. */
export function referCondition(at: Referee, path: Path, condition: Condition, subject: string): void {
  if (typeof condition === "string") return;
  if ("answered" in condition) referFinding(at, [...path, "answered"], condition.answered, subject, false);
  else if ("verdict" in condition) referFinding(at, [...path, "verdict"], condition.verdict, subject, true);
  else if ("done" in condition)
    at.refer("check", condition.done, [...path, "done"], `${subject} asks about the check`);
  else if ("found" in condition)
    at.referAll("cause", condition.found, [...path, "found"], `${subject} asks about the cause`);
  else if ("remedied" in condition)
    at.referAll("cause", condition.remedied, [...path, "remedied"], `${subject} asks about the cause`);
  else if ("is" in condition) {
    const stands = at.refer(
      "condition",
      condition.is,
      [...path, "is"],
      `${subject} asks about the condition`,
    );
    if (!stands) at.mend(path, always);
  } else if ("not" in condition) referCondition(at, [...path, "not"], condition.not, subject);
  else {
    const [word, list] =
      "all" in condition ? (["all", condition.all] as const) : (["any", condition.any] as const);
    for (const [place, one] of list.entries()) referCondition(at, [...path, word, place], one, subject);
  }
}

/** Holds whatever was found: stands in for a condition that cannot be known. */
const always: Condition = { all: [] };

/** Named conditions whose meaning leads back to themselves. */
export function referCircles(at: Referee, conditions: Record<string, Condition>): void {
  for (const id of Object.keys(conditions)) {
    const met = new Set(namesIn(conditions[id]));
    for (const one of met) for (const next of namesIn(conditions[one])) met.add(next);
    if (!met.has(id)) continue;
    at.report(
      "endless-condition",
      [id],
      `Condition "${id}" means itself, directly or by way of others.`,
      null,
      "key",
    );
    at.mend([id], always);
  }
}

type FindingNamed = { turn: string; is: string[] };

function referFinding(
  at: Referee,
  path: Path,
  { turn, is }: FindingNamed,
  subject: string,
  measured: boolean,
): void {
  const checks = at.names.idsOf("check");
  const [check = "", name = ""] = turn.split(".");
  const lost = (code: string, why: string, near: string | null) => {
    at.report(code, [...path, "turn"], `${subject} asks about "${turn}", but ${why}.`, near);
    if (near) at.mend([...path, "turn"], near);
  };
  if (check !== "opening" && checks && !checks.includes(check)) {
    const near = nearest(check, [...checks, "opening"]);
    lost("unknown-check", `there is no check "${check}"`, near && `${near}.${name}`);
    return;
  }
  const turns = at.names.turnsOf(check);
  if (!turns) return;
  if (!turns.includes(name)) {
    const near = nearest(name, turns);
    lost("unknown-turn", `check "${check}" has no turn "${name}"`, near && `${check}.${near}`);
    return;
  }
  if (measured && !at.names.takesReading(check, name)) {
    lost("wrong-value", "that turn takes no reading to have a verdict on", null);
    return;
  }
  const known = at.names.answersOf(check, name) ?? [];
  const answers = measured ? known.filter((answer) => !standing.includes(answer)) : known;
  for (const [place, answer] of is.entries()) {
    if (answers.includes(answer)) continue;
    const message = `${subject} asks whether "${turn}" was "${answer}", which is none of its answers.`;
    const near = nearest(answer, answers);
    at.report("unknown-answer", [...path, "is", place], message, near);
    if (near) at.mend([...path, "is", place], near);
  }
}

function namesIn(condition: Condition | undefined): string[] {
  if (condition === undefined || typeof condition === "string") return [];
  if ("is" in condition) return [condition.is];
  if ("not" in condition) return namesIn(condition.not);
  if ("all" in condition) return condition.all.flatMap(namesIn);
  return "any" in condition ? condition.any.flatMap(namesIn) : [];
}
