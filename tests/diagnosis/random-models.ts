import fc from "fast-check";
import type { Numbers } from "./worked-models.ts";

const likelihood = fc.double({ min: 0.02, max: 0.97, noNaN: true });
const names = ["a", "b", "c", "d", "e"];

/**
 * Small models: 2 to 5 causes of every remedy, 1 to `most` checks of 2 or 3 outcomes, some in one group, some that
 * repair, parts with a proof in one or two steps.
 */
export const smallModel = (most = 4): fc.Arbitrary<Numbers> =>
  fc.integer({ min: 2, max: 5 }).chain((size) => {
    const ids = names.slice(0, size);
    const says = fc
      .tuple(...ids.map(() => likelihood))
      .map((row) => Object.fromEntries(ids.map((id, at) => [id, row[at] ?? 0.5])));
    const outcome = fc.record({
      says,
      fixes: fc.subarray(ids, { maxLength: 1 }),
      hours: fc.constantFrom(0, 0, 4),
    });
    const check = fc.record({
      group: fc.constantFrom(undefined, undefined, "flow"),
      minutes: fc.integer({ min: 1, max: 30 }),
      outcomes: fc
        .array(outcome, { minLength: 2, maxLength: 3 })
        .map((list) => Object.fromEntries(list.map((one, at) => [`o${at}`, one]))),
    });
    const cause = fc.record({
      weight: fc.double({ min: 0.2, max: 12, noNaN: true }),
      remedy: fc.constantFrom("self", "self", "part", "professional"),
      fitting: fc.constantFrom("self", "professional"),
      claim: fc.constantFrom("proved", "proved", "due"),
      proof: fc.array(fc.tuple(fc.nat(), fc.constantFrom(["o0"], ["o1"], ["o0", "o1"])), {
        minLength: 1,
        maxLength: 2,
      }),
    } as const);
    return fc
      .tuple(fc.tuple(...ids.map(() => cause)), fc.array(check, { minLength: 1, maxLength: most }))
      .map(([causes, checks]): Numbers => {
        const remedies = Object.fromEntries(ids.map((id, at) => [id, causes[at]?.remedy]));
        return {
          causes: causes.map(({ weight, remedy, fitting, claim, proof }, at) => ({
            ...{ id: ids[at] ?? "", weight, remedy, fitting, claim },
            proofs: [proof.map(([check, outcomes]) => ({ check: `k${check % checks.length}`, outcomes }))],
          })),
          checks: checks.map((one, at) => ({
            ...one,
            id: `k${at}`,
            // Only what a householder can put right is put right on the way.
            outcomes: Object.fromEntries(
              Object.entries(one.outcomes).map(([id, { fixes, ...rest }]) => [
                id,
                { ...rest, fixes: fixes.filter((cause) => remedies[cause] === "self") },
              ]),
            ),
          })),
        };
      });
  });
