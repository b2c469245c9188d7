import * as z from "zod/mini";
import { createAdviser, createListAdviser } from "../advice/index.ts";
import type { FlowSlice } from "../chart/index.ts";
import {
  addScenario,
  bounds,
  createGuide,
  memoryOf,
  metaOf,
  record,
  type ScenarioData,
  type StartData,
  startSession,
} from "../session/index.ts";
import { anyTime, createTexts, type Resource, viewOf } from "../turn/index.ts";
import { findChartFault } from "./find-chart-fault.ts";
import { findDiagnosisFault } from "./find-diagnosis-fault.ts";
import { findOpenHazard, type Places } from "./find-open-hazard.ts";
import { type KnownDangers, placesShape, scenarioShape, startShape, textsShape } from "./shapes.ts";
import { textsCalled } from "./texts-called.ts";

/** A flow in one language, whole: what a shop's own flows are packed as. */
export type PackData = {
  format: 2;
  /** The version of Fridgeside that it was made for. */
  madeFor?: string;
  start: StartData;
  scenarios: ScenarioData[];
  places: Places;
  resources: Record<string, Resource>;
};

/** What the panel runs on otherwise: it says what is dangerous, and which texts and limits it asks for. */
export type BuiltIn = Pick<StartData, "flow"> &
  Pick<PackData, "format" | "resources"> & { known: KnownDangers };

/** Texts that belong to ids of a flow; all others are the panel's own, and it cannot do without. */
const flowTexts = /^(checks|causes|dangers|gates|hazards|inside|parts|stations|statutes|tools|who)(\.|$)/;

/** A pack that cannot be used; the message is half a sentence about the file. */
export class UnusablePack extends Error {}

/**
 * Checks a pack that nobody here has checked, completely: its shape, its names, its texts, that every hazard lies behind
 * its gate, and whether each scenario comes to a first question. In steps, so that a phone can draw a frame between
 * them. Returns the pack.
 * @throws UnusablePack at the first fault, whatever it is
 */
export function* checkPack(json: unknown, language: string, built: BuiltIn): Generator<void, PackData> {
  try {
    return yield* checkAll(json, language, built);
  } catch (problem) {
    if (problem instanceof UnusablePack) throw problem;
    // Whatever else keeps it from running, the panel has to run.
    const said =
      problem instanceof Error ? problem.message.replace(/\s+/g, " ").slice(0, 200) : "no reason given";
    throw new UnusablePack(`cannot be run (${said})`);
  }
}

function* checkAll(json: unknown, language: string, built: BuiltIn): Generator<void, PackData> {
  const { format, madeFor, start, scenarios, resources } = Object(json) as Record<string, unknown>;
  if (format === undefined || typeof madeFor !== "string")
    throw new UnusablePack('does not say which version it was made for, so run "fridgeside pack" again');
  if (format !== built.format)
    throw new UnusablePack(
      `was made for Fridgeside ${madeFor.slice(0, bounds.version)} in another format, so run "fridgeside pack" again`,
    );
  takePart({ start }, "start", z.looseObject({}));
  yield* takeParts(start, startShape, "start.");
  takePart({ scenarios }, "scenarios", z.array(z.looseObject({})).check(z.maxLength(bounds.scenarios)));
  for (const [place, scenario] of (scenarios as object[]).entries())
    yield* takeParts(scenario, scenarioShape, `scenarios.${place}.`);
  takePart(json as object, "places", placesShape);
  takePart({ resources }, "resources", z.looseObject({}));
  takePart(resources as object, language, textsShape, "resources.");
  const pack = json as PackData;
  yield;
  yield* mend(findFlowFault(pack, built));
  yield* mend(findLost(pack, language, built));
  yield* tryOut(pack, language);
  return pack;
}

/** Stops at the first fault. */
function* mend(faults: Generator<string | null>): Generator<void> {
  for (const fault of faults) {
    if (fault) throw new UnusablePack(fault);
    yield;
  }
}

function* takeParts(whole: unknown, shape: Record<string, z.ZodMiniType>, within: string): Generator<void> {
  for (const [name, schema] of Object.entries(shape)) {
    takePart(whole as object, name, schema, within);
    yield;
  }
}

function takePart(whole: object, name: string, schema: z.ZodMiniType, within = ""): void {
  const part = Object.hasOwn(whole, name) ? (whole as Record<string, unknown>)[name] : undefined;
  if (part === undefined) throw new UnusablePack(`has no section "${within}${name}"`);
  const read = schema.safeParse(part);
  if (read.success) return;
  const path = [`${within}${name}`, ...(read.error.issues[0]?.path ?? [])].join(".").slice(0, 200);
  throw new UnusablePack(`does not have the right shape at "${path}"`);
}

/** What keeps a flow from being run: a name that it does not have, a limit, a danger, a hazard without its gate. */
function* findFlowFault(
  { start, scenarios, places }: PackData,
  { flow, known }: BuiltIn,
): Generator<string | null> {
  const { limits, region, dangers, stations } = start.flow;
  const odd = stations.above.find((station) => !stations.order.includes(station));
  if (odd) yield `names "${odd}" at stations.above, which it does not have`;
  for (const [limit, { unit }] of Object.entries(flow.limits)) {
    if (!Object.hasOwn(limits, limit)) yield `has no limit "${limit}"`;
    if (limits[limit]?.unit !== unit) yield `has the limit "${limit}" in another unit than ${unit}`;
  }
  for (const { limit } of Object.values(region.statutes))
    if (!Object.hasOwn(limits, limit)) yield `names "${limit}" at region.statutes, which it does not have`;
  const states = start.chart.states.opening?.states ?? {};
  const lost = flow.dangers.find((danger) => !dangers.includes(danger) || !asksFor(danger, states));
  if (lost) yield `has an opening that does not ask about the danger "${lost}"`;
  const ids = scenarios.map(({ id }) => id);
  const stray =
    start.scenarios.find((id) => !ids.includes(id)) ?? ids.find((id) => !start.scenarios.includes(id));
  if (stray || new Set(ids).size !== ids.length)
    yield `names "${stray ?? ids[0]}" at scenarios, which it does not have`;
  yield findChartFault(start.chart, "opening", ["routing", ...ids], start.flow, flow.dangers);
  for (const { id, chart, diagnosis, flow: own } of scenarios) {
    const slice = sliceWith(start.flow, own);
    yield findChartFault(chart, id, [], slice, flow.dangers);
    yield findOpenHazard(chart, id, slice, places, known);
    yield findDiagnosisFault(id, { diagnosis, flow: slice });
  }
}

function asksFor(
  danger: string,
  states: NonNullable<PackData["start"]["chart"]["states"][string]["states"]>,
) {
  return Object.values(states).some(({ on }) =>
    [on?.[`answered.${danger}`] ?? []].flat().some(({ target }) => target === "#stopped"),
  );
}

const sliceWith = (shared: FlowSlice, own: ScenarioData["flow"]): FlowSlice => ({
  ...shared,
  ...own,
  lasting: [...shared.lasting, ...own.lasting],
  causes: { ...shared.causes, ...own.causes },
  hazards: { ...shared.hazards, ...own.hazards },
});

/** A text or a drawing that the flow or the panel calls for and the pack does not have. */
function* findLost(pack: PackData, language: string, built: BuiltIn): Generator<string | null> {
  const { start, scenarios, resources } = pack;
  const texts = resources[language];
  const panelsOwn = Object.entries(built.resources[language] ?? {}).filter(([file]) => !flowTexts.test(file));
  const own = panelsOwn.flatMap(([file, held]) => keysOf(held, file));
  const charts = [
    start,
    ...scenarios.map(({ chart, flow }) => ({ chart, flow: sliceWith(start.flow, flow) })),
  ];
  for (const { chart, flow } of charts) {
    const lost = [...textsCalled(chart, flow), ...own].find((key) => !hasText(texts, key));
    yield lost ? `has no text "${lost}"` : null;
  }
}

function keysOf(texts: string | Resource | undefined, key: string): string[] {
  if (typeof texts === "string") return texts ? [key] : [];
  return Object.entries(texts ?? {}).flatMap(([name, inner]) => keysOf(inner, `${key}.${name}`));
}

/** Whether there is a text by this key. */
function hasText(texts: Resource | undefined, key: string): boolean {
  let at: string | Resource | undefined = texts;
  for (const step of key.split("."))
    at = typeof at === "object" && Object.hasOwn(at, step) ? at[step] : undefined;
  return typeof at === "string" && at !== "";
}

/**
 * Draws the opening, and the first question of each scenario once. The trade's order leads there: planning would take a
 * slow phone seconds, and what it plans on is made for the reasons that the question shows.
 */
function* tryOut({ start, scenarios, resources }: PackData, language: string): Generator<void> {
  yield;
  const texts = createTexts(resources, language, start.flow);
  yield;
  const guide = createGuide(start, (subject, memory) => {
    const { explain, chances } = createAdviser(subject, memory);
    return { ...createListAdviser(subject, memory), explain, chances };
  });
  for (const scenario of scenarios) {
    addScenario(guide, scenario);
    yield;
  }
  const open = [startSession(guide, anyTime)];
  const drawn = new Set<string>();
  for (const session of open) {
    const { turn, answers = [] } = metaOf(session);
    const isOpening = turn.startsWith("opening.");
    const [place = turn] = isOpening ? [] : Object.keys(Object(session.snapshot.value));
    if (!drawn.has(place)) {
      yield;
      viewOf(session, texts, anyTime, []);
      session.adviser?.explain(memoryOf(session), turn.split(".")[0] ?? "");
      drawn.add(place);
    }
    for (const answer of isOpening ? answers : []) {
      if (open.length >= bounds.tries) return;
      yield;
      open.push(record(session, { type: "answered", turn, answer, at: anyTime }).session);
    }
  }
}
