import type { Condition } from "../guide/index.ts";
import type { ChartContext, ChartEvent } from "./memory.ts";

/** A guard as it stands in the composed chart: a name of the closed vocabulary and its parameters. */
export type Guard = { type: string; params: Record<string, unknown> };

/**
 * Writes a condition as a guard of the chart, named conditions spelled out.
 * @throws Error for a condition that names itself, which the verifier reports before anyone gets here.
 */
export function guardOf(
  condition: Condition,
  named: Record<string, Condition>,
  within: string[] = [],
): Guard {
  const nested = (list: Condition[]) => list.map((one) => guardOf(one, named, within));
  if (typeof condition === "string") return { type: condition, params: {} };
  if ("answered" in condition) return { type: "answered", params: condition.answered };
  if ("verdict" in condition) return { type: "verdict", params: condition.verdict };
  if ("done" in condition) return { type: "done", params: { check: condition.done } };
  if ("found" in condition) return { type: "found", params: { causes: condition.found } };
  if ("remedied" in condition) return { type: "remedied", params: { causes: condition.remedied } };
  if ("all" in condition) return { type: "all", params: { of: nested(condition.all) } };
  if ("any" in condition) return { type: "any", params: { of: nested(condition.any) } };
  if ("not" in condition) return { type: "not", params: { of: guardOf(condition.not, named, within) } };
  const meaning = named[condition.is];
  if (!meaning || within.includes(condition.is))
    throw new Error(`Condition "${condition.is}" has no meaning`);
  return guardOf(meaning, named, [...within, condition.is]);
}

type Test = (context: ChartContext, params: never, event: ChartEvent) => boolean;

/** The vocabulary, each word as a pure test of what the session remembers. */
export const vocabulary: Record<string, Test> = {
  answered: (context, { turn, is }: { turn: string; is: string[] }) => {
    const finding = context.findings[turn];
    return finding !== undefined && is.includes(finding.answer);
  },
  verdict: (context, { turn, is }: { turn: string; is: string[] }) => {
    const finding = context.findings[turn];
    return finding?.reading !== undefined && is.includes(finding.answer);
  },
  done: (context, { check }: { check: string }) => context.done.includes(check),
  found: (context, { causes }: { causes: string[] }) => causes.some((one) => context.causes[one] === "found"),
  remedied: (context, { causes }: { causes: string[] }) =>
    causes.some((one) => context.causes[one] === "fixed"),
  "any-remedied": (context) => context.remedies > 0,
  unwaited: (context) => context.remedies > context.remediesAtWait,
  returning: (context, { turn }: { turn: string }) => context.returnTo === turn,
  modelled: (context) => context.model !== null,
  elapsed: (context, { turn, minutes }: { turn: string; minutes: number }, event) =>
    Date.parse(event.at) - Date.parse(context.waits[turn] ?? event.at) >= minutes * 60_000,
  "may-look-again": ({ done, again, mended }, { check }: { check: string }) =>
    done.includes(check) && done.at(-1) !== check && !again.includes(check) && !mended.includes(check),
  water: ({ water }, { is }: { is: string[] }) => is.includes(water),
  led: (_, { to }: { to?: string }, { advice }) =>
    advice?.led === true && (to === undefined || to === advice.check),
  advised: (_, { check }: { check: string }, { advice }) => advice?.check === check,
  "part-advised": (_, { cause }: { cause: string }, { advice }) => advice?.part === cause,
  all: (context, { of }: { of: Guard[] }, event) => of.every((one) => holds(context, one, event)),
  any: (context, { of }: { of: Guard[] }, event) => of.some((one) => holds(context, one, event)),
  not: (context, { of }: { of: Guard }, event) => !holds(context, of, event),
};

/** True when the guard holds in this context. @throws Error for a word outside the vocabulary. */
export function holds(context: ChartContext, guard: Guard, event: ChartEvent): boolean {
  const test = vocabulary[guard.type];
  if (!test) throw new Error(`"${guard.type}" is not a guard`);
  return test(context, guard.params as never, event);
}

/** The turns whose findings make a guard hold, in order; of alternatives only those that hold themselves. */
export function turnsBehind(context: ChartContext, guard: Guard): string[] {
  if (guard.type === "not" || !holds(context, guard, noEvent)) return [];
  const { turn, of = [] } = guard.params as { turn?: string; of?: Guard[] };
  return [...(turn === undefined ? [] : [turn]), ...of.flatMap((one) => turnsBehind(context, one))];
}

/** What was found holds whatever happens next. */
const noEvent: ChartEvent = { type: "", at: "" };
