import { type Condition, fold, namesIn, type Path } from "../../condition/index.ts";
import { standing } from "./names.ts";
import { nearest } from "./nearest.ts";
import type { Referee } from "./referee.ts";

/** Judges every name in a condition. `subject` opens the messages: what the condition belongs to. */
export function referCondition(at: Referee, path: Path, condition: Condition, subject: string): void {
  fold<void>(
    condition,
    {
      statement: ({ type, params }, here) => {
        if (type === "answered" || type === "verdict")
          referFinding(at, here, params, subject, type === "verdict");
        else if (type === "done") at.refer("check", params.check, here, `${subject} asks about the check`);
        else if ("causes" in params)
          at.referAll("cause", params.causes, here, `${subject} asks about the cause`);
      },
      named: (name, here) => {
        const stands = at.refer("condition", name, [...here, "is"], `${subject} asks about the condition`);
        if (!stands) at.mend(here, always);
      },
      all: () => {},
      any: () => {},
      not: () => {},
    },
    path,
  );
}

/** Holds whatever was found: stands in for a condition that cannot be known. */
const always: Condition = { all: [] };

/** Named conditions whose meaning leads back to themselves. */
export function referCircles(at: Referee, conditions: Record<string, Condition>): void {
  for (const id of Object.keys(conditions)) {
    const namedBy = (one: string) =>
      conditions[one] ? namesIn(conditions[one]).map(({ name }) => name) : [];
    const met = new Set(namedBy(id));
    for (const one of met) for (const next of namedBy(one)) met.add(next);
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
