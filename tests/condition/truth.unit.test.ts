import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { all, any, type Guard, not, type Truth, truthOf } from "../../src/condition/index.ts";
import { anyGuard, checks } from "./any-condition.ts";

const word = (check: string): Guard => ({ type: "done", params: { check } });
const by = (known: Record<string, Truth>) => (one: Guard) => known[String(one.params.check)] ?? null;
const [yes, no, open] = [word("yes"), word("no"), word("open")];
const told = (guard: Guard) => truthOf(guard, by({ yes: true, no: false }));

describe("what is not yet known", () => {
  test.each<[guard: Guard, means: Truth]>([
    [not(open), null],
    [all(yes, open), null],
    [all(no, open), false],
    [all(open, no), false],
    [any(open, yes), true],
    [any(no, open), null],
    [all(), true],
    [any(), false],
  ])("decides only where nothing else does: %j is %s", (guard, means) => {
    expect(told(guard)).toBe(means);
  });

  test("is asked for no longer than it takes to decide", () => {
    const asked: string[] = [];
    const holds = ({ params }: Guard) => {
      asked.push(String(params.check));
      return params.check === "yes";
    };
    expect(truthOf(any(all(no, open), yes, open), holds)).toBe(true);
    expect(asked).toEqual(["no", "yes"]);
  });
});

/** Plain two-valued logic, written without ours. */
function isSo(guard: Guard, known: Record<string, boolean>): boolean {
  const { of } = guard.params as { of: Guard[] & Guard };
  if (guard.type === "not") return !isSo(of, known);
  if (guard.type === "all") return of.filter((one) => !isSo(one, known)).length === 0;
  if (guard.type === "any") return of.filter((one) => isSo(one, known)).length > 0;
  return known[String(guard.params.check)] === true;
}

/** Every way in which the checks may turn out that agrees with what is known. */
function completionsOf(known: Record<string, Truth>): Record<string, boolean>[] {
  return checks.reduce<Record<string, boolean>[]>(
    (before, check) =>
      before.flatMap((one) =>
        [true, false]
          .filter((value) => (known[check] ?? value) === value)
          .map((value) => ({ ...one, [check]: value })),
      ),
    [{}],
  );
}

const anyKnown = fc.record(
  Object.fromEntries(checks.map((check) => [check, fc.constantFrom<Truth>(true, false, null)])),
);

describe("whatever the guard", () => {
  test("says what two-valued logic says once everything is known", () => {
    fc.assert(
      fc.property(anyGuard, (guard) => {
        for (const known of completionsOf({})) expect(truthOf(guard, by(known))).toBe(isSo(guard, known));
      }),
      { numRuns: 100, seed: 1952 },
    );
  });

  test("takes nothing back: what it says of a part of the facts, it says of every completion", () => {
    let decided = 0;
    fc.assert(
      fc.property(anyGuard, anyKnown, (guard, known) => {
        const now = truthOf(guard, by(known));
        if (now === null) return;
        decided += Object.values(known).includes(null) ? 1 : 0;
        for (const later of completionsOf(known)) expect(isSo(guard, later)).toBe(now);
      }),
      { numRuns: 200, seed: 1952 },
    );
    expect(decided).toBeGreaterThan(20);
  });
});
