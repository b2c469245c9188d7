import * as z from "zod/mini";
import { findOpenHazards } from "../chart/index.ts";
import { type Condition, guardOf, NoMeaning } from "../condition/index.ts";
import type { Flow, Opening, Outcome } from "../guide/index.ts";
import { dangersOf, fileSchemas, flowBounds, id, listOf, number, recordOf, unit } from "../guide/index.ts";
import { verdictsOf } from "../instruments/index.ts";

const { hazards, access, gates } = fileSchemas.gates.shape;

/** Ways of steps that are all needed: what `src/advice/proof-steps.ts` makes of a condition. */
const ways = listOf(listOf(z.strictObject({ check: id, outcomes: listOf(id) })));
/** The look-ahead alone reads it, so no name in it can lead anywhere: the shape is enough. */
const groundwork = z.strictObject({
  routes: recordOf(id, recordOf(id, z.strictObject({ fixes: listOf(id), hours: number }))),
  proofs: recordOf(id, ways),
  needs: recordOf(id, recordOf(id, ways)),
});

/** The shape of each section of a flow as a phone gets it. */
export const flowSections = {
  version: z.string().check(z.minLength(1), z.maxLength(flowBounds.version)),
  limits: recordOf(id, z.strictObject({ value: number, unit })),
  words: fileSchemas.words,
  stations: fileSchemas.stations,
  hazards,
  access,
  gates,
  parts: fileSchemas.parts,
  conditions: fileSchemas.conditions,
  causes: fileSchemas.causes,
  opening: fileSchemas.opening,
  checks: recordOf(id, fileSchemas.check),
  scenarios: recordOf(id, fileSchemas.scenario),
  groundwork: z.optional(groundwork),
} satisfies Record<keyof Flow, z.ZodMiniType>;

/** A name, what it should be one of, and where it stands. */
type Naming = [name: string, known: object | readonly string[], where: string];

/**
 * The first thing that keeps a phone from running a flow whose sections have the right shape, as half a sentence about
 * it; null where it can be run. The verifier at the workbench says more and asks for more.
 * @param known the built-in flow, which says what is dangerous and which limits the code asks for
 */
export function findFlowFault(flow: Flow, known: Flow): string | null {
  for (const [name, among, where] of namings(flow)) {
    const isKnown = Array.isArray(among) ? among.includes(name) : Object.hasOwn(among, name);
    if (!isKnown) return `names "${name}" at ${where}, which it does not have`;
  }
  for (const [limit, { unit: asked }] of Object.entries(known.limits)) {
    if (!Object.hasOwn(flow.limits, limit)) return `has no limit "${limit}"`;
    if (flow.limits[limit]?.unit !== asked) return `has the limit "${limit}" in another unit than ${asked}`;
  }
  const { likelihood, prior } = flow.words;
  const isOdd = (chance: number) => !(chance > 0 && chance < 1);
  const odd =
    Object.keys(likelihood).find((word) => isOdd(likelihood[word] ?? 0)) ??
    Object.keys(prior).find((word) => !((prior[word] ?? 0) > 0));
  if (odd !== undefined) return `gives the word "${odd}" a number that no belief can reckon with`;
  const dangers = dangersOf(flow);
  const lost = dangersOf(known).find((danger) => !dangers.includes(danger));
  if (lost) return `has an opening that does not ask about the danger "${lost}"`;
  const open = findOpenHazards(flow, known);
  if (open.length) return `has hazards without a gate (${open.slice(0, 5).join(", ")})`;
  return Object.keys(flow.scenarios).length ? null : "has no scenario";
}

function* namings(flow: Flow): Generator<Naming> {
  const { stations, parts, causes, checks, scenarios, words } = flow;
  const each = function* (names: string[] = [], among: Naming[1], where: string): Generator<Naming> {
    for (const name of names) yield [name, among, where];
  };
  yield* each(stations.above, stations.order, "stations.above");
  yield* each(Object.keys(stations.access), stations.order, "stations.access");
  yield* each(Object.values(stations.access), flow.access, "stations.access");
  for (const [at, list] of Object.entries(flow.access)) yield* each(list, flow.hazards, `access.${at}`);
  for (const [at, gate] of Object.entries(flow.gates)) yield* each(gate.covers, flow.hazards, `gates.${at}`);
  for (const [at, part] of Object.entries(parts)) yield [part.access, flow.access, `parts.${at}`];
  for (const [at, condition] of Object.entries(flow.conditions))
    yield* meaning(flow, condition, `conditions.${at}`);
  for (const [at, { station, remedy, part, proof }] of Object.entries(causes)) {
    yield [station, stations.order, `causes.${at}`];
    if (remedy === "part" || part !== undefined) yield [part ?? "", parts, `causes.${at}`];
    if (proof !== undefined) yield* meaning(flow, proof, `causes.${at}`);
  }
  yield ["opening", [flow.opening.id], "opening.id"];
  yield* turnNamings(flow, flow.opening, "opening");
  for (const [at, check] of Object.entries(checks)) {
    const where = `checks.${at}`;
    yield [at, [check.id], `${where}.id`];
    yield [check.station, stations.order, where];
    yield [check.access, flow.access, where];
    yield* each(check.gates, flow.gates, where);
    yield* each(check.hazards, flow.hazards, where);
    yield* turnNamings(flow, check, where);
    for (const { says } of Object.values(check.outcomes ?? {})) {
      yield ["otherwise", says, `${where}.outcomes`];
      yield* each(Object.keys(says), ["otherwise", ...Object.keys(causes)], `${where}.outcomes`);
      yield* each(Object.values(says), words.likelihood, `${where}.outcomes`);
    }
  }
  const proved = Object.keys(causes).filter((cause) => causes[cause]?.proof !== undefined);
  for (const [at, scenario] of Object.entries(scenarios)) {
    const where = `scenarios.${at}`;
    yield [at, [scenario.id], `${where}.id`];
    yield* meaning(flow, scenario.when, where);
    yield* each(Object.keys(scenario.priors), causes, where);
    yield* each(Object.values(scenario.priors), words.prior, where);
    yield* each(scenario.proofs, proved, where);
    for (const { check, when } of scenario.checks) {
      yield [check, checks, where];
      if (when !== undefined) yield* meaning(flow, when, where);
    }
  }
}

const endings = ["done", "fixed", "professional", "stopped"];

/** What a turn must have to be asked at all, and where it leads. */
function* turnNamings(flow: Flow, { start, turns }: Opening, where: string): Generator<Naming> {
  yield [start, turns, `${where}.start`];
  for (const [id, turn] of Object.entries(turns)) {
    const at = `${where}.${id}`;
    const needs = { choice: ["answers"], reading: ["instrument", "verdicts"], wait: ["lasts", "then"] };
    for (const need of needs[turn.kind ?? "choice"]) yield [need, turn, at];
    if (turn.instrument && turn.verdicts)
      for (const verdict of verdictsOf(turn.instrument)) yield [verdict, turn.verdicts, `${at}.verdicts`];
    if (turn.then) yield [turn.then, turns, at];
    for (const limit of [turn.lasts, ...(turn.inside ?? []).map(({ after }) => after)])
      if (limit) yield [limit, flow.limits, at];
    const standing = [turn["not-sure"], turn.cannot].filter((one): one is Outcome => Boolean(one));
    const outcomes = [...Object.values({ ...turn.answers, ...turn.verdicts }), ...standing];
    for (const { to, finds, remedies, clears = [], suspects = [] } of outcomes) {
      yield [to, [...Object.keys(turns), ...endings], at];
      for (const cause of [finds, remedies]) if (cause) yield [cause, flow.causes, at];
      for (const station of [...clears, ...suspects]) yield [station, flow.stations.order, at];
    }
  }
}

/** A named condition that a condition leans on and that has no meaning. */
function* meaning({ conditions }: Flow, condition: Condition, where: string): Generator<Naming> {
  try {
    guardOf(condition, conditions);
  } catch (problem) {
    if (!(problem instanceof NoMeaning)) throw problem;
    yield [problem.id, [], where];
  }
}
