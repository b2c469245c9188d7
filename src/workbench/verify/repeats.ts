import { guardOf, type Statement, type Truth, truthOf } from "../../condition/index.ts";
import type { Check, Flow } from "../../guide/index.ts";
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
      const guard = when && guardOf(when, flow.conditions);
      const endless = coursesOf(rule).some(
        (course) => !guard || truthOf(guard, (word) => isSo(word as Statement, rule, course)) !== false,
      );
      if (!endless) continue;
      const message = `Check "${check}" repeats in scenario "${scenario.id}" although an answer leaves its condition as it was: it would be asked for ever.`;
      report("loop-without-exit", `scenarios/${scenario.id}.yaml`, ["checks", place], message);
    }
}

/** Whether a statement is so after a course; null where the course does not decide it. */
function isSo({ type, params }: Statement, check: Check, course: Course): Truth {
  switch (type) {
    case "unwaited":
      return course.waited === null ? null : !course.waited;
    case "any-remedied":
      return course.fixed.size > 0 || null;
    case "done":
      return params.check === check.id || null;
    case "found":
      return params.causes.some((cause) => course.found.has(cause)) || null;
    case "remedied":
      return params.causes.some((cause) => course.fixed.has(cause)) || null;
    default: {
      const [id, name = ""] = params.turn.split(".");
      const answer = id === check.id ? course.answers.get(name) : undefined;
      return answer === undefined ? null : params.is.includes(answer);
    }
  }
}
