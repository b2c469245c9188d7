import type { Check, Opening, Outcome } from "../../guide/index.ts";
import { outcomesOfTurn } from "./scope.ts";

/** What one path through a check has surely changed by the time it is done. */
export type PathThrough = {
  answers: ReadonlyMap<string, string>;
  fixed: ReadonlySet<string>;
  found: ReadonlySet<string>;
  /** Whether the last thing put right was waited for; null where nothing of the kind happened. */
  waited: boolean | null;
};

/** Every path from the start to `done`, no turn met twice; one more for each gate that is declined. */
export function pathsThrough(check: Check | Opening): PathThrough[] {
  const blank: PathThrough = { answers: new Map(), fixed: new Set(), found: new Set(), waited: null };
  const own = Object.values(check.turns).flatMap((turn) => turn.gates ?? []);
  const gates = new Set([...("gates" in check ? (check.gates ?? []) : []), ...own]);
  const paths: PathThrough[] = [...gates].map((gate) => ({
    ...blank,
    answers: new Map([[`gate-${gate}`, "cannot"]]),
  }));
  const follow = (turn: string, before: PathThrough) => {
    const rule = check.turns[turn];
    if (!rule || before.answers.has(turn)) return;
    const entered = { ...before, waited: rule.waits ? true : before.waited };
    for (const [answer, outcome] of outcomesOfTurn(rule)) {
      const path = after(entered, turn, answer, outcome);
      if (outcome.to === "done") paths.push(path);
      else follow(outcome.to, path);
    }
  };
  follow(check.start, blank);
  return paths;
}

function after(path: PathThrough, turn: string, answer: string, { finds, remedies }: Outcome): PathThrough {
  return {
    answers: new Map(path.answers).set(turn, answer),
    found: finds ? new Set(path.found).add(finds) : path.found,
    fixed: remedies ? new Set(path.fixed).add(remedies) : path.fixed,
    waited: remedies ? false : path.waited,
  };
}
