import * as z from "zod/mini";
import type { Flow } from "./flow.ts";

/** The shape of every file in flows/. Editors get it as JSON Schema; the verifier reports what does not fit. */
const id = z.string().check(z.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/));
const turnRef = z.string().check(z.regex(/^[a-z][a-z0-9-]*\.[a-z][a-z0-9-]*$/));
const signal = z.enum(["danger", "warning", "caution", "notice"]);

const verdict = z.enum(["passes", "fails", "unclear", "too-strong", "demand", "corner", "in-the-way"]);

const condition: z.ZodMiniType = z.lazy(() =>
  z.union([
    z.enum(["unwaited", "any-remedied"]),
    z.strictObject({ answered: z.strictObject({ turn: turnRef, is: z.array(id) }) }),
    z.strictObject({
      verdict: z.strictObject({ turn: turnRef, is: z.array(verdict) }),
    }),
    z.strictObject({ done: id }),
    z.strictObject({ found: z.array(id) }),
    z.strictObject({ remedied: z.array(id) }),
    z.strictObject({ is: id }),
    z.strictObject({ all: z.array(condition) }),
    z.strictObject({ any: z.array(condition) }),
    z.strictObject({ not: condition }),
  ]),
);

const leaves = z.optional(z.strictObject({ water: z.enum(["closed", "left-closed", "open"]) }));
const keeps = z.optional(z.strictObject({ water: z.literal("closed") }));

const outcome = z.strictObject({
  to: id,
  finds: z.optional(id),
  remedies: z.optional(id),
  clears: z.optional(z.array(id)),
  suspects: z.optional(z.array(id)),
  danger: z.optional(z.boolean()),
  leaves,
});
const standing = z.optional(z.union([outcome, z.literal(false)]));

const turn = z.strictObject({
  kind: z.optional(z.enum(["choice", "reading", "wait"])),
  picture: z.optional(id),
  instrument: z.optional(z.enum(["flow", "temperature", "filter-age", "supply", "ice", "cubes", "seal"])),
  place: z.optional(z.enum(["freezer", "fridge"])),
  against: z.optional(z.array(turnRef)),
  // biome-ignore lint/suspicious/noThenProperty: `then` is the word the flow files use, and this is no promise
  then: z.optional(id),
  lasts: z.optional(id),
  inside: z.optional(z.array(z.strictObject({ stage: id, after: z.optional(id) }))),
  needs: z.optional(z.strictObject({ water: z.literal("open") })),
  waits: z.optional(z.boolean()),
  answers: z.optional(z.record(id, outcome)),
  verdicts: z.optional(z.partialRecord(verdict, outcome)),
  "not-sure": standing,
  cannot: standing,
});

const opening = { id, start: id, turns: z.record(id, turn) };

const limits = z.record(
  id,
  z.strictObject({
    value: z.number(),
    unit: z.string(),
    confidence: z.enum(["C", "S", "M", "P", "D", "J"]),
    source: z.string().check(z.minLength(8)),
  }),
);

/** One schema for each kind of file, by the file's name or folder. */
export const fileSchemas = {
  limits,
  choosing: limits,
  stations: z.strictObject({ order: z.array(id), access: z.record(id, id) }),
  gates: z.strictObject({
    hazards: z.record(id, z.strictObject({ signal, gate: z.enum(["required", "none"]) })),
    access: z.record(id, z.array(id)),
    gates: z.record(
      id,
      z.strictObject({
        signal,
        covers: z.array(id),
        items: z.array(id).check(z.minLength(1)),
        facts: z.array(id),
        picture: id,
        leaves,
      }),
    ),
  }),
  words: z.strictObject({ likelihood: z.record(id, z.number()), prior: z.record(id, z.number()) }),
  parts: z.record(
    id,
    z.strictObject({
      minutes: z.number(),
      tools: z.array(id),
      access: id,
      fitting: z.enum(["self", "professional"]),
    }),
  ),
  conditions: z.record(id, condition),
  causes: z.record(
    id,
    z.strictObject({
      station: id,
      remedy: z.enum(["self", "part", "professional"]),
      part: z.optional(id),
      who: z.optional(id),
      claim: z.optional(z.enum(["proved", "due"])),
      proof: z.optional(condition),
      keeps,
    }),
  ),
  opening: z.strictObject(opening),
  check: z.strictObject({
    ...opening,
    station: id,
    access: id,
    minutes: z.number(),
    tools: z.array(id),
    hazards: z.optional(z.array(id)),
    gates: z.optional(z.array(id)),
    restores: z.optional(z.literal("water")),
    repeats: z.optional(z.boolean()),
    measures: z.optional(id),
    outcomes: z.optional(z.record(id, z.strictObject({ from: z.array(turnRef), says: z.record(id, id) }))),
  }),
  scenario: z.strictObject({
    id,
    when: condition,
    priors: z.record(id, id),
    proofs: z.array(id),
    checks: z.array(
      z.strictObject({ check: id, when: z.optional(condition), first: z.optional(z.boolean()) }),
    ),
    otherwise: z.strictObject({ to: z.literal("professional"), who: id }),
    keeps,
  }),
} as const;

export type FileKind = keyof typeof fileSchemas;

/** The kind of a file by its path inside flows/, or null where no such file belongs there. */
export function fileKind(path: string): FileKind | null {
  if (/^checks\/[^/]+\.yaml$/.test(path)) return "check";
  if (/^scenarios\/[^/]+\.yaml$/.test(path)) return "scenario";
  const name = path.replace(/\.yaml$/, "");
  return Object.hasOwn(fileSchemas, name) && name !== "check" && name !== "scenario"
    ? (name as FileKind)
    : null;
}

/** Puts files, already parsed and checked, together. `version` is a digest that the reader of the files makes. */
export function assembleFlow(files: Record<string, unknown>, version: string): Flow {
  const folder = (prefix: string) =>
    Object.fromEntries(
      Object.entries(files)
        .filter(([path]) => path.startsWith(prefix))
        .map(([, data]) => [(data as { id: string }).id, data]),
    );
  const { hazards, access, gates } = files["gates.yaml"] as Pick<Flow, "hazards" | "access" | "gates">;
  return {
    version,
    hazards,
    access,
    gates,
    limits: { ...(files["limits.yaml"] as object), ...(files["choosing.yaml"] as object) },
    words: files["words.yaml"],
    stations: files["stations.yaml"],
    parts: files["parts.yaml"],
    conditions: files["conditions.yaml"],
    causes: files["causes.yaml"],
    opening: files["opening.yaml"],
    checks: folder("checks/"),
    scenarios: folder("scenarios/"),
  } as Flow;
}
