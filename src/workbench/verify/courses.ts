import type { Check, Opening, Outcome } from "../../guide/index.ts";
import { outcomesOfTurn } from "./scope.ts";

/** What one course through a check has surely changed by the time it is done. */
export type Course = {
  answers: ReadonlyMap<string, string>;
  fixed: ReadonlySet<string>;
  found: ReadonlySet<string>;
  /** Whether the last thing put right was waited for; null where nothing of the kind happened. */
  waited: boolean | null;
};

/** Every course from the start to `done`, no turn met twice; one more for each gate that is declined. */
export function coursesOf(check: Check | Opening): Course[] {
  const blank: Course = { answers: new Map(), fixed: new Set(), found: new Set(), waited: null };
  const gates = "gates" in check ? (check.gates ?? []) : [];
  const courses: Course[] = gates.map((gate) => ({
    ...blank,
    answers: new Map([[`gate-${gate}`, "cannot"]]),
  }));
  const follow = (turn: string, before: Course) => {
    const rule = check.turns[turn];
    if (!rule || before.answers.has(turn)) return;
    const entered = { ...before, waited: rule.waits ? true : before.waited };
    for (const [answer, outcome] of outcomesOfTurn(rule)) {
      const course = after(entered, turn, answer, outcome);
      if (outcome.to === "done") courses.push(course);
      else follow(outcome.to, course);
    }
  };
  follow(check.start, blank);
  return courses;
}

function after(course: Course, turn: string, answer: string, { finds, remedies }: Outcome): Course {
  return {
    answers: new Map(course.answers).set(turn, answer),
    found: finds ? new Set(course.found).add(finds) : course.found,
    fixed: remedies ? new Set(course.fixed).add(remedies) : course.fixed,
    waited: remedies ? false : course.waited,
  };
}
