import type { Check, Condition, Flow } from "../../guide/index.ts";
import { type Course, coursesOf } from "./courses.ts";
import type { Report } from "./report.ts";

/**
 * Checks that come again as often as their condition holds, where some course through them leaves it holding: the
 * person would be asked the same for ever. What a course does not surely change counts as unchanged.
 */
export function findEndlessRepeats(flow: Flow, report: Report): void {
  for (const scenario of Object.values(flow.scenarios))
    for (const [place, { check, when }] of scenario.checks.entries()) {
      const rule = flow.checks[check];
      if (!rule?.repeats) continue;
      const endless = coursesOf(rule).some((course) => !when || judge(when, flow, rule, course) !== false);
      if (!endless) continue;
      const message = `Check "${check}" repeats in scenario "${scenario.id}" although an answer leaves its condition as it was: it would be asked for ever.`;
      report("loop-without-exit", `scenarios/${scenario.id}.yaml`, ["checks", place], message);
    }
}

/** Whether a condition holds after a course; null where the course does not decide it. */
function judge(condition: Condition, flow: Flow, check: Check, course: Course): boolean | null {
  const of = (one: Condition) => judge(one, flow, check, course);
  if (condition === "unwaited") return course.waited === null ? null : !course.waited;
  if (condition === "any-remedied") return course.fixed.size > 0 || null;
  if ("not" in condition) return deny(of(condition.not));
  if ("all" in condition) return every(condition.all.map(of));
  if ("any" in condition) return deny(every(condition.any.map((one) => deny(of(one)))));
  if ("is" in condition) return of(flow.conditions[condition.is] ?? { all: [] });
  if ("done" in condition) return condition.done === check.id || null;
  if ("found" in condition) return condition.found.some((cause) => course.found.has(cause)) || null;
  if ("remedied" in condition) return condition.remedied.some((cause) => course.fixed.has(cause)) || null;
  const { turn, is } = "answered" in condition ? condition.answered : condition.verdict;
  const [id, name = ""] = turn.split(".");
  const answer = id === check.id ? course.answers.get(name) : undefined;
  return answer === undefined ? null : is.includes(answer);
}

const deny = (value: boolean | null) => (value === null ? null : !value);
const every = (values: (boolean | null)[]) =>
  values.includes(false) ? false : values.includes(null) ? null : true;
