import * as z from "zod/mini";
import { condition, flowBounds, id, listOf, recordOf, turnRef } from "../condition/index.ts";
import { everyVerdict, instrumentNames, temperaturePlaces } from "../instruments/index.ts";
import type { Flow } from "./flow.ts";
import { everyPreparation } from "./preparations.ts";
import { prepared } from "./prepared-shape.ts";
import { region } from "./region.ts";

export const number = z.number().check(z.minimum(-flowBounds.number), z.maximum(flowBounds.number));
const signal = z.enum(["danger", "warning", "caution", "notice"]);

const verdict = z.enum(everyVerdict);

const maybePrepared = z.optional(prepared);
const keeps = z.optional(z.strictObject({ water: z.literal("closed") }));

const outcome = z.strictObject({
  to: id,
  finds: z.optional(id),
  remedies: z.optional(id),
  clears: z.optional(listOf(id)),
  suspects: z.optional(listOf(id)),
  danger: z.optional(z.boolean()),
  leaves: maybePrepared,
});
const standing = z.optional(z.union([outcome, z.literal(false)]));

const place = z.enum(temperaturePlaces);

const turn = z.strictObject({
  kind: z.optional(z.enum(["choice", "reading", "wait"])),
  picture: z.optional(id),
  instrument: z.optional(z.enum(instrumentNames)),
  place: z.optional(place),
  against: z.optional(listOf(turnRef)),
  // biome-ignore lint/suspicious/noThenProperty: `then` is the word the flow files use, and this is no promise
  then: z.optional(id),
  lasts: z.optional(id),
  inside: z.optional(listOf(z.strictObject({ stage: id, after: z.optional(id) }))),
  needs: maybePrepared,
  gates: z.optional(listOf(id)),
  access: z.optional(id),
  hazards: z.optional(listOf(id)),
  waits: z.optional(z.boolean()),
  answers: z.optional(recordOf(id, outcome)),
  verdicts: z.optional(z.partialRecord(verdict, outcome)),
  "not-sure": standing,
  cannot: standing,
});

const chance = (most: number) => z.number().check(z.minimum(0), z.maximum(most));
const states = recordOf(id, listOf(id));
const spread = recordOf(id, chance(1));

const opening = { id, start: id, turns: recordOf(id, turn) };

const careSteps = listOf(z.strictObject({ id, access: id, gate: z.optional(id), when: z.optional(id) }));

export const unit = z.string().check(z.maxLength(flowBounds.unit));
const limits = recordOf(
  id,
  z.strictObject({
    value: number,
    unit,
    confidence: z.enum(["C", "S", "P", "D", "J"]),
    source: z.string().check(z.minLength(8), z.maxLength(flowBounds.source)),
  }),
);

/**
 * The shape of every file in flows/, by the file's name or folder. Editors get it as JSON Schema; the verifier reports
 * what does not fit.
 */
export const fileSchemas = {
  limits,
  choosing: limits,
  stations: z.strictObject({ order: listOf(id), above: listOf(id), access: recordOf(id, id) }),
  gates: z.strictObject({
    hazards: recordOf(
      id,
      z.strictObject({ signal, gate: z.enum(["required", "none"]), needs: maybePrepared }),
    ),
    access: recordOf(id, listOf(id)),
    gates: recordOf(
      id,
      z.strictObject({
        signal,
        covers: listOf(id),
        items: listOf(id).check(z.minLength(1)),
        facts: listOf(id),
        picture: id,
        leaves: maybePrepared,
        dangers: z.optional(listOf(id)),
      }),
    ),
  }),
  words: z.strictObject({ likelihood: recordOf(id, number) }),
  quantities: recordOf(
    id,
    z.strictObject({
      states: listOf(id).check(z.minLength(2)),
      follows: z.optional(listOf(z.strictObject({ when: z.optional(states), is: spread }))),
    }),
  ),
  complaints: recordOf(id, recordOf(id, spread)),
  disturbances: recordOf(
    id,
    z.strictObject({
      share: chance(1000),
      reason: z.string().check(z.minLength(8), z.maxLength(flowBounds.source)),
      machine: z.optional(z.enum(["plumbed", "tank"])),
      lately: z.optional(recordOf(id, chance(1000))),
      besides: z.optional(chance(1)),
      does: z.optional(recordOf(id, spread)),
    }),
  ),
  parts: recordOf(
    id,
    z.strictObject({
      minutes: number,
      tools: listOf(id),
      access: id,
      fitting: z.enum(["self", "professional"]),
      consumable: z.optional(z.literal(true)),
      who: z.optional(id),
      picture: z.optional(id),
    }),
  ),
  conditions: recordOf(id, condition),
  causes: recordOf(
    id,
    z.strictObject({
      station: id,
      remedy: z.enum(["self", "part", "professional"]),
      part: z.optional(id),
      who: z.optional(id),
      claim: z.optional(z.enum(["proved", "due"])),
      proof: z.optional(condition),
      cures: z.optional(listOf(id)),
      keeps,
    }),
  ),
  opening: z.strictObject({ ...opening, greets: z.optional(id) }),
  check: z.strictObject({
    ...opening,
    station: id,
    access: id,
    minutes: number,
    tools: listOf(id),
    hazards: z.optional(listOf(id)),
    gates: z.optional(listOf(id)),
    confirms: z.optional(z.strictObject({ place, unless: listOf(verdict) })),
    restores: z.optional(listOf(z.enum(everyPreparation))),
    repeats: z.optional(z.boolean()),
    measures: z.optional(id),
    by: z.optional(z.enum(["reading", "look", "listen", "feel", "memory"])),
    outcomes: z.optional(
      recordOf(
        id,
        z.strictObject({
          from: listOf(turnRef),
          sees: z.optional(listOf(id)),
          shows: z.optional(listOf(states)),
          caught: z.optional(id),
          confirmed: z.optional(z.boolean()),
          says: z.optional(recordOf(id, id)),
        }),
      ),
    ),
  }),
  scenario: z.strictObject({
    id,
    when: condition,
    complaint: id,
    proofs: listOf(id),
    checks: listOf(
      z.strictObject({
        check: id,
        when: z.optional(condition),
        first: z.optional(z.boolean()),
        before: z.optional(z.enum(["tools", "call"])),
      }),
    ),
    otherwise: z.strictObject({ to: z.literal("professional"), who: id }),
    keeps,
  }),
  care: z.strictObject({
    filter: z.optional(z.strictObject({ part: id, months: id, when: z.optional(id) })),
    use: careSteps,
    away: careSteps,
    return: careSteps,
  }),
  region,
} as const;

export type FileKind = keyof typeof fileSchemas;

/** Kinds of which a flow has as many files as it likes. */
const filesOfMany: [form: RegExp, kind: FileKind][] = [
  [/^checks\/[^/]+\.yaml$/, "check"],
  [/^scenarios\/[^/]+\.yaml$/, "scenario"],
  [/^regions\/[A-Z]{2}\.yaml$/, "region"],
  [/^machine\/quantities\.yaml$/, "quantities"],
  [/^machine\/complaints\.yaml$/, "complaints"],
  [/^machine\/causes\/[^/]+\.yaml$/, "disturbances"],
];

/** The kind of a file by its path inside flows/, or null where no such file belongs there. */
export function fileKind(path: string): FileKind | null {
  for (const [form, kind] of filesOfMany) if (form.test(path)) return kind;
  const name = path.replace(/\.yaml$/, "");
  const isOne = Object.hasOwn(fileSchemas, name) && !filesOfMany.some(([, kind]) => kind === name);
  return isOne ? (name as FileKind) : null;
}

/** Puts files, already parsed and checked, together. `version` is a digest that the reader of the files makes. */
export function assembleFlow(files: Record<string, unknown>, version: string): Flow {
  const folder = (prefix: string) =>
    Object.fromEntries(
      Object.entries(files)
        .filter(([path]) => path.startsWith(prefix))
        .map(([path, data]) => [path.slice(prefix.length, -".yaml".length), data]),
    );
  const { hazards, access, gates } = files["gates.yaml"] as Pick<Flow, "hazards" | "access" | "gates">;
  return {
    version,
    hazards,
    access,
    gates,
    limits: { ...(files["limits.yaml"] as object), ...(files["choosing.yaml"] as object) },
    words: files["words.yaml"],
    machine: {
      quantities: files["machine/quantities.yaml"],
      complaints: files["machine/complaints.yaml"],
      causes: Object.assign({}, ...Object.values(folder("machine/causes/"))),
    },
    stations: files["stations.yaml"],
    parts: files["parts.yaml"],
    conditions: files["conditions.yaml"],
    causes: files["causes.yaml"],
    opening: files["opening.yaml"],
    checks: folder("checks/"),
    scenarios: folder("scenarios/"),
    care: { use: [], away: [], return: [], ...(files["care.yaml"] ?? {}) },
    regions: folder("regions/"),
  } as Flow;
}
