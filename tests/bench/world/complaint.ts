import { type Chance, pick } from "./chance.ts";
import type { Changed } from "./faults/index.ts";
import type { Machine } from "./machine.ts";
import type { Trouble } from "./troubles.ts";

export type Symptom =
  | "no-ice"
  | "little-ice"
  | "not-dispensed"
  | "odd-ice"
  | "too-warm"
  | "leaking"
  | "after-change"
  | "not-sure";

/** What these people say is wrong, and what of it is so. */
export type Complaint = {
  trouble: Trouble;
  symptom: Symptom;
  odd: "shape" | "clumped" | "taste";
};

/** How loudly each trouble speaks beside others (judgement: water and warm food first). */
const loud: Record<Trouble, number> = {
  leak: 10,
  "warm-fridge": 6,
  "not-dispensed": 6,
  "no-ice": 5,
  clumped: 4,
  taste: 4,
  other: 4,
  "little-ice": 3,
  "odd-shape": 3,
  "warm-freezer": 2.5,
};

/** Where people put it (judgement); most name it as it is. */
const named: Record<Trouble, readonly (readonly [Symptom, number])[]> = {
  "no-ice": [
    ["no-ice", 88],
    ["not-dispensed", 5],
    ["little-ice", 4],
    ["not-sure", 3],
  ],
  "little-ice": [
    ["little-ice", 92],
    ["no-ice", 4],
    ["odd-ice", 4],
  ],
  "odd-shape": [
    ["odd-ice", 78],
    ["little-ice", 20],
    ["not-sure", 2],
  ],
  clumped: [
    ["odd-ice", 70],
    ["not-dispensed", 24],
    ["not-sure", 6],
  ],
  "not-dispensed": [
    ["not-dispensed", 92],
    ["no-ice", 8],
  ],
  "warm-freezer": [
    ["too-warm", 96],
    ["no-ice", 4],
  ],
  "warm-fridge": [
    ["too-warm", 97],
    ["not-sure", 3],
  ],
  leak: [
    ["leaking", 98],
    ["not-sure", 2],
  ],
  taste: [
    ["odd-ice", 96],
    ["not-sure", 4],
  ],
  other: [
    ["not-sure", 85],
    ["not-dispensed", 15],
  ],
};

const odd = { "odd-shape": "shape", clumped: "clumped", taste: "taste", "little-ice": "shape" } as const;

/** One in two blames what was changed last, where the page offers that (judgement). */
const blamesChange = 0.45;

export function complainOf(
  troubles: readonly Trouble[],
  machine: Machine,
  changed: Changed,
  chance: Chance,
  perfect: boolean,
): Complaint {
  const none = troubles.includes("no-ice");
  const heard = troubles.filter(
    (trouble) =>
      !(none && (trouble === "little-ice" || trouble === "odd-shape" || trouble === "not-dispensed")),
  );
  const trouble = pick(
    chance,
    heard.map((one) => [one, loud[one]] as const),
  );
  const ways = named[trouble].filter(([symptom]) => symptom !== "not-dispensed" || machine.iceDispenser);
  const symptom = perfect ? (ways[0]?.[0] ?? "not-sure") : pick(chance, ways);
  const isFresh = changed === "new-filter" || changed === "new" || changed === "moved";
  const isIce = symptom !== "too-warm" && symptom !== "leaking" && trouble !== "taste";
  const oftenBlamed = trouble === "no-ice" || trouble === "little-ice";
  const blames = isFresh && isIce && chance() < (oftenBlamed ? blamesChange : blamesChange / 3);
  return {
    trouble,
    symptom: blames ? "after-change" : symptom,
    odd: odd[trouble as keyof typeof odd] ?? "shape",
  };
}
