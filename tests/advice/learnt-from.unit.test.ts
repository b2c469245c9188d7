import { expect, test } from "vitest";
import { learntFrom } from "../../src/advice/learnt-from.ts";
import { createMemory } from "../../src/chart/index.ts";
import { createModel, probabilities } from "../../src/diagnosis/index.ts";
import { everyday } from "../diagnosis/worked-models.ts";

const model = createModel({
  causes: ["clumped", "stood", "other"].map((id) => ({ id, weight: 1, remedy: "self" as const })),
  checks: [],
});
const known = { findings: {}, stakes: everyday, cures: { clumped: ["stood"] } };

test("what one act puts right besides is put right with it, and with nothing else", () => {
  const after = (cause: string) => learntFrom(known, model, { ...createMemory(), untried: [cause] }).fixed;
  expect(after("clumped")).toEqual(["clumped", "stood"]);
  expect(after("stood")).toEqual(["stood"]);
});

test("a wait in vain speaks against all that the act put right", () => {
  const { belief } = learntFrom(known, model, { ...createMemory(), inVain: ["clumped"] });
  const [clumped, stood, other] = probabilities(model, belief);
  expect(stood).toBe(clumped);
  expect(other).toBeGreaterThan(0.9);
});
