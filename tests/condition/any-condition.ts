import fc from "fast-check";
import type { Condition, Guard } from "../../src/condition/index.ts";

/** The names that made-up conditions use: four checks to be done, so that every completion can be tried. */
export const checks = ["a", "b", "c", "d"];

/** Small conditions over statements of every kind, some by a name. */
export const anyCondition: fc.Arbitrary<Condition> = fc.letrec<{ condition: Condition }>((tie) => ({
  condition: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constantFrom<Condition>(
      "unwaited",
      "any-remedied",
      { answered: { turn: "a.look", is: ["yes", "no"] } },
      { verdict: { turn: "b.run", is: ["passes"] } },
      { found: ["worn"] },
      { remedied: ["worn", "bent"] },
      { is: "early" },
    ),
    fc.constantFrom(...checks).map((done) => ({ done })),
    fc.array(tie("condition"), { maxLength: 3 }).map((all) => ({ all })),
    fc.array(tie("condition"), { maxLength: 3 }).map((any) => ({ any })),
    tie("condition").map((not) => ({ not })),
  ),
})).condition;

/** Guards over four words, each of which a test says to hold or not. */
export const anyGuard: fc.Arbitrary<Guard> = fc.letrec<{ guard: Guard }>((tie) => ({
  guard: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constantFrom(...checks).map((check): Guard => ({ type: "done", params: { check } })),
    fc.array(tie("guard"), { maxLength: 3 }).map((of): Guard => ({ type: "all", params: { of } })),
    fc.array(tie("guard"), { maxLength: 3 }).map((of): Guard => ({ type: "any", params: { of } })),
    tie("guard").map((of): Guard => ({ type: "not", params: { of } })),
  ),
})).guard;
