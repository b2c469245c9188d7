import { tableOf } from "../table.ts";
import { type PolicyId, policies, type Results } from "./run.ts";
import type { Summary } from "./tally.ts";

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const tenths = (number: number) => number.toFixed(1);

/** What is compared, in the order of the table. */
const columns: { name: string; of: (summary: Summary) => string }[] = [
  { name: "minutes", of: ({ minutes }) => tenths(minutes) },
  { name: "p90", of: ({ lateMinutes }) => `${lateMinutes}` },
  { name: "checks", of: ({ checks }) => tenths(checks) },
  { name: "p90", of: ({ lateChecks }) => `${lateChecks}` },
  { name: "hours waited", of: ({ hours }) => tenths(hours) },
  { name: "gates", of: ({ gates }) => tenths(gates) },
  { name: "ended right", of: ({ right }) => percent(right) },
  { name: "wrong part", of: ({ wrongPart }) => percent(wrongPart) },
  { name: "due, not it", of: ({ due }) => percent(due) },
  { name: "needless call", of: ({ needlessCall }) => percent(needlessCall) },
  { name: "cost", of: ({ cost }) => tenths(cost) },
];

/** The results as text: every policy on the same homes, then by scenario, the bound, and the goals. */
export function reportHouseholds(results: Results): string {
  const rows = (summaries: Record<PolicyId, Summary>) =>
    policies.map(({ id, name }) => [name, ...columns.map(({ of }) => of(summaries[id]))]);
  const head = ["", ...columns.map(({ name }) => name)];
  const scenarios = Object.entries(results.byScenario).flatMap(([id, summaries]) => [
    [`${id} (${summaries.ours.homes})`],
    ...rows(summaries).map(([name, ...cells]) => [`  ${name}`, ...cells]),
  ]);
  const { small } = results;
  return [
    `${results.homes} homes, seed ${results.seed}; one in ten with two faults; priors off by up to 3, odds of answers too; people`,
    "who misread, pass over and botch. What an answer means is drawn from the same flow files that ours reasons with, so",
    "this measures the order of asking and the ends, not the files. Ours is what the panel advises, second looks included.",
    "Costs in minutes of attention, by flows/limits.yaml. A part that was due anyway and was not the cause is counted apart",
    "from wrong parts, and its price in the cost. A call after a botched repair counts as needless.",
    "",
    tableOf([head, ...rows(results.all)]),
    "",
    tableOf([head, ...scenarios]),
    "",
    `Bound: ${small.cases} small cases searched exactly, expected cost ${tenths(small.bound / small.cases)} a case; ours ${tenths(small.ours / small.cases)}`,
    `(${percent(small.ours / small.bound - 1)} above, worst case ${percent(small.worst - 1)}), the trade's order ${tenths(small.list / small.cases)} (${percent(small.list / small.bound - 1)} above).`,
    "",
    ...goalsOfHouseholds(results).map(({ met, says }) => `${met ? "met    " : "NOT MET"}  ${says}`),
  ].join("\n");
}

/** The goals, each with what was reached. */
export function goalsOfHouseholds({ all, small }: Results): { met: boolean; says: string }[] {
  const list = all["list-calls"];
  const goal = (words: string, of: (summary: Summary) => number, within: (number: number) => boolean) => ({
    met: within(of(all.ours)),
    says: `${words}: ${percent(of(all.ours))}`,
  });
  return [
    goal(
      "minutes of attention, at most half the list's",
      (one) => one.minutes / list.minutes,
      (share) => share <= 0.5,
    ),
    goal(
      "hours waited, at most half the list's",
      (one) => one.hours / list.hours,
      (share) => share <= 0.5,
    ),
    goal(
      "wrong parts in under 2 % of homes",
      ({ wrongPart }) => wrongPart,
      (share) => share < 0.02,
    ),
    goal(
      "right endings in at least 80 %",
      ({ right }) => right,
      (share) => share >= 0.8,
    ),
    goal(
      "needless call-outs under 16 %",
      ({ needlessCall }) => needlessCall,
      (share) => share < 0.16,
    ),
    {
      met: small.ours <= 1.05 * small.bound,
      says: `expected cost within 5 % of the bound: ${percent(small.ours / small.bound - 1)} above`,
    },
  ];
}
