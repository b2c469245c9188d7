import type { Condition } from "../../src/condition/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import { verdictOn } from "../../src/instruments/index.ts";
import type { Log } from "../../src/session/index.ts";

/** What a log says, read straight from its events and the flow's data: a second opinion that knows no chart. */
export type Facts = {
  answers: Map<string, { answer: string; measured: boolean }>;
  found: Set<string>;
  remedied: Set<string>;
  done: Set<string>;
};

export function factsOf(log: Log, flow: Flow): Facts {
  const facts: Facts = { answers: new Map(), found: new Set(), remedied: new Set(), done: new Set() };
  const again = new Set<string>();
  for (const event of log.events) {
    if (event.type !== "answered" && event.type !== "measured") continue;
    const [check = "", turn = ""] = event.turn.split(".");
    const rule = (flow.checks[check] ?? flow.opening).turns[turn];
    const known = flow.checks[check];
    if (known && !known.repeats && turn === known.start && facts.done.has(check) && !again.has(check)) {
      // A second look: what the first one found does not count any more.
      again.add(check);
      for (const one of facts.answers.keys()) if (one.startsWith(`${check}.`)) facts.answers.delete(one);
      for (const { answers, verdicts } of Object.values(known.turns))
        for (const { finds } of Object.values({ ...answers, ...verdicts })) facts.found.delete(finds ?? "");
    }
    const measured = event.type === "measured";
    const answer = measured
      ? (verdictOn(event.reading as Reading, flow.limits, event.at) ?? "unreadable")
      : event.answer;
    facts.answers.set(event.turn, { answer, measured });
    if (turn.startsWith("gate-")) {
      if (answer === "cannot") facts.done.add(check);
      continue;
    }
    const standing = answer === "not-sure" || answer === "cannot" ? rule?.[answer] : undefined;
    const outcomes: Record<
      string,
      { to: string; finds?: string | undefined; remedies?: string | undefined }
    > = (measured ? rule?.verdicts : rule?.answers) ?? {};
    const outcome = standing || (outcomes[answer] ?? { to: "done" });
    if (outcome.finds) {
      facts.found.add(outcome.finds);
      facts.remedied.delete(outcome.finds);
    }
    if (outcome.remedies) {
      // A wait that came before says nothing of what was put right after it.
      for (const { id, repeats } of Object.values(flow.checks))
        for (const one of repeats ? facts.answers.keys() : [])
          if (one.startsWith(`${id}.`)) facts.answers.delete(one);
      facts.remedied.add(outcome.remedies);
      facts.found.delete(outcome.remedies);
    }
    if (outcome.to === "done") facts.done.add(check);
  }
  return facts;
}

/** Whether a condition of flows/ holds by these facts. @throws Error for one that no proof may use. */
export function isTrue(condition: Condition, facts: Facts, flow: Flow): boolean {
  const every = (list: Condition[]) => list.map((one) => isTrue(one, facts, flow));
  if (typeof condition === "string") throw new Error(`"${condition}" proves nothing`);
  if ("answered" in condition)
    return condition.answered.is.includes(facts.answers.get(condition.answered.turn)?.answer ?? "");
  if ("verdict" in condition) {
    const finding = facts.answers.get(condition.verdict.turn);
    return finding?.measured === true && condition.verdict.is.includes(finding.answer);
  }
  if ("done" in condition) return facts.done.has(condition.done);
  if ("found" in condition) return condition.found.some((cause) => facts.found.has(cause));
  if ("remedied" in condition) return condition.remedied.some((cause) => facts.remedied.has(cause));
  if ("all" in condition) return !every(condition.all).includes(false);
  if ("any" in condition) return every(condition.any).includes(true);
  if ("not" in condition) return !isTrue(condition.not, facts, flow);
  const named = flow.conditions[condition.is];
  if (!named) throw new Error(`No condition "${condition.is}"`);
  return isTrue(named, facts, flow);
}
