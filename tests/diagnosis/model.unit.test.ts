import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createModel } from "../../src/diagnosis/index.ts";
import { smallModel } from "./random-models.ts";
import { inWords, modelOf } from "./worked-models.ts";

const words = { likelihood: { usually: 0.85, rarely: 0.08 }, prior: { common: 6, rare: 0.6 } };
const causes = [
  { id: "tap-closed", prior: "common", remedy: "self" },
  { id: "tap-stuck", prior: "rare", remedy: "professional" },
] as const;
const tap = {
  id: "stop-tap",
  minutes: 4,
  outcomes: {
    opened: { says: { "tap-closed": "usually", otherwise: "rarely" }, fixes: ["tap-closed"] },
    "was-open": { says: { otherwise: "rarely" } },
  },
};

describe("words become numbers", () => {
  test("priors by weight and likelihoods over the outcomes of a check, so that both sum to 1 for every cause", () => {
    const { priors, checks } = createModel({ words, causes, checks: [tap] });
    expect([...priors]).toEqual([6 / 6.6, 0.6 / 6.6]);
    const [opened, wasOpen] = checks[0]?.outcomes ?? [];
    expect(opened?.chances[0]).toBeCloseTo(0.85 / 0.93, 12);
    expect(wasOpen?.chances[0]).toBeCloseTo(0.08 / 0.93, 12);
    expect([...(opened?.chances ?? [])].at(1)).toBeCloseTo(0.5, 12);
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
    createModel({ words, causes, checks: [tap], ...change });

  test.each([
    [
      "an unknown word",
      { checks: [{ ...tap, outcomes: { ...tap.outcomes, stuck: { says: { otherwise: "usualy" } } } }] },
      /Check "stop-tap", outcome "stuck".*"usualy" is no word/,
    ],
    [
      "an outcome that says nothing of a cause",
      { checks: [{ ...tap, outcomes: { ...tap.outcomes, stuck: { says: { "tap-stuck": "usually" } } } }] },
      /cause "tap-closed"/,
    ],
    [
      "an unknown prior",
      { causes: [{ ...causes[0], prior: "always" }] },
      /Cause "tap-closed": "always" is no word for a prior/,
    ],
    [
      "a likelihood of 1",
      { words: { ...words, likelihood: { usually: 1, rarely: 0.08 } } },
      /"usually" must lie between 0 and 1/,
    ],
    [
      "a prior of 0",
      { words: { ...words, prior: { common: 0, rare: 0.6 } } },
      /Prior "common" must be above 0/,
    ],
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
  const { checks } = createModel({
    ...inWords({
      causes: [
        { id: "a", prior: 1 },
        { id: "b", prior: 1 },
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
  });
  expect(checks[0]?.repairs).toEqual([]);
});
