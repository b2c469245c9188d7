import { foldGuard, type Guard, truthOf } from "../condition/index.ts";
import type { Preparation, Prepared } from "../guide/index.ts";
import { statesIn } from "../guide/index.ts";
import { placeOf } from "../instruments/index.ts";
import type { ChartContext, ChartEvent } from "./memory.ts";

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
  "last-read": ({ findings }, { place, is }: { place: string; is: string[] }) => {
    const there = Object.values(findings).filter(
      ({ reading }) => reading && placeOf(reading.kind, reading as { place?: string }) === place,
    );
    const last = there.sort((one, other) => Date.parse(one.at) - Date.parse(other.at)).at(-1);
    return last !== undefined && is.includes(last.answer);
  },
  prepared: ({ prepared }, { of, is }: { of: Preparation; is: string[] }) =>
    is.includes(prepared[of]?.is ?? "as-found"),
  fresh: isFresh,
  "any-confirmed": ({ confirmed }) => Object.keys(confirmed).length > 0,
  refused: ({ refused }, { gates }: { gates: string[] }) => gates.some((gate) => refused.includes(gate)),
  led: (_, { to }: { to?: string }, { advice }) =>
    advice?.led === true && (to === undefined || to === advice.check),
  advised: (_, { check }: { check: string }, { advice }) => advice?.check === check,
  fitted: ({ fitted }, { causes }: { causes: string[] }) => causes.some((one) => fitted.includes(one)),
  untried: ({ untried }) => untried.length > 0,
  "later-advised": (_, __: object, { advice }) => advice?.later === true,
  "part-advised": (_, { cause }: { cause: string }, { advice }) => advice?.part === cause,
  all: (context, params, event) => holds(context, { type: "all", params }, event),
  any: (context, params, event) => holds(context, { type: "any", params }, event),
  not: (context, params, event) => holds(context, { type: "not", params }, event),
};

type Fresh = { gate: string; minutes: number; leaves: Prepared };

/** True while a gate's full confirmation, by the same person, is no older than that and nothing has undone it. */
function isFresh(
  { confirmed, prepared }: ChartContext,
  { gate, minutes, leaves }: Fresh,
  { at, by = "" }: ChartEvent,
): boolean {
  const last = Object.hasOwn(confirmed, gate) ? confirmed[gate] : undefined;
  if (!last || last.by !== by) return false;
  const passed = Date.parse(at) - Date.parse(last.at);
  if (!(passed >= 0 && passed <= minutes * 60_000)) return false;
  return statesIn(leaves).every(([one, state]) => {
    const stand = prepared[one];
    return stand?.is === state && Date.parse(stand.since) <= Date.parse(last.at);
  });
}

/** True when the guard holds in this context. @throws Error for a word outside the vocabulary. */
export function holds(context: ChartContext, guard: Guard, event: ChartEvent): boolean {
  const test = ({ type, params }: Guard): boolean => {
    if (!Object.hasOwn(vocabulary, type)) throw new Error(`"${type}" is not a guard`);
    return vocabulary[type]?.(context, params as never, event) ?? false;
  };
  return joins(guard, test);
}

/** Whether a guard holds, by what is said of each word in it; for words that this vocabulary cannot test alone. */
export function joins(guard: Guard, test: (word: { type: string; params: never }) => boolean): boolean {
  return truthOf(guard, test as (word: Guard) => boolean) === true;
}

/** The turns whose findings make a guard hold, in order; of alternatives only those that hold themselves. */
export function turnsBehind(context: ChartContext, guard: Guard): string[] {
  // What was found holds whatever happens next.
  const noEvent: ChartEvent = { type: "", at: "" };
  const turns = foldGuard<string[] | null>(guard, {
    word: (word) => (holds(context, word, noEvent) ? [word.params.turn ?? []].flat().map(String) : null),
    all: (parts) => (parts.includes(null) ? null : parts.flatMap((part) => part ?? [])),
    any: (parts) => (parts.some(Array.isArray) ? parts.flatMap((part) => part ?? []) : null),
    not: (part) => (part ? null : []),
  });
  return turns ?? [];
}
