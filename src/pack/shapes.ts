import * as z from "zod/mini";
import { signs } from "../diagnosis/index.ts";
import { everyPreparation, flowBounds, id, listOf, number, recordOf, region, unit } from "../guide/index.ts";
import { bounds } from "../session/index.ts";
import { chartShape, guardShape, turnRef } from "./chart-shape.ts";

const text = (most: number) => z.string().check(z.maxLength(most));
const key = text(bounds.id);
const version = z.string().check(z.minLength(1), z.maxLength(flowBounds.version));
const flag = z.optional(z.literal(true));
const above0 = z.number().check(z.gt(0), z.lt(flowBounds.number));
const places = listOf(z.number().check(z.int(), z.nonnegative()), flowBounds.entries);

/** Texts by key, nested as files and folders are. */
export const textsShape: z.ZodMiniType = z.lazy(() =>
  recordOf(key, z.union([text(bounds.text), textsShape]), bounds.texts),
);

const signal = z.enum(["danger", "warning", "caution", "notice"]);

const ownSlice = {
  hazards: recordOf(id, z.strictObject({ signal })),
  gates: recordOf(
    id,
    z.strictObject({
      signal,
      covers: listOf(id),
      items: listOf(id).check(z.minLength(1)),
      facts: listOf(id),
    }),
  ),
  causes: recordOf(
    id,
    z.strictObject({
      station: id,
      part: z.optional(id),
      who: z.optional(id),
      claim: z.optional(z.enum(["proved", "due"])),
      proof: z.optional(guardShape),
      keeps: flag,
    }),
  ),
  parts: recordOf(
    id,
    z.strictObject({
      minutes: number,
      tools: listOf(id),
      hazards: listOf(id),
      consumable: flag,
      picture: z.optional(id),
    }),
  ),
  searches: guardShape,
  lasting: listOf(turnRef),
};

/** What every session starts with. */
export const startShape = {
  flow: z.strictObject({
    version,
    limits: recordOf(id, z.strictObject({ value: number, unit })),
    region,
    stations: z.strictObject({ order: listOf(id), above: listOf(id) }),
    greets: z.optional(turnRef),
    dangers: listOf(id),
    ...ownSlice,
  }),
  chart: chartShape,
  scenarios: listOf(id).check(z.minLength(1)),
  ahead: recordOf(text(1000), listOf(id), 5000),
};

const ways = listOf(listOf(z.strictObject({ check: id, outcomes: listOf(id) })));

const stake = z.number().check(z.gte(0), z.lt(flowBounds.number));
const preparation = z.enum(everyPreparation);

const tables = z.strictObject({
  likelihoods: listOf(z.number().check(z.gt(0), z.lt(1)), signs.length),
  causes: listOf(
    z.strictObject({
      id,
      weight: above0,
      remedy: z.enum(["self", "part", "professional"]),
      part: z.optional(id),
      claim: z.optional(z.enum(["proved", "due"])),
      fitting: z.optional(z.enum(["self", "professional"])),
      proofs: z.optional(ways),
    }),
    flowBounds.entries,
  ),
  checks: listOf(
    z.strictObject({
      id,
      group: z.optional(id),
      minutes: number,
      setUp: z.optional(z.partialRecord(preparation, stake)),
      undoes: z.optional(listOf(preparation)),
      outcomes: listOf(
        z.strictObject({
          id,
          likely: text(flowBounds.entries),
          fixes: z.optional(listOf(id)),
          hours: z.optional(number),
        }),
      ),
      needs: z.optional(ways),
    }),
  ),
});

const stakes = z.strictObject({
  ...{ minute: stake, hour: stake, wrongPart: stake, callOut: stake, secondVisit: stake, waitHours: stake },
  ...{ waitMinutes: stake, success: stake, sameLook: stake, belief: stake, beliefDue: stake },
});

/** One scenario. */
export const scenarioShape = {
  id,
  flow: z.strictObject(ownSlice),
  chart: chartShape,
  diagnosis: z.strictObject({
    tables,
    openings: z.strictObject({
      turns: listOf(turnRef),
      entries: recordOf(text(1000), number),
      models: listOf(
        z.strictObject({ causes: places, weights: listOf(above0, flowBounds.entries), checks: places }),
      ).check(z.minLength(1)),
    }),
    findings: recordOf(id, recordOf(id, listOf(turnRef))),
    stakes,
    mostTurns: number,
    leastLook: number,
    earlyLook: number,
    mostSecond: number,
    cures: recordOf(id, listOf(id)),
    leastHope: number,
    naming: z.strictObject({ most: number, least: number, trade: number }),
    meaning: z.strictObject({
      ...{ least: number, most: number, together: number },
      ...{ had: number, lost: number, checks: number },
    }),
    moves: listOf(
      z.strictObject({
        check: id,
        first: flag,
        before: z.optional(z.enum(["tools", "call"])),
        waits: z.optional(listOf(text(200))),
        gates: z.optional(listOf(id)),
        free: flag,
        hidden: flag,
        once: guardShape,
        again: z.optional(guardShape),
      }),
    ),
    proofs: listOf(id),
  }),
};

/** Where each check's hands go: what is dangerous there is judged by the built-in guide. */
export const placesShape = recordOf(id, z.strictObject({ station: id, access: id }));

/** What a phone must be told of any flow's dangers, by the built-in guide. */
export type KnownDangers = {
  /** Where a gate is required. */
  hazards: Record<string, { gate: string }>;
  /** By where the hands go. */
  access: Record<string, string[]>;
  /** By station, what lies there at the least. */
  stations: Record<string, string>;
  /** For how many minutes a gate that was confirmed in full may be asked in short, at most. */
  gateMinutes: number;
};
