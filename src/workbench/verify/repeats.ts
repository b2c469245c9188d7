import { guardOf, type Statement, type Truth, truthOf } from "../../condition/index.ts";
import type { Check, Flow } from "../../guide/index.ts";
import { type PathThrough, pathsThrough } from "./paths-through.ts";
import type { Report } from "./report.ts";

/**
 * Checks that come again as often as their condition holds, where some path through them leaves it holding: the
 * person would be asked the same for ever. What a path does not surely change counts as unchanged.
 */
export function findEndlessRepeats(flow: Flow, report: Report): void {
  for (const scenario of Object.values(flow.scenarios))
    for (const [place, { check, when }] of scenario.checks.entries()) {
      const rule = flow.checks[check];
      if (!rule?.repeats) continue;
      const guard = when && guardOf(when, flow.conditions);
      const endless = pathsThrough(rule).some(
        (path) => !guard || truthOf(guard, (word) => isSo(word as Statement, rule, path)) !== false,
      );
      if (!endless) continue;
      const file = `scenarios/${scenario.id}.yaml`;
      report({ code: "loop-without-exit/repeats", file, path: ["checks", place], check });
    }
}

/** Whether a statement is so after a path; null where the path does not decide it. */
function isSo({ type, params }: Statement, check: Check, path: PathThrough): Truth {
  switch (type) {
    case "unwaited":
      return path.waited === null ? null : !path.waited;
    case "any-remedied":
      return path.fixed.size > 0 || null;
    case "done":
      return params.check === check.id || null;
    case "found":
      return params.causes.some((cause) => path.found.has(cause)) || null;
    case "remedied":
      return params.causes.some((cause) => path.fixed.has(cause)) || null;
    default: {
      const [id, name = ""] = params.turn.split(".");
      const answer = id === check.id ? path.answers.get(name) : undefined;
      return answer === undefined ? null : params.is.includes(answer);
    }
  }
}
