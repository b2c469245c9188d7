import { expect, test } from "vitest";
import { createBelief, explain, updateBelief } from "../../src/diagnosis/index.ts";
import { modelOf } from "./worked-models.ts";

const model = modelOf({
  causes: [
    { id: "filter-clogged", weight: 6, remedy: "part" },
    { id: "supply-weak", weight: 4, remedy: "professional" },
    { id: "switched-off", weight: 1 },
  ],
  checks: [
    // With the supply fixed, the same dispense with and without the filter tells the two apart (derived, trade practice).
    {
      id: "without-filter",
      minutes: 8,
      outcomes: {
        strong: { says: { "filter-clogged": 0.9, "supply-weak": 0.1, "switched-off": 0.9 } },
        weak: { says: { "filter-clogged": 0.1, "supply-weak": 0.9, "switched-off": 0.1 } },
      },
    },
    {
      id: "switch",
      minutes: 1,
      outcomes: {
        off: { says: { "switched-off": 0.97, otherwise: 0.02 } },
        on: { says: { "switched-off": 0.03, otherwise: 0.98 } },
      },
    },
    {
      id: "weather",
      minutes: 1,
      outcomes: { fine: { says: { otherwise: 0.5 } }, rain: { says: { otherwise: 0.5 } } },
    },
  ],
});

test("the flow without the filter is asked because it splits the two likeliest, filter and low supply", () => {
  expect(explain(model, createBelief(), "without-filter")).toEqual({
    splits: ["filter-clogged", "supply-weak"],
  });
});

test("a check that leaves the two likeliest alone names the pair that it does tell apart", () => {
  expect(explain(model, createBelief(), "switch")).toEqual({
    splits: ["filter-clogged", "switched-off"],
  });
});

test("what was learnt changes which causes are told apart", () => {
  const belief = updateBelief(model, createBelief(), "without-filter", "weak");
  expect(explain(model, belief, "switch").splits).toEqual(["supply-weak", "switched-off"]);
});

test("a check that tells nothing apart, or that does not exist, splits none", () => {
  expect(explain(model, createBelief(), "weather").splits).toBeNull();
  expect(explain(model, createBelief(), "elsewhere").splits).toBeNull();
});
