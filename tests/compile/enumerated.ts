import type { Machine, States } from "../../src/guide/index.ts";

/**
 * P(complaint | cause) and P(complaint, states | cause) by every combination of states there is: slow, and made of
 * nothing but the definition. A second opinion on what the compiler works out.
 */
export function enumerated(machine: Machine, cause: string, complaint: string, shows: States) {
  const quantities = Object.entries(machine.quantities);
  const sum = { complained: 0, shown: 0 };
  const visit = (at: number, is: Record<string, string>, chance: number) => {
    const [name, quantity] = quantities[at] ?? [];
    if (name === undefined || !quantity) {
      const said = chance * chanceOfSaying(machine, is, complaint);
      sum.complained += said;
      if (Object.entries(shows).every(([one, states]) => states.includes(is[one] ?? ""))) sum.shown += said;
      return;
    }
    const line = quantity.follows?.find(({ when = {} }) =>
      Object.entries(when).every(([one, states]) => states.includes(is[one] ?? "")),
    );
    const spread = machine.causes[cause]?.does?.[name] ?? line?.is ?? { [quantity.states[0] ?? ""]: 1 };
    const total = Object.values(spread).reduce((all, one) => all + one, 0);
    for (const state of quantity.states)
      visit(at + 1, { ...is, [name]: state }, (chance * (spread[state] ?? 0)) / total);
  };
  visit(0, {}, 1);
  return sum;
}

function chanceOfSaying(machine: Machine, is: Record<string, string>, complaint: string): number {
  const reasons = Object.entries(machine.complaints).map(([id, quantities]) => {
    const all = Object.entries(quantities).reduce(
      (sum, [name, chances]) => sum + (chances[is[name] ?? ""] ?? 0),
      0,
    );
    return { id, reason: Math.min(1, all) };
  });
  const total = reasons.reduce((sum, { reason }) => sum + reason, 0);
  return (reasons.find(({ id }) => id === complaint)?.reason ?? 0) / Math.max(1, total);
}
