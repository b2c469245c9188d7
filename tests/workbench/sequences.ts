import type { Advice, ChartEvent, TurnMeta } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import type { Reading } from "../../src/instruments/index.ts";
import { graphOf } from "../../src/workbench/verify/index.ts";
import { gramsEach, kilograms, kilopascals, litresPerMinute, strips } from "../session/drive.ts";
import { createAdvisedChart, type Snapshot } from "./advised-chart.ts";

/** One course through the chart: each event, the last advice given on it, and the leaf it led to. */
export type Sequence = { event: ChartEvent; advice: Advice | null; leaf: string }[];

const reports = /^(danger-reported|help-asked|ice-returned|session-resumed)/;

/**
 * Courses through our own chart from its start, made by chance from a seed; most begin with answers that lead into
 * the scenario, and all end where another one begins. Then mostly answers of the turn at hand, those taken least often
 * first, so that the deep turns come too; now and then an interruption, a report, or an event that is out of place.
 */
export function createSequences(flow: Flow): (scenario: string, seed: number, count: number) => Sequence[] {
  const { start, take } = createAdvisedChart(flow);
  const { leaves, edges } = graphOf(composeChart(flow));
  const own = new Map<string, string[]>();
  for (const { from, event } of edges) if (event) own.set(from, [...(own.get(from) ?? []), event]);
  const every = [...new Set(edges.map(({ event }) => event).filter(Boolean))];
  const openings = openingsOf(start, own, take);

  return (scenario, seed, count) => {
    const chance = createChance(seed);
    const pick = <T>(all: T[]): T | undefined => all[Math.floor(chance() * all.length)];
    const uses = new Map<string, number>();
    const ways = openings.filter(({ leaf }) => leaf.startsWith(`${scenario}/`));

    const choose = (leaf: string): Choice => {
      const here = own.get(leaf) ?? [];
      const onward = here.filter((type) => !reports.test(type));
      const dice = chance();
      const pool = dice < 0.02 ? every : dice < 0.04 || !onward.length ? here : onward;
      const choices = pool.flatMap((type) =>
        (type === "measured" ? [0, 1, 2, 3] : [0]).map((variant) => ({ type, variant })),
      );
      const costs = choices.map((one) => (uses.get(`${leaf} ${one.type} ${one.variant}`) ?? 0) + chance());
      return choices[costs.indexOf(Math.min(...costs))] ?? { type: "help-asked", variant: 0 };
    };

    return Array.from({ length: count }, () => {
      let snapshot = start;
      let now = Date.parse("2026-03-02T08:00:00Z");
      const planned = chance() < 0.9 ? [...(pick(ways)?.events ?? [])] : [];
      const sequence: Sequence = [];
      for (let leaf = leafOf(snapshot); sequence.length < 80 && !isElsewhere(flow, scenario, leaf); ) {
        const { type, variant } = planned.length ? { type: planned.shift() ?? "", variant: 0 } : choose(leaf);
        // Within the minutes in which a gate is short, and beyond.
        now += chance() < 0.7 ? 60_000 : Math.floor(chance() * 7) * 6 * 3_600_000;
        const event = eventOf(type, variant, new Date(now).toISOString(), leaves.get(leaf)?.meta ?? {});
        const taken = take(snapshot, event);
        const { advice } = taken;
        snapshot = taken.snapshot;
        const key = `${leaf} ${type} ${variant}`;
        leaf = leafOf(snapshot);
        // What ends the course early is taken less often: there is more to see behind the other answers.
        const ended = leaves.get(leaf)?.meta?.kind === "ending";
        uses.set(key, (uses.get(key) ?? 0) + (ended ? 20 : 1));
        sequence.push({ event, advice, leaf });
        // A few events more, as an ending may still be left: the ice came back after all, or something is burning.
        if (ended && chance() < 0.5) break;
      }
      return sequence;
    });
  };
}

type Choice = { type: string; variant: number };

/** True inside a scenario that is not the one at hand. */
export function isElsewhere(flow: Flow, scenario: string, leaf: string): boolean {
  const [first = ""] = leaf.split("/");
  return first !== scenario && first in flow.scenarios;
}

/** Every way of answering the opening, and the leaf that it leads to. */
function openingsOf(
  start: Snapshot,
  own: Map<string, string[]>,
  take: ReturnType<typeof createAdvisedChart>["take"],
): { events: string[]; leaf: string }[] {
  const done: { events: string[]; leaf: string }[] = [];
  const open: { snapshot: Snapshot; events: string[] }[] = [{ snapshot: start, events: [] }];
  for (const { snapshot, events } of open) {
    const leaf = leafOf(snapshot);
    if (!leaf.startsWith("opening/")) done.push({ events, leaf });
    else
      for (const type of own.get(leaf) ?? [])
        if (type.startsWith("answered."))
          open.push({
            snapshot: take(snapshot, { type, at: "2026-03-02T08:00:00Z" }).snapshot,
            events: [...events, type],
          });
  }
  return done;
}

function eventOf(type: string, variant: number, at: string, meta: Partial<TurnMeta> = {}): ChartEvent {
  const { instrument = "flow", place } = meta;
  if (type === "model-given") return { type, at, code: "TR-01" };
  if (type !== "measured") return { type, at };
  if (instrument === "flow") {
    const volume = [100, 150, 300, 0][variant] ?? 0;
    return { type, at, reading: { kind: "flow", runs: [{ volume, unit: "ml", seconds: 10 }] } };
  }
  if (instrument === "temperature") {
    // The last is taken in the other place: this turn has not asked for it.
    const value = [-25, -15, 5, place === "fridge" ? -25 : 3][variant] ?? 0;
    const taken = variant < 3 ? place : place === "fridge" ? "freezer" : "fridge";
    return {
      type,
      at,
      reading: { kind: "temperature", value, unit: "C", with: "thermometer", place: taken },
    };
  }
  if (instrument === "filter-age") {
    const date = ["2026-02-01", "2024-02-01", "2025-09-05"][variant % 3] ?? "";
    return { type, at, reading: { kind: "filter-age", fitted: { by: "date", date } } };
  }
  const others: Record<string, Reading[]> = {
    supply: [litresPerMinute(15), litresPerMinute(3), kilopascals(1000), litresPerMinute(6)],
    ice: [kilograms(1.8), kilograms(0.2), kilograms(1.2, "much"), kilograms(1)],
    cubes: [gramsEach(18), gramsEach(7), gramsEach(8)],
    seal: [strips(), strips(1, 5, 8), strips(3), strips(7)],
  };
  const of = others[instrument] ?? [];
  return { type, at, reading: of[variant % of.length] as Reading };
}

function leafOf(snapshot: Snapshot): string {
  const path = (value: unknown): string =>
    typeof value === "object" && value !== null
      ? Object.entries(value)
          .map(([name, inner]) => `${name}/${path(inner)}`)
          .join()
      : String(value);
  return path(snapshot.value);
}

/** Repeatable chance: a linear congruential generator with the constants of Numerical Recipes. */
function createChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
