import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chooseNext, createBelief, type Model, type Stakes } from "../../src/diagnosis/index.ts";
import { type Chooser, costOf } from "../bench/households/expected-cost.ts";
import { exactValue } from "./exact.ts";
import { smallModel } from "./random-models.ts";
import { atStart, everyday, modelOf, onlyChecks, perfectChecks, permutations } from "./worked-models.ts";

const bound = (model: Model, stakes: Stakes = everyday) =>
  exactValue(
    model,
    createBelief(),
    model.checks.map(({ id }) => id),
    atStart,
    stakes,
  );

/** Asks in a fixed order, waits whenever something was put right, and calls a professional at the end. */
const inOrder =
  (order: readonly string[]): Chooser =>
  (_model, _belief, allowed, state) => {
    if (state.fixed.length) return { wait: true, cost: 0 };
    const next = order.find((id) => allowed.includes(id));
    return next ? { next, cost: 0 } : { stop: "professional", cost: 0 };
  };

describe("the exact search", () => {
  test("finds 7.6 for p = (.5, .3, .2), C = (10, 2, 1); the six orders cost 11.2, 11.1, 9.2, 7.7, 9.6, 7.6 (W13)", () => {
    const model = perfectChecks([0.5, 0.3, 0.2], [10, 2, 1]);
    expect(bound(model, onlyChecks)).toBeCloseTo(7.6, 2);
    const orders = permutations(["1", "2", "3"]).map((order) => costOf(model, onlyChecks, inOrder(order)));
    [11.2, 11.1, 9.2, 7.7, 9.6, 7.6].forEach((cost, at) => {
      expect(orders[at]).toBeCloseTo(cost, 2);
    });
  });

  test("is at most the cost of any fixed order and of calling at once, in any small model", () => {
    fc.assert(
      fc.property(smallModel(3), (numbers) => {
        const model = modelOf(numbers);
        const least = bound(model);
        for (const order of permutations(model.checks.map(({ id }) => id)))
          for (let length = 0; length <= order.length; length++)
            expect(least).toBeLessThanOrEqual(
              costOf(model, everyday, inOrder(order.slice(0, length))) + 1e-9,
            );
      }),
      { seed: 51, numRuns: 150 },
    );
  });

  test("gives up with a clear word where there are too many positions", () => {
    const model = perfectChecks([0.25, 0.25, 0.25, 0.25], [1, 1, 1, 1]);
    const allowed = model.checks.map(({ id }) => id);
    expect(() => exactValue(model, createBelief(), allowed, atStart, everyday, 10)).toThrow(
      "More than 10 positions",
    );
  });
});

describe("the quick choice", () => {
  test("never beats the bound and stays within 5 % of it on the whole, over random small models", () => {
    let quick = 0;
    let least = 0;
    fc.assert(
      fc.property(smallModel(4), (numbers) => {
        const model = modelOf(numbers);
        const [ours, exact] = [costOf(model, everyday), bound(model)];
        expect(ours).toBeGreaterThanOrEqual(exact - 1e-9);
        quick += ours;
        least += exact;
      }),
      { seed: 52, numRuns: 250 },
    );
    expect(quick / least).toBeLessThan(1.05);
  });

  test("is the bound itself where only one check is left", () => {
    fc.assert(
      fc.property(smallModel(1), (numbers) => {
        const model = modelOf(numbers);
        const { cost } = chooseNext(model, createBelief(), ["k0"], atStart, {
          ...everyday,
          hour: 0,
          waitMinutes: 0,
        });
        expect(cost).toBeCloseTo(bound(model, { ...everyday, hour: 0, waitMinutes: 0 }), 6);
      }),
      { seed: 53, numRuns: 200 },
    );
  });
});
