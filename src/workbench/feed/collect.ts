import type { Condition } from "../../catalogue/index.ts";
import { createCells, ownCopy, readLabel, readText } from "./cells.ts";
import type { CollectOptions } from "./collect-options.ts";
import type { Columns } from "./columns.ts";
import { readCondition } from "./condition-row.ts";
import { isPattern } from "./expand.ts";
import { type CollectedFeed, finishFeed } from "./finish.ts";
import { createGrowable } from "./growable.ts";
import { feedLimits, tooMuch } from "./limits.ts";
import { createModelStore } from "./models.ts";
import { createPartStore } from "./parts.ts";
import type { PatternRow } from "./patterns.ts";
import { createProblemList } from "./problem.ts";
import { createFeedReader, type FeedSink } from "./reader.ts";
import type { FeedReader } from "./row.ts";

/** Takes a feed piece by piece; `rows` is how many rows were read so far. */
export type Collector = FeedReader & Omit<RowCollector, keyof FeedSink>;

/** Takes the rows of a feed that somebody else reads. */
export type RowCollector = FeedSink & { readonly rows: number; finish(): CollectedFeed };

/**
 * Collects the models, parts and fitments of a feed, in memory that grows by what is different and not by rows.
 * `finish` may be called once, after `end`.
 * @throws UnusableFeed from push or end, where the feed cannot be read at all, and from any of them where it amounts to
 * too much
 */
export function createCollector(options: CollectOptions): Collector {
  const rows = createRowCollector(options);
  const reader = createFeedReader(rows, options.own);
  return {
    push: reader.push,
    end: reader.end,
    get rows() {
      return rows.rows;
    },
    finish: rows.finish,
  };
}

/** The same for rows. @throws UnusableFeed where the feed amounts to too much */
export function createRowCollector(options: CollectOptions): RowCollector {
  const limits = { ...feedLimits, ...options.limits };
  const problems = createProblemList(options.mostProblems);
  const ignored: string[] = [];
  const models = createModelStore();
  const parts = createPartStore(options.few);
  const fitments = { models: createGrowable(), parts: createGrowable(), conditions: createGrowable() };
  const conditions: Condition[] = [];
  const conditionByText = new Map<string, number>();
  const patterns: PatternRow[] = [];
  const cells = createCells(problems.add);
  let rows = 0;
  let used = 0;

  function enter(model: number, part: number, condition: number): void {
    if (fitments.models.length >= limits.fitments)
      throw tooMuch("This feed has", limits.fitments, "fitments");
    if (condition > 0) fitments.conditions.put(fitments.models.length, condition);
    fitments.models.push(model);
    fitments.parts.push(part);
  }

  /** @returns the condition's number from 1, 0 where there is none, −1 where it cannot be used */
  function takeCondition(): number {
    const [variant, from, to] = [cells.raw("variant"), cells.raw("serial-from"), cells.raw("serial-to")];
    if (variant === "" && from === "" && to === "") return 0;
    const text = `${variant}\0${from}\0${to}`;
    const known = conditionByText.get(text);
    if (known !== undefined) return known;
    const condition = readCondition(cells);
    if (condition === null) return -1;
    const number = condition ? conditions.push(condition) : 0;
    conditionByText.set(ownCopy(text), number);
    return number;
  }

  function takePattern(part: number, condition: number): void {
    const pattern = readLabel(cells, "model", "bad-model");
    const brand = readText(cells, "brand");
    if (pattern === null || brand === null) return;
    if (patterns.length >= limits.patterns)
      throw tooMuch("This feed has", limits.patterns, "rows with a pattern");
    const place = cells.placeOf("model");
    patterns.push({ pattern: ownCopy(pattern), brand: ownCopy(brand), part, condition, ...place });
  }

  function takeRow(fields: readonly string[], columns: Columns): void {
    const part = parts.take(cells, fields, columns);
    const condition = takeCondition();
    if (part < 0 || condition < 0) return;
    const code = cells.raw("model");
    if (isPattern(code)) {
      takePattern(part, condition);
      return;
    }
    const known = models.known(code, cells.raw("brand"), cells.raw("machine"));
    const model = known >= 0 ? known : models.take(cells);
    if (model < 0) return;
    enter(model, part, condition);
    used++;
  }

  return {
    row(fields, columns, at) {
      // Spreadsheets write their empty rows, too.
      if (fields[0] === "" && fields.every((field) => field === "")) return;
      rows++;
      cells.move(fields, columns, at);
      takeRow(fields, columns);
    },
    problem(problem) {
      // Of a row that could not be read nothing else is heard.
      if (problem.code !== "doubled-heading") rows++;
      problems.add(problem);
    },
    ignored: (heading) => ignored.push(heading),
    get rows() {
      return rows;
    },
    finish: () =>
      finishFeed({
        models,
        parts,
        fitments,
        conditions,
        patterns,
        enter,
        problems,
        ignored,
        rows,
        used,
        options,
      }),
  };
}
