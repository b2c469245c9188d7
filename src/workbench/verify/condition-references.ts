import { type Condition, fold, namesIn, type Path } from "../../condition/index.ts";
import type { NameCheck } from "./name-check.ts";
import { standing } from "./names.ts";
import { nearest } from "./suggest.ts";

/** Judges every name in a condition. */
export function checkCondition(at: NameCheck, path: Path, condition: Condition): void {
  const nothing = () => {};
  fold<void>(
    condition,
    {
      statement: ({ type, params }, here) => {
        if (type === "answered" || type === "verdict") checkFinding(at, here, params, type === "verdict");
        else if (type === "done") at.one("check", "done", params.check, here);
        else if ("causes" in params) at.each("cause", "causes", params.causes, here);
      },
      named: (name, here) => {
        if (!at.one("condition", "condition", name, [...here, "is"])) at.repair(here, always);
      },
      all: nothing,
      any: nothing,
      not: nothing,
    },
    path,
  );
}

/** Holds whatever was found: stands in for a condition that cannot be known. */
const always: Condition = { all: [] };

/** Named conditions whose meaning leads back to themselves. */
export function checkCircles(at: NameCheck, conditions: Record<string, Condition>): void {
  const namedBy = (id: string) => {
    const condition = Object.hasOwn(conditions, id) ? conditions[id] : undefined;
    return condition === undefined ? [] : namesIn(condition).map(({ name }) => name);
  };
  for (const id of Object.keys(conditions)) {
    const met = new Set(namedBy(id));
    for (const one of met) for (const next of namedBy(one)) met.add(next);
    if (!met.has(id)) continue;
    at.report({ code: "endless-condition", path: [id], at: "key" });
    at.repair([id], always);
  }
}

type FindingNamed = { turn: string; is: string[] };

function checkFinding(at: NameCheck, path: Path, { turn, is }: FindingNamed, measured: boolean): void {
  const checks = at.names.idsOf("check");
  const [check = "", name = ""] = turn.split(".");
  const lost = (code: "unknown-check/turn" | "unknown-turn", suggestion: string | null) => {
    at.report({ code, path: [...path, "turn"], turn, suggestion });
    if (suggestion) at.repair([...path, "turn"], suggestion);
  };
  if (check !== "opening" && checks && !checks.includes(check)) {
    const near = nearest(check, [...checks, "opening"]);
    lost("unknown-check/turn", near && `${near}.${name}`);
    return;
  }
  const turns = at.names.turnsOf(check);
  if (!turns) return;
  if (!turns.includes(name)) {
    const near = nearest(name, turns);
    lost("unknown-turn", near && `${check}.${near}`);
    return;
  }
  if (measured && !at.names.takesReading(check, name)) {
    at.report({ code: "wrong-value/verdict", path: [...path, "turn"], turn });
    return;
  }
  const known = at.names.answersOf(check, name) ?? [];
  const answers = measured ? known.filter((answer) => !standing.includes(answer)) : known;
  for (const [place, answer] of is.entries()) {
    if (answers.includes(answer)) continue;
    const here = [...path, "is", place];
    const suggestion = nearest(answer, answers);
    at.report({ code: "unknown-answer", path: here, turn, answer, suggestion });
    if (suggestion) at.repair(here, suggestion);
  }
}
