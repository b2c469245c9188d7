import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Condition,
  condition,
  flowBounds,
  fold,
  foldGuard,
  guardOf,
  namesIn,
  type Statement,
} from "../../src/condition/index.ts";
import { anyCondition, anyGuard } from "./any-condition.ts";

/** A statement as a flow file writes it. */
function written({ type, params }: Statement): Condition {
  if (type === "unwaited" || type === "any-remedied") return type;
  if (type === "done") return { done: params.check };
  if (type === "found") return { found: params.causes };
  if (type === "remedied") return { remedied: params.causes };
  return { [type]: params } as Condition;
}

describe("going through a condition", () => {
  test("and putting each part back gives the same condition, which its schema takes", () => {
    fc.assert(
      fc.property(anyCondition, (one) => {
        const same = fold<Condition>(one, {
          statement: written,
          named: (is) => ({ is }),
          all: (parts) => ({ all: parts }),
          any: (parts) => ({ any: parts }),
          not: (part) => ({ not: part }),
        });
        expect(same).toEqual(one);
        expect(condition.safeParse(one).success).toBe(true);
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  test("says where each part stands", () => {
    const one: Condition = { all: ["unwaited", { not: { any: [{ done: "a" }, { is: "early" }] } }] };
    const paths: string[] = [];
    const note = (_: unknown, path: readonly (string | number)[]) => void paths.push(path.join("."));
    const pass = () => {};
    fold<void>(one, { statement: note, named: note, all: pass, any: pass, not: pass }, ["when"]);
    expect(paths).toEqual(["when.all.0", "when.all.1.not.any.0.done", "when.all.1.not.any.1"]);
    expect(namesIn(one)).toEqual([{ name: "early", path: ["all", 1, "not", "any", 1] }]);
  });
});

test("going through a guard and putting each part back gives the same guard", () => {
  fc.assert(
    fc.property(anyGuard, (guard) => {
      const same = foldGuard(guard, {
        word: (word) => word,
        all: (of) => ({ type: "all", params: { of } }),
        any: (of) => ({ type: "any", params: { of } }),
        not: (of) => ({ type: "not", params: { of } }),
      });
      expect(same).toEqual(guard);
    }),
    { numRuns: 100, seed: 12 },
  );
});

describe("a named condition", () => {
  const fault = (one: Condition, named: Record<string, Condition>) => {
    try {
      return guardOf(one, named);
    } catch (problem) {
      return problem;
    }
  };

  test("is spelled out, however many names lean on it", () => {
    const named: Record<string, Condition> = { early: { not: { is: "late" } }, late: { done: "a" } };
    const late = { type: "done", params: { check: "a" } };
    expect(guardOf({ any: [{ is: "early" }, { is: "late" }] }, named)).toEqual({
      type: "any",
      params: { of: [{ type: "not", params: { of: late } }, late] },
    });
  });

  test.each<[how: string, named: Record<string, Condition>]>([
    ["nobody wrote", {}],
    ["leans on itself", { early: { not: { is: "early" } } }],
    ["leans on itself by way of another", { early: { is: "late" }, late: { all: [{ is: "early" }] } }],
  ])("that %s is refused by its name", (_, named) => {
    expect(fault({ is: "early" }, named)).toMatchObject({ id: "early" });
  });

  test("that is a thing of every object is none", () => {
    expect(fault({ is: "constructor" }, {})).toMatchObject({ id: "constructor" });
  });

  test("that grows beyond all bounds when it is spelled out is refused before it does", () => {
    const named: Record<string, Condition> = { n0: { done: "a" } };
    for (let at = 1; at < 60; at++) named[`n${at}`] = { all: [{ is: `n${at - 1}` }, { is: `n${at - 1}` }] };
    expect(fault({ is: "n59" }, named)).toMatchObject({ id: expect.stringMatching(/^n\d+$/) });
    // What is long, and yet within them, is taken.
    const lists = Array.from({ length: flowBounds.list }, (): Condition => ({ done: "a" }));
    expect(fault({ is: "long" }, { long: { all: lists } })).toMatchObject({ type: "all" });
  });
});
