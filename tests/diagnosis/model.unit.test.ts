import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createModel, readModel, tablesOf } from "../../src/diagnosis/index.ts";
import { smallModel } from "./random-models.ts";
import { inputOf, modelOf } from "./worked-models.ts";

const causes = [
  { id: "tap-closed", weight: 6, remedy: "self" },
  { id: "tap-stuck", weight: 0.6, remedy: "professional" },
] as const;
const tap = {
  id: "stop-tap",
  minutes: 4,
  outcomes: {
    opened: { says: { "tap-closed": 0.85, otherwise: 0.08 }, fixes: ["tap-closed"] },
    "was-open": { says: { otherwise: 0.08 } },
  },
};

describe("numbers become probabilities", () => {
  test("priors by weight and likelihoods over the outcomes of a check, so that both sum to 1 for every cause", () => {
    const { priors, checks } = createModel({ causes, checks: [tap] });
    expect([...priors]).toEqual([6 / 6.6, 0.6 / 6.6]);
    const [opened, wasOpen] = checks[0]?.outcomes ?? [];
    expect(opened?.chances[0]).toBeCloseTo(0.85 / 0.93, 12);
    expect(wasOpen?.chances[0]).toBeCloseTo(0.08 / 0.93, 12);
    expect([...(opened?.chances ?? [])].at(1)).toBeCloseTo(0.5, 12);
  });

  test("other weights of the same causes take the place of the tables'", () => {
    const tables = tablesOf({ causes, checks: [tap] });
    const { priors } = readModel(tables, { causes: [1, 0], checks: [0], weights: [3, 1] });
    expect([...priors]).toEqual([0.75, 0.25]);
  });

  test("of any model, none of them 0 or 1", () => {
    fc.assert(
      fc.property(smallModel(), (numbers) => {
        for (const { outcomes } of modelOf(numbers).checks)
          numbers.causes.forEach((_, cause) => {
            const row = outcomes.map(({ chances }) => chances[cause] ?? Number.NaN);
            expect(row.length).toBeGreaterThan(0);
            expect(Math.min(...row)).toBeGreaterThan(0);
            expect(Math.max(...row)).toBeLessThan(1);
            expect(row.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
          });
      }),
      { seed: 21, numRuns: 200 },
    );
  });
});

describe("faults of the data are named", () => {
  const refusal = (change: Partial<Parameters<typeof createModel>[0]>) => () =>
    createModel({ causes, checks: [tap], ...change });

  test.each([
    [
      "an outcome that says nothing of a cause",
      { checks: [{ ...tap, outcomes: { ...tap.outcomes, stuck: { says: { "tap-stuck": 0.85 } } } }] },
      /Check "stop-tap", outcome "stuck", cause "tap-closed": no likelihood/,
    ],
    [
      "a likelihood of 1",
      { checks: [{ ...tap, outcomes: { ...tap.outcomes, stuck: { says: { otherwise: 1 } } } }] },
      /outcome "stuck".* 1 must lie between 0 and 1/,
    ],
    ["a prior of 0", { causes: [{ ...causes[0], weight: 0 }] }, /The prior of "tap-closed" must be above 0/],
    [
      "a proof by a check that is not there",
      { causes: [{ ...causes[0], proofs: [[{ check: "nowhere", outcomes: ["x"] }]] }] },
      /names the check "nowhere"/,
    ],
  ])("%s", (_, change, message) => {
    expect(refusal(change)).toThrow(message);
  });
});

test("a repair of a cause that the scenario does not know is passed over", () => {
  const { checks } = createModel(
    inputOf({
      causes: [
        { id: "a", weight: 1 },
        { id: "b", weight: 1 },
      ],
      checks: [
        {
          id: "k",
          minutes: 1,
          outcomes: {
            x: { says: { otherwise: 0.5 }, fixes: ["elsewhere"] },
            y: { says: { otherwise: 0.5 } },
          },
        },
      ],
    }),
  );
  expect(checks[0]?.repairs).toEqual([]);
});
