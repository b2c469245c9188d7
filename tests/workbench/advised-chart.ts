import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { type Adviser, type Advisers, createAdviser } from "../../src/advice/index.ts";
import type { Advice, ChartContext, ChartEvent, Note } from "../../src/chart/index.ts";
import { createMemory, holds, remember } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { type Chart, createChart } from "../../src/session/index.ts";
import { compiledOnce } from "../compiled-once.ts";

export type Snapshot = SnapshotFrom<Chart>;

/** The whole flow as one running chart, taken step by step with the advice that a session would send. */
export function createAdvisedChart(flow: Flow, advisers: Advisers = createAdviser) {
  const config = composeChart(flow);
  const chart = createChart(config, flow.limits);
  const subjects = new Map(compiledOnce(flow).scenarios.map((one) => [one.id, one]));
  const known = new Map<string, Adviser>();

  /** Of the scenario that a choice would be made in; null where none would. */
  function adviserAt(target: string, memory: ChartContext, event: ChartEvent): Adviser | null {
    const routed = config.states.routing?.always?.find(({ guard }) => !guard || holds(memory, guard, event));
    const [scenario = "", state] =
      target === "routing" ? [routed?.target.slice(1), "choosing"] : target.split("/");
    const subject = subjects.get(scenario);
    if (state !== "choosing" || !subject) return null;
    const said = Object.entries(memory.findings).filter(([turn]) => turn.startsWith("opening."));
    const key = JSON.stringify([scenario, said.map(([turn, { answer }]) => [turn, answer])]);
    const adviser = known.get(key) ?? advisers(subject, memory);
    known.set(key, adviser);
    return adviser;
  }

  function adviceOn(snapshot: Snapshot, event: ChartEvent): Advice | null {
    const [way] = chart.getTransitionData(snapshot, event as never);
    const notes = ((way?.actions ?? []) as unknown as { params: Note }[]).map(({ params }) => params);
    const memory = notes.reduce(
      (before, note) => remember(before, note, event),
      snapshot.context as ChartContext,
    );
    return adviserAt(way?.target?.[0]?.id ?? "", memory, event)?.advise(memory) ?? null;
  }

  return {
    chart,
    adviceOn,
    start: initialTransition(chart, { memory: createMemory() } as never)[0] as Snapshot,
    take(snapshot: Snapshot, event: ChartEvent): { snapshot: Snapshot; advice: Advice | null } {
      const advice = adviceOn(snapshot, event);
      const sent = { ...event, ...(advice && { advice }) };
      return { snapshot: transition(chart, snapshot, sent as never)[0] as Snapshot, advice };
    },
  };
}
