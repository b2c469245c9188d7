import { type ChartConfig, type ChartContext, createMemory, holds, remember } from "../chart/index.ts";

/** A way through the opening: its answers in order, what is remembered then, and the state that it leads to. */
export type OpeningWay = { answers: string[]; memory: ChartContext; to: string };

/** Every way to answer the opening, however short. @param chart the opening's own */
export function openingWays(chart: ChartConfig): OpeningWay[] {
  const { opening, routing } = chart.states;
  const ways: OpeningWay[] = [];
  const open: OpeningWay[] = [{ answers: [], memory: createMemory(), to: `opening/${opening?.initial}` }];
  for (const way of open) {
    ways.push(way);
    const turn = opening?.states?.[way.to.replace("opening/", "")];
    for (const [type, given] of Object.entries(turn?.on ?? {})) {
      const [event, answer] = type.split(".");
      const [transition] = [given].flat();
      if (event !== "answered" || !answer || !transition) continue;
      const at = { type, at: "2026-01-01T00:00:00Z" };
      const notes = (transition.actions ?? []).map(({ params }) => params);
      const memory = notes.reduce((before, note) => remember(before, note, at), way.memory);
      const routed = routing?.always?.find(({ guard }) => !guard || holds(memory, guard, at));
      const target = transition.target === "#routing" ? (routed?.target ?? "") : transition.target;
      open.push({ answers: [...way.answers, answer], memory, to: target.slice(1) });
    }
  }
  return ways;
}

/** So few scenarios are worth being made ready before it is known which it will be. */
const fewAhead = 2;

/**
 * The few scenarios that the opening can still lead to once some of it is answered, by those answers, joined by blanks.
 * Left out where one answer less leaves the same.
 */
export function scenariosAhead(ways: OpeningWay[], scenarios: readonly string[]): Record<string, string[]> {
  // Where each beginning can lead, in one pass over the ways.
  const ends = new Map<string, Set<string>>();
  for (const { answers, to } of ways)
    for (let some = 0; some <= answers.length; some++) {
      const begins = answers.slice(0, some).join(" ");
      ends.set(begins, (ends.get(begins) ?? new Set()).add(to));
    }
  const after = (answers: string[]) => {
    const reached = ends.get(answers.join(" "));
    return scenarios.filter((id) => reached?.has(id));
  };
  return Object.fromEntries(
    ways.flatMap(({ answers, to }) => {
      const [left, before] = [after(answers), after(answers.slice(0, -1))];
      const isNews = left.length > 0 && left.length <= fewAhead && left.length < before.length;
      return to.startsWith("opening/") && isNews ? [[answers.join(" "), left]] : [];
    }),
  );
}
