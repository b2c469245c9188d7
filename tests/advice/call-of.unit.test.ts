import { expect, test } from "vitest";
import { callOf } from "../../src/advice/call-of.ts";
import { createBelief, createModel } from "../../src/diagnosis/index.ts";

const naming = { most: 3, least: 0.04, trade: 0.7 };
const causes = {
  clogged: { station: "filter", remedy: "part" as const, part: "filter" },
  weak: { station: "tap", remedy: "professional" as const, who: "plumber" },
  faulty: { station: "tray", remedy: "professional" as const, who: "engineer" },
};

/** The call where a filter, a weak supply and a fault of the machine are believed in with these weights. */
function callWith(weights: { clogged: number; weak: number; faulty: number }, fixed: string[] = []) {
  const model = createModel({
    causes: [
      { id: "clogged", weight: weights.clogged, remedy: "part", part: "filter" },
      { id: "weak", weight: weights.weak, remedy: "professional" },
      { id: "faulty", weight: weights.faulty, remedy: "professional" },
    ],
    checks: [],
  });
  return callOf(model, createBelief(), causes, fixed, naming);
}

test("a filter, which nobody has to fit, does not keep the plumber away", () => {
  expect(callWith({ clogged: 60, weak: 35, faulty: 5 }).who).toBe("plumber");
});

test("where two trades are about as likely, none is named", () => {
  expect(callWith({ clogged: 60, weak: 20, faulty: 20 }).who).toBeNull();
});

test("the likeliest are named first, and what is too unlikely to help is not", () => {
  expect(callWith({ clogged: 60, weak: 37, faulty: 3 }).likely).toEqual(["clogged", "weak"]);
});

test("what was put right is not what somebody comes for", () => {
  const { likely, who } = callWith({ clogged: 10, weak: 80, faulty: 10 }, ["weak"]);
  expect(likely).toEqual(["clogged", "faulty"]);
  expect(who).toBe("engineer");
});
