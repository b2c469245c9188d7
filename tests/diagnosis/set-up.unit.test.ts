import fc from "fast-check";
import { expect, test } from "vitest";
import { chooseNext, createBelief, updateBelief } from "../../src/diagnosis/index.ts";
import { atStart, modelOf, onlyChecks, permutations } from "./worked-models.ts";

type Look = { p: number; minutes: number; setUp?: Record<string, number>; undoes?: string[] };

/** Perfect checks, each of which finds and puts right a cause of its own, with what has to be prepared for them. */
function looksAt(looks: readonly Look[]) {
  return modelOf({
    causes: looks.map(({ p }, at) => ({ id: `c${at}`, weight: p })),
    checks: looks.map(({ p: _, ...look }, at) => ({
      id: `${at}`,
      ...look,
      outcomes: {
        found: { says: { [`c${at}`]: 1 - 1e-9, otherwise: 1e-9 }, fixes: [`c${at}`] },
        sound: { says: { [`c${at}`]: 1e-9, otherwise: 1 - 1e-9 } },
      },
    })),
  });
}

function orderOf(looks: readonly Look[], held: string[] = []): number[] {
  const model = looksAt(looks);
  const order: number[] = [];
  let belief = createBelief();
  let now = held;
  for (;;) {
    const allowed = model.checks.flatMap(({ id }) => (order.includes(Number(id)) ? [] : [id]));
    const done = order.map(String);
    const choice = chooseNext(model, belief, allowed, { ...atStart, done, held: now }, onlyChecks);
    if (!("next" in choice)) return order;
    const { setUp = {}, undoes = [] } = looks[Number(choice.next)] ?? {};
    now = [...now.filter((one) => !undoes.includes(one)), ...Object.keys(setUp)];
    order.push(Number(choice.next));
    belief = updateBelief(model, belief, choice.next, "sound");
  }
}

/** The expected cost of an order, what is prepared paid once while it holds. */
function costOf(looks: readonly Look[], order: readonly number[]): number {
  let [left, cost, held] = [1, 0, [] as string[]];
  for (const at of order) {
    const { p, minutes, setUp = {}, undoes = [] } = looks[at] as Look;
    held = held.filter((one) => !undoes.includes(one));
    const missing = Object.entries(setUp).filter(([one]) => !held.includes(one));
    cost += left * (minutes + missing.reduce((sum, [, more]) => sum + more, 0));
    held = [...held, ...missing.map(([one]) => one)];
    left -= p;
  }
  return cost;
}

const water = { water: 6 };

test("what shares a preparation is looked at in one go, though each alone comes after another by p/C", () => {
  // Alone: 0.2/7 and 0.2/7 against 0.2/4.5 and 0.4/10; together 0.4/8.
  const looks = [
    { p: 0.2, minutes: 1, setUp: water },
    { p: 0.4, minutes: 10 },
    { p: 0.2, minutes: 1, setUp: water },
    { p: 0.2, minutes: 4.5 },
  ];
  expect(orderOf(looks)).toEqual([0, 2, 3, 1]);
});

test("what is prepared already is looked at before what is not, and what would undo it after that", () => {
  const looks = [
    { p: 0.3, minutes: 4, undoes: ["water"] },
    { p: 0.3, minutes: 4, setUp: water },
    { p: 0.4, minutes: 30 },
  ];
  expect(orderOf(looks, ["water"])).toEqual([1, 0, 2]);
  expect(orderOf(looks)[0]).toBe(0);
});

test("the order with one cluster is within a twentieth of the best of all orders, and mostly the best", () => {
  const look = fc.record({
    weight: fc.integer({ min: 1, max: 9 }),
    minutes: fc.integer({ min: 1, max: 20 }),
    wet: fc.boolean(),
  });
  const drawn = fc.sample(fc.array(look, { minLength: 4, maxLength: 4 }), { seed: 13, numRuns: 40 });
  let best = 0;
  for (const some of drawn) {
    const total = some.reduce((sum, { weight }) => sum + weight, 0);
    const looks = some.map(
      ({ weight, minutes, wet }): Look => ({
        p: weight / total,
        minutes,
        ...(wet ? { setUp: { water: 8 } } : {}),
      }),
    );
    const least = Math.min(...permutations([0, 1, 2, 3]).map((order) => costOf(looks, order)));
    const ours = costOf(looks, orderOf(looks));
    expect(ours).toBeLessThanOrEqual(least * 1.05 + 1e-6);
    if (ours < least + 1e-6) best++;
  }
  expect(best).toBeGreaterThan(drawn.length * 0.8);
});
