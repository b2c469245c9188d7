import type { Condition, SoldPart } from "../../catalogue/index.ts";
import { bounds } from "../../catalogue/index.ts";
import type { CollectOptions } from "./collect-options.ts";
import { type Fitments, groupFitments } from "./group.ts";
import { feedLimits } from "./limits.ts";
import { type CollectedModel, type ModelStore, mergeTwins } from "./models.ts";
import type { PartStore } from "./parts.ts";
import { expandPatterns, type PatternRow } from "./patterns.ts";
import type { FeedProblem, ProblemList } from "./problem.ts";
import { followReplacements, type Superseded } from "./supersede.ts";

/** A feed's models, parts and what fits; the fitments of model m are `offsets[m]` to `offsets[m + 1]` − 1. */
export type Collected = {
  shop?: string;
  models: readonly CollectedModel[];
  parts: readonly SoldPart[];
  offsets: Uint32Array;
  /** By fitment, the index of its part. */
  partOf: Uint32Array;
  /** By fitment, what else must stand on the plate. */
  conditions: ReadonlyMap<number, Condition>;
};

/** What a feed amounts to. `conflicts`: the same part or machine with other data, or two replacements. */
export type Figures = {
  rowsRead: number;
  rowsUsed: number;
  models: number;
  parts: number;
  fitments: number;
  conditions: number;
  duplicates: number;
  conflicts: number;
  chains: Superseded["chains"];
};

export type CollectedFeed = {
  collected: Collected;
  figures: Figures;
  problems: ProblemList;
  ignored: readonly string[];
};

type Gathered = {
  models: ModelStore;
  parts: PartStore;
  fitments: Fitments;
  conditions: readonly Condition[];
  patterns: readonly PatternRow[];
  enter(model: number, part: number, condition: number): void;
  problems: ProblemList & { add(problem: FeedProblem): void };
  ignored: readonly string[];
  rows: number;
  used: number;
  options: CollectOptions;
};

/**
 * What all rows together say: patterns, replacements, and fitments by model.
 * @throws UnusableFeed where the patterns mean too much
 */
export function finishFeed(gathered: Gathered): CollectedFeed {
  const { models, parts, fitments, patterns, problems, options } = gathered;
  models.close();
  parts.close();
  const meant = expandPatterns(
    patterns,
    models.all,
    (model, { part, condition }) => gathered.enter(model, part, condition),
    problems.add,
    { ...feedLimits, ...options.limits },
  );
  const { standIn, replaces, chains } = followReplacements(
    parts.all,
    parts.indexOf,
    parts.replacements,
    problems.add,
  );
  for (const [index, numbers] of replaces) {
    const part = parts.all[index];
    if (part) part.replaces = numbers.slice(0, bounds.replaces);
  }
  const twins = mergeTwins(models.all);
  const grouped = groupFitments(fitments, models.all.length, twins, standIn, gathered.conditions);
  const collected = leaveOutUnused(models.all, parts.all, grouped, options);
  const count = (code: FeedProblem["code"]) => problems.counts.get(code) ?? 0;
  return {
    collected,
    figures: {
      rowsRead: gathered.rows,
      rowsUsed: gathered.used + meant,
      models: collected.models.length,
      parts: collected.parts.length,
      fitments: collected.partOf.length,
      conditions: collected.conditions.size,
      duplicates: grouped.duplicates,
      conflicts: count("part-conflict") + count("machine-conflict") + count("replacement-conflict"),
      chains,
    },
    problems,
    ignored: gathered.ignored,
  };
}

/** Without models that were merged into others and parts that nothing fits or that others are sold for. */
function leaveOutUnused(
  models: readonly CollectedModel[],
  parts: readonly SoldPart[],
  { offsets, partOf, conditions }: Omit<Collected, "models" | "parts">,
  { shop, defaults }: CollectOptions,
): Collected {
  const keptModels: CollectedModel[] = [];
  for (const [index, model] of models.entries()) {
    const start = offsets[index] ?? 0;
    if (start === offsets[index + 1]) continue;
    // A dash stands in every language for what nobody said.
    model.brand ||= defaults?.brand || "–";
    model.machine ||= defaults?.machine || "fridge-freezer";
    offsets[keptModels.length] = start;
    keptModels.push(model);
  }
  offsets[keptModels.length] = partOf.length;
  const places = new Uint32Array(parts.length);
  for (const part of partOf) places[part] = 1;
  const keptParts = parts.filter((_, index) => places[index] === 1);
  let place = 0;
  for (const [index, isUsed] of places.entries()) if (isUsed) places[index] = place++;
  for (const [fitment, part] of partOf.entries()) partOf[fitment] = places[part] ?? 0;
  return {
    ...(shop ? { shop } : {}),
    models: keptModels,
    parts: keptParts,
    offsets: offsets.slice(0, keptModels.length + 1),
    partOf,
    conditions,
  };
}
