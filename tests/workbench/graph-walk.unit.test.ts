import { beforeAll, expect, test } from "vitest";
import { getAdjacencyMap } from "xstate/graph";
import { createListAdviser } from "../../src/advice/index.ts";
import { type ChartContext, type ChartEvent, createMemory, type TurnMeta } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import { graphOf } from "../../src/workbench/verify/index.ts";
import { ownFlow } from "../own-flow.ts";
import { readingsFor, tooClose } from "../session/hints.ts";
import { counts } from "../soak/counts.ts";
import { createAdvisedChart, type Snapshot } from "./advised-chart.ts";

/**
 * xstate's own graph tools walk the running machine, guards and all; our graph is drawn from the data and leaves
 * guards out. The two must tell the same story of the same chart.
 */
const flow = ownFlow;
const graph = graphOf(composeChart(flow));
const { chart, adviceOn } = createAdvisedChart(flow, createListAdviser);
const ways = new Map<string, Set<string>>();
for (const { from, event } of graph.edges) {
  // All dangers lead the same way; one of them at each turn is enough.
  if (event && (!event.startsWith("danger-reported.") || event.endsWith(".gas")))
    ways.set(from, (ways.get(from) ?? new Set()).add(event));
}
type Visit = { state: Snapshot; transitions: Record<string, { event: ChartEvent; state: Snapshot }> };
let walked: Visit[] = [];
let visited: Snapshot[] = [];

beforeAll(() => {
  const map = getAdjacencyMap(chart as never, {
    input: { memory: createMemory() } as never,
    serializeState: (snapshot: never) => keyOf(snapshot),
    events: ((snapshot: Snapshot) =>
      eventsAt(snapshot).flatMap((event) => {
        const advice = adviceOn(snapshot, event);
        return [{ ...event, advice }, ...(advice ? endedForToday(snapshot, event) : [])];
      })) as never,
  });
  walked = Object.values(map) as unknown as Visit[];
  visited = walked.map(({ state }) => state);
}, 900_000);

test("the walk of xstate reaches every ending", () => {
  const endings = [...graph.leaves].filter(([, { meta }]) => meta?.kind === "ending").map(([leaf]) => leaf);
  expect(endings.filter((leaf) => !leaf.endsWith("/later"))).toHaveLength(4);
  expect(visited.map(leafOf)).toEqual(expect.arrayContaining(endings));
});

test("it reaches every turn too: no guard keeps a turn from ever being asked", () => {
  const turns = [...graph.leaves].filter(([, { meta }]) => meta).map(([leaf]) => leaf);
  const met = new Set(visited.map(leafOf));
  const isShort = (leaf: string) => leaf.includes("/short-");
  // Nothing there changes more than the bin, which the ending names; who has the plug out since the opening has a leak.
  const never = ["odd-taste/put-back/all"];
  expect(turns.filter((leaf) => !met.has(leaf) && !isShort(leaf))).toEqual(never);
  // A gate is met in short only where another step behind the same gate came just before: not every one is.
  expect(turns.filter((leaf) => met.has(leaf) && isShort(leaf)).length).toBeGreaterThan(10);
});

test("every state that it visits is a leaf of our graph, with the same turn", () => {
  for (const snapshot of visited) expect(graph.leaves.get(leafOf(snapshot))?.meta).toEqual(metaOf(snapshot));
});

test("every step that it takes is an edge of our graph, or a chain of edges through states that do not wait", () => {
  const next = new Map<string, { to: string; event: string }[]>();
  for (const edge of graph.edges) next.set(edge.from, [...(next.get(edge.from) ?? []), edge]);
  const strays = new Set<string>();
  const steps = new Set<string>();
  for (const { state: snapshot, transitions } of walked) {
    const from = leafOf(snapshot);
    for (const { event, state } of Object.values(transitions)) {
      const to = leafOf(state);
      const step = `${from} takes ${event.type} to ${to}`;
      // An event that is not taken leaves everything where it was.
      if (steps.has(step) || (to === from && !snapshot.can(event as never))) continue;
      steps.add(step);
      const reached = new Set(
        (next.get(from) ?? []).filter((one) => one.event === event.type).map((one) => one.to),
      );
      for (const leaf of reached) for (const one of next.get(leaf) ?? []) if (!one.event) reached.add(one.to);
      if (!reached.has(to)) strays.add(step);
    }
  }
  expect([...strays]).toEqual([]);
  expect(steps.size).toBeGreaterThan(graph.leaves.size);
});

/** What may tell two snapshots apart, by the memory. */
const memories = {
  tank: ({ findings }) => findings["opening.supply"]?.answer === "tank",
  changed: ({ findings }) =>
    ["new", "moved", "power-cut"].includes(findings["opening.changed"]?.answer ?? ""),
  flow: ({ findings }) => findings["flow-test.run"]?.answer,
  flowLow: ({ findings }) => findings["flow-test.run"]?.answer === "fails",
  reset: ({ findings }) => findings["reset.test"]?.answer,
  ice: ({ findings }) => findings["fresh-ice.look"]?.answer,
  leak: ({ findings }) => findings["leak-where.look"]?.answer,
  // Who can't close the water is led past whatever lies behind that gate.
  refused: ({ findings, refused }) =>
    findings["leak-stop.gate-water-supply"] !== undefined && refused.length > 0,
  hums: ({ findings }) => findings["dispense-listen.listen"]?.answer === "hums",
  tubeFroze: ({ findings }) => findings["fill-tube-again.look"]?.answer === "frozen-again",
  frost: ({ causes }) => causes["frost-built-up"] === "found",
  warm: ({ causes }) => causes["freezer-warm"],
  tap: ({ causes }) => causes["tap-closed"],
  tube: ({ causes }) => causes["fill-tube-frozen"],
} satisfies Record<string, (memory: ChartContext) => unknown>;
type Memory = keyof typeof memories;

/** Of these, what decides in a scenario which checks come at all, besides the opening; fewer would not come to every turn. */
const decisive: Record<string, Memory[]> = {
  "after-change": ["flow", "reset", "warm", "tap"],
  leaking: ["leak", "refused", "tap"],
  "no-ice-plumbed": ["flowLow", "tubeFroze", "frost", "warm", "tap", "tube"],
  "no-ice-tank": ["frost", "warm"],
  "not-dispensed": ["hums"],
  "odd-cubes": ["flowLow", "warm", "tap"],
  "too-little": ["frost", "warm", "tap"],
  "too-warm": ["frost", "warm"],
};
const every = Object.keys(memories) as Memory[];

/**
 * What tells two snapshots apart. With the whole memory the states explode; these few memories decide which
 * scenario is entered, and which checks of the water and of the cold come at all.
 */
function keyOf({ value, context }: { value: unknown; context: unknown }): string {
  const memory = context as ChartContext;
  const said = (turn: string) => memory.findings[`opening.${turn}`]?.answer ?? "";
  const [place = ""] = leafOf({ value }).split("/");
  if (place === flow.opening.id) return JSON.stringify([value, Object.keys(flow.opening.turns).map(said)]);
  // Who comes back from an ending comes to the scenario of their opening.
  const scenario = place in flow.scenarios ? null : said("symptom");
  const own = counts.everyMemory ? every : ["tank", "changed", ...(decisive[place] ?? [])];
  return JSON.stringify([value, scenario, own.map((one) => memories[one as Memory](memory))]);
}

const endedAt = new Set<string>();

/** The same event where the adviser, which is not the one in trade's order, finds it best to give it time; once a turn. */
function endedForToday(snapshot: Snapshot, event: ChartEvent): ChartEvent[] {
  const key = `${leafOf(snapshot)} ${event.type}`;
  const { untried } = snapshot.context as ChartContext;
  if (!untried.length || endedAt.has(key)) return [];
  endedAt.add(key);
  return [{ ...event, advice: { check: null, part: null, later: true } }];
}

/** What a person may report at any turn, with whatever memory; where it leads hangs on the turn alone. */
const reports = /^(danger-reported|help-asked)/;
const reportedAt = new Set<string>();

/**
 * Every event a person could bring about here; a measured one with a reading of each verdict. Reports are made at the
 * first visit to each turn; `npm run soak` makes them at all.
 */
function eventsAt(snapshot: Snapshot): ChartEvent[] {
  const at = "2026-03-02T08:00:00+00:00";
  const leaf = leafOf(snapshot);
  const all = [...(ways.get(leaf) ?? [])];
  const types = reportedAt.has(leaf) && !counts.everyReport ? all.filter((type) => !reports.test(type)) : all;
  reportedAt.add(leaf);
  return types.flatMap((type): ChartEvent[] => {
    if (type === "model-given") return [{ type, at, code: "TR-01" }];
    if (type === "wait-ended") return [{ type, at: "2026-03-04T08:00:00+00:00" }];
    if (type !== "measured") return [{ type, at }];
    const meta = metaOf(snapshot) ?? {};
    const readings = [...Object.values(readingsFor(meta)), ...tooClose(meta)];
    return readings.map((reading) => ({ type, at, reading }));
  });
}

function leafOf({ value }: { value: unknown }): string {
  if (typeof value !== "object" || value === null) return `${value}`;
  return Object.entries(value)
    .map(([name, inner]) => `${name}/${leafOf({ value: inner })}`)
    .join();
}

function metaOf(snapshot: Snapshot): TurnMeta | undefined {
  return Object.values(snapshot.getMeta() as Record<string, TurnMeta>).find((meta) => meta?.turn);
}
