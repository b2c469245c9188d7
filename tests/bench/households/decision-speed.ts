import {
  type Belief,
  chooseNext,
  createBelief,
  createModel,
  updateBelief,
} from "../../../src/diagnosis/index.ts";
import { luck } from "./chance.ts";
import type { Scene } from "./scene.ts";

/** The largest model that a choice has to be quick for. */
const size = { causes: 45, checks: 30, outcomes: 3 };

/** A model of that size, every check of which says something of every cause and repairs one. */
export function largeModel() {
  // A model tells some ninety likelihoods apart.
  const drawn = (least: number, ...names: (string | number)[]) =>
    least + ((1 - 2 * least) * (Math.floor(60 * luck(7, ...names)) + 0.5)) / 60;
  const causes = Array.from({ length: size.causes }, (_, at) => ({
    id: `c${at}`,
    weight: drawn(0.1, "prior", at),
    remedy: (["self", "self", "part", "professional"] as const)[at % 4] ?? "self",
    proofs: [[0, 1, 2].map((step) => ({ check: `k${(at + step) % size.checks}`, outcomes: ["o0"] }))],
  }));
  const checks = Array.from({ length: size.checks }, (_, check) => ({
    id: `k${check}`,
    minutes: 1 + (check % 9),
    outcomes: Object.fromEntries(
      Array.from({ length: size.outcomes }, (_, outcome) => [
        `o${outcome}`,
        {
          says: Object.fromEntries(causes.map(({ id }, cause) => [id, drawn(0.03, check, outcome, cause)])),
          fixes: outcome === 0 && check < size.causes && check % 4 < 2 ? [`c${check}`] : [],
        },
      ]),
    ),
  }));
  return createModel({ causes, checks });
}

/** Milliseconds for one choice, by the middle of many, on fresh and on half-asked sessions. */
export function timeOfChoice({ stakes }: Scene, clock: () => number): { choice: number; pass: number } {
  const model = largeModel();
  const all = model.checks.map(({ id }) => id);
  const times: number[] = [];
  for (let round = 0; round < 60; round++) {
    const done = all.filter((_, at) => luck(round, "done", at) < (round % 3) / 4);
    const belief = done.reduce<Belief>((now, id) => updateBelief(model, now, id, "o1"), createBelief());
    const allowed = all.filter((id) => !done.includes(id));
    const state = { done, proven: [], due: [], fixed: [], mayWait: true };
    const before = clock();
    chooseNext(model, belief, allowed, state, stakes);
    times.push(clock() - before);
  }
  return { choice: middle(times.slice(20)), pass: timeOfPass(clock) };
}

/**
 * A yardstick of the same machine in the same minute: multiplying two lists of `causes` numbers for every outcome of
 * every check, a thousand times. A choice is allowed so many of these whatever the machine.
 */
function timeOfPass(clock: () => number): number {
  const rows = size.checks * size.outcomes;
  const a = Float64Array.from({ length: size.causes * rows }, (_, at) => luck(3, at));
  const b = Float64Array.from({ length: size.causes }, (_, at) => luck(4, at));
  const times: number[] = [];
  for (let round = 0; round < 15; round++) {
    let sum = 0;
    const before = clock();
    for (let again = 0; again < 1000; again++)
      for (let row = 0; row < rows; row++)
        for (let at = 0; at < b.length; at++) sum += (a[row * b.length + at] as number) * (b[at] as number);
    times.push(clock() - before);
    if (sum < 0) throw new Error("Sums of positive numbers are positive");
  }
  return middle(times.slice(5)) / 1000;
}

const middle = (times: number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
