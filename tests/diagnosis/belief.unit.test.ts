import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  createBelief,
  failedFix,
  type Model,
  probabilities,
  updateBelief,
} from "../../src/diagnosis/index.ts";
import { smallModel } from "./random-models.ts";
import { modelOf, type Numbers } from "./worked-models.ts";

type Answer = { check: string; outcome: string };

/** A model and answers to some of its checks, in some order, some checks more than once. */
const answered = smallModel(5).chain((numbers) => {
  const all = numbers.checks.flatMap(({ id, outcomes }) =>
    Object.keys(outcomes).map((outcome): Answer => ({ check: id, outcome })),
  );
  return fc.record({
    numbers: fc.constant(numbers),
    answers: fc.array(fc.constantFrom(...all), { maxLength: 12 }),
  });
});

const learn = (model: Model, answers: readonly Answer[]) =>
  answers.reduce((belief, { check, outcome }) => updateBelief(model, belief, check, outcome), createBelief());

/**
 * Bayes' rule by enumeration of the joint distribution, from the numbers themselves: for each cause the product of
 * its prior and of its normalised likelihoods, over the sum of all those products.
 */
function byEnumeration({ causes, checks }: Numbers, answers: readonly Answer[]): number[] {
  const joint = causes.map(({ id, weight }) => {
    let product = weight;
    for (const { check, outcome } of answers) {
      const outcomes = checks.find((one) => one.id === check)?.outcomes ?? {};
      const sum = Object.values(outcomes).reduce((total, { says }) => total + (says[id] ?? 0), 0);
      product *= (outcomes[outcome]?.says[id] ?? 0) / sum;
    }
    return product;
  });
  const total = joint.reduce((sum, one) => sum + one, 0);
  return joint.map((one) => one / total);
}

const two = modelOf({
  causes: [
    { id: "filter", weight: 1 },
    { id: "supply", weight: 1 },
  ],
  checks: ["flow", "flow-again"].map((id) => ({
    ...{ id, group: "water-flow", minutes: 3 },
    outcomes: { low: { says: { filter: 0.9, supply: 0.3 } }, good: { says: { filter: 0.1, supply: 0.7 } } },
  })),
});

describe("the belief", () => {
  test("equals Bayes' rule by enumeration of the joint to 1e-12, of each group the latest answer", () => {
    fc.assert(
      fc.property(answered, ({ numbers, answers }) => {
        const groupOf = (id: string) => numbers.checks.find((one) => one.id === id)?.group ?? id;
        const latest = new Map(answers.map((answer) => [groupOf(answer.check), answer]));
        const ours = probabilities(modelOf(numbers), learn(modelOf(numbers), answers));
        byEnumeration(numbers, [...latest.values()]).forEach((chance, cause) => {
          expect(Math.abs((ours[cause] ?? Number.NaN) - chance)).toBeLessThanOrEqual(1e-12);
        });
      }),
      { seed: 31, numRuns: 2000 },
    );
  });

  test("is the same to the last digit whatever the order of the answers", () => {
    const shuffled = answered.chain(({ numbers, answers }) => {
      const once = answers.filter(({ check }, at) => answers.findIndex((one) => one.check === check) === at);
      const apart = { ...numbers, checks: numbers.checks.map((check) => ({ ...check, group: undefined })) };
      const orders = fc.shuffledSubarray(once, { minLength: once.length });
      return fc.record({ model: fc.constant(modelOf(apart)), once: fc.constant(once), other: orders });
    });
    fc.assert(
      fc.property(shuffled, ({ model, once, other }) => {
        expect(probabilities(model, learn(model, other))).toEqual(probabilities(model, learn(model, once)));
      }),
      { seed: 32, numRuns: 1000 },
    );
  });

  test("is never 0, 1 or not a number, however extreme and however many the answers and failed fixes are", () => {
    const extreme = fc.constantFrom(1e-300, 1e-12, 0.5, 1 - 1e-12);
    const step = fc.tuple(fc.nat(29), fc.nat(1), fc.constantFrom(0, 0.5, 0.98, 1 - 1e-16));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(extreme, extreme), { minLength: 60, maxLength: 60 }),
        fc.array(step, { maxLength: 80 }),
        (numbers, steps) => {
          const says = (at: number) => ({ a: numbers[at]?.[0] ?? 0.5, b: numbers[at]?.[1] ?? 0.5 });
          const model = modelOf({
            causes: [
              { id: "a", weight: 12 },
              { id: "b", weight: 1e-6 },
            ],
            checks: Array.from({ length: 30 }, (_, at) => ({
              ...{ id: `k${at}`, minutes: 1 },
              outcomes: { o0: { says: says(2 * at) }, o1: { says: says(2 * at + 1) } },
            })),
          });
          let belief = createBelief();
          for (const [check, outcome, success] of steps) {
            belief = updateBelief(model, belief, `k${check}`, `o${outcome}`);
            if (success) belief = failedFix(belief, outcome ? "a" : "b", success);
            for (const chance of probabilities(model, belief)) expect(chance > 0 && chance < 1).toBe(true);
          }
        },
      ),
      { seed: 33, numRuns: 300 },
    );
  });

  test("counts two readings of the same flow once, and that the later one", () => {
    const once = learn(two, [{ check: "flow-again", outcome: "good" }]);
    const twice = learn(two, [
      { check: "flow", outcome: "low" },
      { check: "flow-again", outcome: "good" },
    ]);
    expect(probabilities(two, twice)).toEqual(probabilities(two, once));
    expect(probabilities(two, twice)[1]).toBeCloseTo(0.7 / 0.8, 12);
  });

  test("learns nothing from 'not sure', from 'can't', or from a check that the model does not have", () => {
    const before = learn(two, [{ check: "flow", outcome: "low" }]);
    for (const [check, outcome] of [
      ["flow", "not-sure"],
      ["flow-again", "cannot"],
      ["elsewhere", "low"],
    ] as const)
      expect(updateBelief(two, before, check, outcome)).toEqual(before);
  });
});

describe("a fix that did not bring the ice back", () => {
  test("leaves pᵢ(1−s)/(1−pᵢs) and raises all others by the same factor (derivation: the cause was i with a failed fix, or another)", () => {
    fc.assert(
      fc.property(
        smallModel(),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        fc.nat(),
        (numbers, success, pick) => {
          const model = modelOf(numbers);
          const cause = pick % model.causes.length;
          const before = probabilities(model, createBelief());
          const failed = failedFix(createBelief(), model.causes[cause]?.id ?? "", success);
          const rest = 1 - (before[cause] ?? 0) * success;
          probabilities(model, failed).forEach((chance, one) => {
            const expected = ((before[one] ?? 0) * (one === cause ? 1 - success : 1)) / rest;
            expect(chance).toBeCloseTo(expected, 12);
          });
        },
      ),
      { seed: 34, numRuns: 500 },
    );
  });

  test("keeps the evidence: what pointed to a second fault points there still", () => {
    const low = updateBelief(two, createBelief(), "flow", "low");
    const [filter = 0, supply = 0] = probabilities(two, failedFix(low, "filter", 0.98));
    expect(supply / filter).toBeCloseTo(0.3 / (0.9 * 0.02), 9);
  });

  test("does not depend on whether it came before or after an answer", () => {
    const first = updateBelief(two, failedFix(createBelief(), "filter", 0.9), "flow", "low");
    const last = failedFix(updateBelief(two, createBelief(), "flow", "low"), "filter", 0.9);
    expect(probabilities(two, first)).toEqual(probabilities(two, last));
  });

  test("refuses a fix that is certain to succeed, since nothing could be learnt from its failure", () => {
    expect(() => failedFix(createBelief(), "filter", 1)).toThrow("success of a fix is 1");
  });
});

test("one outcome of a check is no experiment: such a check says nothing", () => {
  const numbers: Numbers = {
    causes: [
      { id: "a", weight: 1 },
      { id: "b", weight: 1 },
    ],
    checks: [{ id: "k", minutes: 1, outcomes: { only: { says: { a: 0.9, b: 0.1 } } } }],
  };
  const model = modelOf(numbers);
  expect([...probabilities(model, updateBelief(model, createBelief(), "k", "only"))]).toEqual([0.5, 0.5]);
});
