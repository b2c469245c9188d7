import type { Check, Flow, Outcome } from "../guide/index.ts";

/** How a check comes to one of its outcomes. */
export type Route = {
  /** The shortest way through its turns, as answers in order. */
  steps: { turn: string; answer: string; rule: Outcome }[];
  /** All answers, as `turn.answer`, that some way to this outcome passes. */
  passes: string[];
  /** What it puts right, with what that cures besides. */
  fixes: string[];
  finds: string[];
  /** Hours of waiting on the way. */
  hours: number;
};

const known = new WeakMap<Check, Record<string, Route>>();

/** The routes to the outcomes of a check, by outcome. */
export function routesOf(flow: Flow, check: Check): Record<string, Route> {
  const before = known.get(check);
  if (before) return before;
  const all = [...walks(check, check.start, [])];
  const entries = Object.entries(check.outcomes ?? {}).flatMap(([outcome, { from }]) => {
    // Of several findings on a way the deepest decides, so that "loose" is not also "loose and now it leaks".
    const mine = all.filter((steps) => decisive(check, steps) === outcome);
    const steps = mine.sort((a, b) => rank(a, from) - rank(b, from) || a.length - b.length)[0];
    if (!steps) return [];
    const passes = [...new Set(mine.flat().map(({ turn, answer }) => `${turn}.${answer}`))];
    const causes = (of: "remedies" | "finds") => [...new Set(steps.flatMap(({ rule }) => rule[of] ?? []))];
    const mended = causes("remedies");
    const fixes = [...new Set([...mended, ...mended.flatMap((cause) => flow.causes[cause]?.cures ?? [])])];
    const hours = steps.reduce((sum, { turn }) => sum + hoursOf(flow, check, turn), 0);
    return [[outcome, { steps, passes, fixes, finds: causes("finds"), hours }] as const];
  });
  const routes = Object.fromEntries(entries);
  known.set(check, routes);
  return routes;
}

type Steps = Route["steps"];

/** The outcome of a finished way, by its last finding that means one. */
function decisive(check: Check, steps: Steps): string | undefined {
  for (const { turn, answer } of [...steps].reverse()) {
    const found = Object.entries(check.outcomes ?? {}).find(([, { from }]) =>
      from.includes(`${turn}.${answer}`),
    );
    if (found) return found[0];
  }
  return undefined;
}

/** Ways by the outcome's first-named finding come first: that is the one its author thought of. */
function rank(steps: Steps, from: readonly string[]): number {
  const places = steps
    .map(({ turn, answer }) => from.indexOf(`${turn}.${answer}`))
    .filter((place) => place >= 0);
  return Math.min(...places);
}

function* walks(check: Check, turn: string, before: Steps): Generator<Steps> {
  const rule = check.turns[turn];
  const answers: Record<string, Outcome> = { ...rule?.answers, ...rule?.verdicts };
  for (const standing of ["not-sure", "cannot"] as const) {
    const outcome = rule?.[standing];
    // Standing answers that lead on within the check are ways too; those that end it say nothing.
    if (outcome && check.turns[outcome.to]) answers[standing] = outcome;
  }
  for (const [answer, outcome] of Object.entries(answers)) {
    const steps = [...before, { turn, answer, rule: outcome }];
    const seen = before.some((step) => step.turn === outcome.to);
    if (check.turns[outcome.to] && !seen) yield* walks(check, outcome.to, steps);
    else yield steps;
  }
}

function hoursOf(flow: Flow, check: Check, turn: string): number {
  const limit = flow.limits[check.turns[turn]?.lasts ?? ""];
  return limit ? limit.value / (limit.unit === "h" ? 1 : 60) : 0;
}
