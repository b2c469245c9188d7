import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Belief,
  chooseNext,
  createBelief,
  failedFix,
  type Model,
  probabilities,
  updateBelief,
} from "../../src/diagnosis/index.ts";
import { smallModel } from "./random-models.ts";
import {
  atStart,
  everyday,
  modelOf,
  onlyChecks,
  perfectChecks,
  permutations,
  sure,
} from "./worked-models.ts";

const all = (model: Model) => model.checks.map(({ id }) => id);

/** The order in which checks are asked while every one of them finds nothing. */
function orderWhileSound(model: Model, stakes = onlyChecks): string[] {
  const order: string[] = [];
  let belief = createBelief();
  for (;;) {
    const allowed = all(model).filter((id) => !order.includes(id));
    const choice = chooseNext(model, belief, allowed, { ...atStart, done: order }, stakes);
    if (!("next" in choice)) return order;
    order.push(choice.next);
    belief = updateBelief(model, belief, choice.next, "sound");
  }
}

/** ECR = Σᵢ Cᵢ(1 − Σ_{j<i} pⱼ), Heckerman, Breese & Rommelse, CACM 38(3), 1995. */
function expectedCost(order: readonly number[], p: readonly number[], costs: readonly number[]): number {
  let left = 1;
  return order.reduce((sum, one) => {
    const paid = sum + (costs[one] ?? 0) * left;
    left -= p[one] ?? 0;
    return paid;
  }, 0);
}

describe("with perfect, independent checks and no waits", () => {
  test("p = (.5, .3, .2) and C = (10, 2, 1) are asked 3, 2, 1 at an expected cost of 7.6 (W13)", () => {
    const model = perfectChecks([0.5, 0.3, 0.2], [10, 2, 1]);
    expect(orderWhileSound(model)).toEqual(["3", "2", "1"]);
    expect(chooseNext(model, createBelief(), all(model), atStart, onlyChecks).cost).toBeCloseTo(7.6, 2);
  });

  test("p = (.6, .4) and C = (50, 20) are asked 2, 1: 142 with repairs of 100 and 80, against 150 (W15)", () => {
    const model = perfectChecks([0.6, 0.4], [50, 20]);
    expect(orderWhileSound(model)).toEqual(["2", "1"]);
    const repairs = 0.6 * 100 + 0.4 * 80;
    const { cost } = chooseNext(model, createBelief(), all(model), atStart, onlyChecks);
    expect(cost + repairs).toBeCloseTo(142, 2);
    expect(expectedCost([0, 1], [0.6, 0.4], [50, 20]) + repairs).toBeCloseTo(150, 9);
  });

  test("the order is that of falling p/C and no permutation is cheaper (Heckerman, Breese & Rommelse 1995)", () => {
    const part = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 60 }));
    fc.assert(
      fc.property(fc.array(part, { minLength: 2, maxLength: 5 }), (parts) => {
        const total = parts.reduce((sum, [weight]) => sum + weight, 0);
        const p = parts.map(([weight]) => weight / total);
        const costs = parts.map(([, cost]) => cost);
        const order = orderWhileSound(perfectChecks(p, costs)).map((id) => Number(id) - 1);
        expect(order).toHaveLength(parts.length);
        const ratios = order.map((one) => (p[one] ?? 0) / (costs[one] ?? 1));
        ratios.forEach((ratio, at) => {
          expect(ratio).toBeLessThanOrEqual((ratios[at - 1] ?? Number.POSITIVE_INFINITY) * (1 + 1e-9));
        });
        const least = Math.min(...permutations([...p.keys()]).map((other) => expectedCost(other, p, costs)));
        expect(expectedCost(order, p, costs)).toBeCloseTo(least, 6);
      }),
      { seed: 41, numRuns: 300 },
    );
  });
});

describe("calling a professional", () => {
  test("is weighed against whole plans: a check after which a call would cost more is asked for the sake of the next", () => {
    // Plans: call now 15; check 2, then call 8 + .5·15 = 15.5; check both 8 + .5·12 = 14 (number of checks chosen over whole plans, derived).
    // The one-step shortcut calls now, since .5/8 < 1/15.
    const model = perfectChecks([0.5, 0.5], [12, 8]);
    const stakes = { ...onlyChecks, callOut: 15 };
    expect(orderWhileSound(model, stakes)).toEqual(["2", "1"]);
    expect(chooseNext(model, createBelief(), all(model), atStart, stakes).cost).toBeCloseTo(14, 2);
  });

  test("comes at once where every plan of checks costs more than the call", () => {
    const model = perfectChecks([0.5, 0.5], [40, 40]);
    const choice = chooseNext(model, createBelief(), all(model), atStart, { ...onlyChecks, callOut: 15 });
    expect(choice).toEqual({ stop: "professional", cost: 15 });
  });

  test("costs nothing extra where only a professional can help, so that nothing more is asked", () => {
    const model = modelOf({
      causes: [
        { id: "cooling", weight: 99, remedy: "professional" },
        { id: "switched-off", weight: 1 },
      ],
      checks: [
        {
          id: "switch",
          minutes: 10,
          outcomes: {
            off: { says: { "switched-off": 0.97, cooling: 0.02 }, fixes: ["switched-off"] },
            on: { says: { "switched-off": 0.02, cooling: 0.97 } },
          },
        },
      ],
    });
    expect(chooseNext(model, createBelief(), ["switch"], atStart, everyday)).toMatchObject({
      stop: "professional",
    });
  });

  test("is all that is left where nothing is allowed", () => {
    const model = perfectChecks([0.5, 0.5], [1, 1]);
    expect(chooseNext(model, createBelief(), [], atStart, everyday)).toMatchObject({ stop: "professional" });
  });
});

describe("a part", () => {
  const model = modelOf({
    causes: [
      {
        id: "clogged",
        weight: 6,
        remedy: "part",
        part: "filter",
        proofs: [[{ check: "without-filter", outcomes: ["strong"] }]],
      },
      { id: "supply-weak", weight: 2, remedy: "professional" },
      { id: "tap-closed", weight: 2 },
    ],
    checks: [
      {
        id: "without-filter",
        minutes: 8,
        outcomes: {
          strong: { says: { clogged: 0.9, otherwise: 0.05 } },
          weak: { says: { clogged: 0.1, otherwise: 0.95 } },
        },
      },
      {
        id: "tap",
        minutes: 4,
        outcomes: {
          opened: { says: { "tap-closed": 0.95, otherwise: 0.02 }, fixes: ["tap-closed"] },
          open: { says: { "tap-closed": 0.05, otherwise: 0.98 } },
        },
      },
    ],
  });
  const strong = updateBelief(model, createBelief(), "without-filter", "strong");
  const state = { ...atStart, done: ["without-filter"] };

  test("is sold where its proof is recorded and belief suffices", () => {
    expect(probabilities(model, strong)[0]).toBeGreaterThan(0.9);
    const choice = chooseNext(model, strong, [], { ...state, proven: ["clogged"] }, everyday);
    expect(choice).toMatchObject({ stop: "part", cause: "clogged", due: false });
  });

  test("is not sold on belief alone, however strong", () => {
    expect(chooseNext(model, strong, [], state, everyday)).toMatchObject({ stop: "professional" });
  });

  test("is not sold on proof alone where belief in it is below the limit", () => {
    const weak = updateBelief(model, createBelief(), "without-filter", "weak");
    const choice = chooseNext(model, weak, [], { ...state, proven: ["clogged"] }, everyday);
    expect(choice).toMatchObject({ stop: "professional" });
  });

  test("that is due anyway is offered as that from a lower belief on", () => {
    const stakes = { ...everyday, belief: 0.99, beliefDue: 0.4 };
    expect(chooseNext(model, strong, [], { ...state, due: ["clogged"] }, stakes)).toMatchObject({
      stop: "part",
      due: true,
    });
    expect(chooseNext(model, strong, [], { ...state, proven: ["clogged"] }, stakes)).toMatchObject({
      stop: "professional",
    });
  });

  test("is never chosen without proof, and no check that is not allowed ever is, in any random model and state", () => {
    const session = smallModel(4).chain((numbers) => {
      const checks = numbers.checks.map(({ id }) => id);
      const causes = numbers.causes.map(({ id }) => id);
      const outcomes = numbers.checks.flatMap(({ id, outcomes }) =>
        Object.keys(outcomes).map((outcome) => [id, outcome] as const),
      );
      return fc.record({
        model: fc.constant(modelOf(numbers)),
        answers: fc.array(fc.constantFrom(...outcomes), { maxLength: 5 }),
        allowed: fc.subarray(checks),
        proven: fc.subarray(causes),
        due: fc.subarray(causes),
        fixed: fc.subarray(causes),
        mayWait: fc.boolean(),
      });
    });
    let sold = 0;
    fc.assert(
      fc.property(session, ({ model, answers, allowed, ...rest }) => {
        const belief = answers.reduce<Belief>(
          (now, [check, outcome]) => updateBelief(model, now, check, outcome),
          createBelief(),
        );
        const state = { ...rest, done: answers.map(([check]) => check) };
        const choice = chooseNext(model, belief, allowed, state, everyday);
        if ("next" in choice) expect(allowed).toContain(choice.next);
        if ("wait" in choice) expect(state.mayWait && state.fixed.length > 0).toBe(true);
        if (!("stop" in choice) || choice.stop !== "part") return;
        sold++;
        expect(choice.due ? state.due : state.proven).toContain(choice.cause);
        const part = model.causes.find(({ id }) => id === choice.cause)?.part;
        const chances = probabilities(model, belief);
        const believed = chances
          .filter((_, cause) => model.causes[cause]?.part === part)
          .reduce((sum, one) => sum + one, 0);
        expect(believed).toBeGreaterThanOrEqual((choice.due ? everyday.beliefDue : everyday.belief) - 1e-12);
      }),
      { seed: 42, numRuns: 3000 },
    );
    expect(sold).toBeGreaterThan(100);
  });
});

describe("the wait for ice", () => {
  /** Two things that may be put right; `b` is half as likely seen where it is not the cause. */
  const model = modelOf({
    causes: [
      { id: "a", weight: 1 },
      { id: "b", weight: 1 },
    ],
    checks: ["a", "b"].map((id) => ({
      ...{ id, minutes: 1 },
      outcomes: {
        found: { says: { [id]: 0.97, otherwise: 0.5 }, fixes: [id] },
        sound: { says: { [id]: 0.03, otherwise: 0.5 } },
      },
    })),
  });
  const found = updateBelief(model, createBelief(), "a", "found");

  test("is put off while another cheap check may still put something right, so that one wait serves both", () => {
    const state = { ...atStart, done: ["a"], fixed: ["a"] };
    expect(chooseNext(model, found, ["b"], state, everyday)).toMatchObject({ next: "b" });
    const both = updateBelief(model, found, "b", "found");
    const after = { ...atStart, done: ["a", "b"], fixed: ["a", "b"] };
    expect(chooseNext(model, both, [], after, everyday)).toMatchObject({ wait: true });
  });

  test("comes at once after a fix that explains everything", () => {
    const certain = perfectChecks([0.9, 0.1], [1, 5]);
    const belief = updateBelief(certain, createBelief(), "1", "found");
    const state = { ...atStart, done: ["1"], fixed: ["1"] };
    expect(chooseNext(certain, belief, ["2"], state, everyday)).toMatchObject({ wait: true });
  });

  test("in vain sends the search on to the other fault", () => {
    const belief = failedFix(found, "a", everyday.success);
    const state = { ...atStart, done: ["a"], fixed: [] };
    expect(chooseNext(model, belief, ["b"], state, everyday)).toMatchObject({ next: "b" });
  });
});

test("a check that tells nothing is never asked", () => {
  const model = modelOf({
    causes: [
      { id: "a", weight: 1 },
      { id: "b", weight: 1 },
    ],
    checks: [
      {
        id: "coin",
        minutes: 1,
        outcomes: { heads: { says: { otherwise: 0.5 } }, tails: { says: { otherwise: 0.5 } } },
      },
    ],
  });
  expect(chooseNext(model, createBelief(), ["coin"], atStart, everyday)).toMatchObject({
    stop: "professional",
  });
});

test("equal checks are asked in the trade's order, which is the order of what is allowed", () => {
  const model = perfectChecks([0.25, 0.25, 0.25, 0.25], [3, 3, 3, 3]);
  for (const allowed of permutations(["1", "2", "3", "4"]))
    expect(chooseNext(model, createBelief(), allowed, atStart, onlyChecks)).toMatchObject({
      next: allowed[0],
    });
});

test("a second look is worth a little where the first may have missed, and is not asked where it cannot have", () => {
  const missing = (miss: number) =>
    modelOf({
      causes: [
        { id: "jam", weight: 9 },
        { id: "board", weight: 1, remedy: "professional" },
      ],
      checks: [
        {
          id: "look",
          minutes: 3,
          outcomes: {
            jam: { says: { jam: 1 - miss, board: 0.02 }, fixes: ["jam"] },
            clear: { says: { jam: miss, board: 0.98 } },
          },
        },
      ],
    });
  const again = (miss: number) => {
    const model = missing(miss);
    const belief = updateBelief(model, createBelief(), "look", "clear");
    return chooseNext(model, belief, ["look"], { ...atStart, done: ["look"] }, everyday);
  };
  expect(again(0.2)).toMatchObject({ next: "look" });
  expect(again(1 - sure)).toMatchObject({ stop: "professional" });
});
