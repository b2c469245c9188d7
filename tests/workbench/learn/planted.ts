import { causesOf, errorLimits, reportsOf, sharesOf } from "../../../src/compile/index.ts";
import { anythingElse, type Flow, limitOf } from "../../../src/guide/index.ts";
import type { InsightLine } from "../../../src/insight/index.ts";
import { chanceOf, normal, pick } from "../../bench/world/chance.ts";

/** A world with shares and errors of its own, as lines of searches that ended in it. */
export type Planted = {
  /** Times its judged share, by cause. */
  times: Record<string, number>;
  rates: Record<string, number>;
};

export const judgedRates = (flow: Flow): Record<string, number> =>
  Object.fromEntries(Object.values(errorLimits).map((id) => [id, limitOf(flow.limits, id)]));

/** Causes up to a few times likelier or rarer than the trade judges, errors twice as frequent. */
export function plantedIn(flow: Flow, seed: string): Planted {
  const chance = chanceOf(`world ${seed}`);
  return {
    times: Object.fromEntries(
      Object.keys(flow.machine.causes).map((cause) => [cause, Math.exp(normal(chance, 0, 1))]),
    ),
    rates: Object.fromEntries(Object.entries(judgedRates(flow)).map(([id, rate]) => [id, 2 * rate])),
  };
}

/** One search: the cause that is truly there, and what the panel writes of it. */
export type Drawn = { cause: string; line: Extract<InsightLine, { what: "ended"; format: 2 }> };

/** Scenario, cause and answers by what flows/ says of the machine; six checks each, and half of all causes are mended. */
export function drawSearches(flow: Flow, { times, rates }: Planted, seed: string, count: number): Drawn[] {
  const chance = chanceOf(`searches ${seed}`);
  const scenes = ["too-little"].map((scenario) => {
    const shares = sharesOf(flow, scenario, null);
    const causes = causesOf(flow, scenario).filter((id) => id !== anythingElse && shares[id]);
    const checks = (flow.scenarios[scenario]?.checks ?? []).flatMap(({ check }) => {
      const outcomes = Object.keys(flow.checks[check]?.outcomes ?? {});
      if (!outcomes.length) return [];
      const { error, at } = reportsOf(flow, scenario, check, causes);
      return [{ check, outcomes, chance: at(error ? (rates[error] ?? 0) : 0).chance }];
    });
    const weights = causes.map((id) => [id, (shares[id] ?? 0) * (times[id] ?? 1)] as const);
    return { scenario, causes, checks, weights };
  });
  return Array.from({ length: count }, (): Drawn => {
    const scene = scenes[Math.floor(chance() * scenes.length)] as (typeof scenes)[number];
    const cause = pick(chance, scene.weights);
    const at = scene.causes.indexOf(cause);
    const asked = [...scene.checks].map((one) => ({ one, by: chance() })).sort((a, b) => a.by - b.by);
    const seen = asked.slice(0, 6).map(({ one: { check, outcomes, chance: table } }) => {
      const place = pick(
        chance,
        outcomes.map((_, row) => [row, table[row]?.[at] ?? 0] as const),
      );
      return `${check}.${outcomes[place]}`;
    });
    const isMended = flow.causes[cause]?.remedy === "self" && chance() < 0.5;
    return {
      cause,
      line: {
        ...{
          format: 2,
          what: "ended",
          scenario: scene.scenario,
          outcome: isMended ? "fixed" : "professional",
        },
        ...{ cause: isMended ? cause : null, part: null, minutes: 5, answers: 9, seen, vain: [] },
      },
    };
  });
}
