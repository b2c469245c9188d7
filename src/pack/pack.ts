import * as z from "zod/mini";
import { createAdviser, createListAdviser } from "../advice/index.ts";
import { createCharts } from "../compile/index.ts";
import { type Flow, recordOf, textsNeeded } from "../guide/index.ts";
import { bounds, memoryOf, metaOf, record, startSession } from "../session/index.ts";
import { anyTime, createTexts, type Resource, viewOf } from "../turn/index.ts";
import { findFlowFault, flowSections } from "./packed.ts";

const text = (most: number) => z.string().check(z.maxLength(most));
const key = text(bounds.id);

/** Texts by key, nested as files and folders are. */
export const textsShape: z.ZodMiniType = z.lazy(() =>
  recordOf(key, z.union([text(bounds.text), textsShape]), bounds.texts),
);

const strokes = z.array(text(bounds.text)).check(z.maxLength(bounds.strokes));

/** Drawings; a piece is made of strokes only, so that none can hold itself. */
export const drawingsShape = z.object({
  pieces: recordOf(
    key,
    z.array(text(bounds.text).check(z.regex(/^[^@]/))).check(z.maxLength(bounds.strokes)),
  ),
  pictures: recordOf(key, strokes),
});

/** What a panel runs on in one language; a pack also names the version of Fridgeside that it was made for. */
export type PackData = {
  format: 1;
  flow: Flow;
  resources: Record<string, Resource>;
  drawings: { pieces: Record<string, string[]>; pictures: Record<string, string[]> };
};

/** Texts that belong to ids of a flow; all others are the panel's own, and it cannot do without. */
const flowTexts = /^(checks|causes|dangers|described|gates|hazards|inside|parts|stations|tools|who)(\.|$)/;

/** A pack that cannot be used; the message is half a sentence about the file. */
export class UnusablePack extends Error {}

/**
 * Checks a pack that nobody here has checked, completely: its shape, its names, its texts, and whether each scenario
 * comes to a first question. In steps, so that a phone can draw a frame between them. Returns the pack.
 * @param built what the panel runs on otherwise
 * @throws UnusablePack at the first fault, whatever it is
 */
export function* checkPack(json: unknown, language: string, built: PackData): Generator<void, PackData> {
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

function* checkAll(json: unknown, language: string, built: PackData): Generator<void, PackData> {
  const { format, madeFor, flow, resources, drawings } = Object(json) as Record<string, unknown>;
  if (format === undefined || typeof madeFor !== "string")
    throw new UnusablePack('does not say which version it was made for, so run "fridgeside pack" again');
  if (format !== built.format)
    throw new UnusablePack(
      `was made for Fridgeside ${madeFor.slice(0, bounds.version)} in another format, so run "fridgeside pack" again`,
    );
  takePart({ flow }, "flow", z.looseObject({}));
  for (const [name, schema] of Object.entries(flowSections)) {
    yield;
    takePart(flow as object, name, schema, "flow.");
  }
  yield;
  takePart({ resources }, "resources", z.looseObject({}));
  takePart(resources as object, language, textsShape, "resources.");
  takePart({ drawings }, "drawings", drawingsShape);
  const pack = json as PackData;
  yield;
  const fault = findFlowFault(pack.flow, built.flow) ?? findLost(pack, language, built);
  if (fault) throw new UnusablePack(fault);
  yield* tryOut(pack, language);
  return pack;
}

function takePart(whole: object, name: string, schema: z.ZodMiniType, within = ""): void {
  const part = Object.hasOwn(whole, name) ? (whole as Record<string, unknown>)[name] : undefined;
  if (part === undefined) throw new UnusablePack(`has no section "${within}${name}"`);
  const read = schema.safeParse(part);
  if (read.success) return;
  const path = [`${within}${name}`, ...(read.error.issues[0]?.path ?? [])].join(".").slice(0, 200);
  throw new UnusablePack(`does not have the right shape at "${path}"`);
}

/** A text or a drawing that the flow or the panel calls for and the pack does not have. */
function findLost({ flow, resources, drawings }: PackData, language: string, built: PackData): string | null {
  const known = Object.keys(built.resources[language] ?? {}).filter((file) => !flowTexts.test(file));
  const own = known.flatMap((file) => keysOf(built.resources[language]?.[file], file));
  const lost = [...textsNeeded(flow).map(({ key }) => key), ...own].find(
    (key) => !hasText(resources[language], key),
  );
  if (lost) return `has no text "${lost}"`;
  for (const kind of ["pieces", "pictures"] as const)
    for (const id of Object.keys(built.drawings[kind]))
      if (!drawings[kind][id]?.length) return `has no drawing "${kind}.${id}"`;
  return null;
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
function* tryOut({ flow, resources }: PackData, language: string): Generator<void> {
  yield;
  const texts = createTexts(resources, language, flow.limits);
  yield;
  const { explain } = createAdviser(flow);
  const charts = createCharts(flow, { ...createListAdviser(flow), explain });
  const open = [startSession(flow, anyTime, null, charts)];
  const drawn = new Set<string>();
  for (const session of open) {
    const { turn, answers = [] } = metaOf(session);
    const isOpening = turn.startsWith("opening.");
    const [place = turn] = isOpening ? [] : Object.keys(Object(session.snapshot.value));
    if (!drawn.has(place)) {
      yield;
      viewOf(session, texts, anyTime, []);
      if (flow.scenarios[place]) explain(place, memoryOf(session), turn.split(".")[0] ?? "");
      drawn.add(place);
    }
    for (const answer of isOpening ? answers : []) {
      if (open.length >= bounds.tries) return;
      yield;
      open.push(record(session, { type: "answered", turn, answer, at: anyTime }).session);
    }
  }
}
