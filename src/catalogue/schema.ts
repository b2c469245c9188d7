import * as z from "zod/mini";
import { bounds } from "./bounds.ts";
import { type Condition, conditionalFit, label } from "./condition.ts";
import { normaliseCode } from "./model-code.ts";
import { plainText, safeLink } from "./untrusted-text.ts";

const slug = z.string().check(z.maxLength(bounds.label), z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));
const count = z.int().check(z.nonnegative());

/** A row of the list `models`. */
export const modelRow = z.object({ code: label, brand: label, machine: slug });

/** A row of the list `parts`; `safeLink` bounds its links, and each entry of `fits` is read by itself. */
export const partRow = z.object({
  number: label,
  kind: slug,
  name: z
    .string()
    .check(z.maxLength(bounds.writtenName, { abort: true }), z.overwrite(plainText), z.minLength(1)),
  price: z.object({ minor: count, currency: z.string().check(z.maxLength(3), z.regex(/^[A-Z]{3}$/)) }),
  stock: z.enum(["in-stock", "few", "out-of-stock"]),
  link: z.optional(z.unknown()),
  picture: z.optional(z.unknown()),
  replaces: z.optional(z.array(label).check(z.maxLength(bounds.replaces))),
  fits: z.array(z.unknown()).check(z.maxLength(bounds.fits)),
  origin: z.optional(z.enum(["original", "compatible"])),
  effortMinutes: z.optional(count.check(z.maximum(bounds.minutes))),
});

/** A machine of the catalogue. `code` is as printed, `key` the same as `normaliseCode` gives it. */
export type Model = z.infer<typeof modelRow> & { key: string };

/** One row of a fitment: the code alone, or the code with what else must stand on the plate. */
export const fitRow = z.union([z.string().check(z.maxLength(bounds.label)), conditionalFit]);

/**
 * A spare part. `price.minor` is in the smallest unit of an ISO 4217 currency, `effortMinutes` the time for
 * fitting it; `link` and `picture` are http or https, or missing; `replaces` holds older numbers that it stands in for;
 * `fits` holds only codes of models of the catalogue.
 */
export type Part = Omit<z.infer<typeof partRow>, "link" | "picture" | "fits"> & {
  link?: string;
  picture?: string;
  fits: string[];
};

/** A part by itself, whatever it fits. */
export type SoldPart = Omit<Part, "fits" | "origin" | "effortMinutes" | "replaces"> & {
  origin?: "original" | "compatible";
  effortMinutes?: number;
  replaces?: string[];
};

/** A part that fits a model, and on what condition. */
export type Fitment = { part: Part; when?: Condition };

/** What a shop sells. Maps, because a feed may call a model `__proto__`. */
export type Catalogue = {
  shop?: string;
  models: ReadonlyMap<string, Model>;
  parts: readonly Part[];
  fitments: ReadonlyMap<string, readonly Fitment[]>;
};

/** What was wrong in a feed, where (`parts.3.price.minor`), and the offending text if it was one. */
export type CatalogueProblem = {
  code:
    | "not-a-catalogue"
    | "not-a-list"
    | "bad-row"
    | "unreadable-code"
    | "duplicate-model"
    | "duplicate-part"
    | "unknown-model"
    | "bad-fit"
    | "unsafe-link"
    | "name-cut"
    | "too-many";
  path: string;
  found?: string;
};

/**
 * Reads a shop's catalogue, which nobody here has checked. Never throws on JSON: a row that is unusable is
 * left out, a bad link or fitment is left out of its row, and each is reported; all else is kept. Of two
 * rows with the same code or number the first counts, and of lists that are too long the beginning. Codes that only look alike stay two models.
 */
export function parseCatalogue(json: unknown): ParsedCatalogue {
  const steps = parseInSteps(json);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

export type ParsedCatalogue = { catalogue: Catalogue; problems: CatalogueProblem[] };

/** Rows in one step of `parseInSteps`: a slow phone reads them in less than a frame and a half. */
const STEP = 20;

/** Fitments in one step, in one row or in several: a filter may fit every machine of a shop. */
const FITS_STEP = 200;

/** The same, with a pause offered after every few rows: thousands of them in one go would freeze a phone. */
export function* parseInSteps(json: unknown): Generator<void, ParsedCatalogue> {
  const problems: CatalogueProblem[] = [];
  const models = new Map<string, Model>();
  const codesByKey = new Map<string, string[]>();
  const parts = new Map<string, Part>();
  const fitments = new Map<string, Fitment[]>();

  const report = (code: CatalogueProblem["code"], path: string, found?: unknown) => {
    problems.push(
      typeof found === "string" ? { code, path, found: found.slice(0, bounds.label) } : { code, path },
    );
  };
  if (typeof json !== "object" || json === null) report("not-a-catalogue", "");
  const feed = Object(json) as Record<string, unknown>;

  function* readRows<Row>(
    list: "models" | "parts",
    schema: z.ZodMiniType<Row>,
    take: (row: Row, path: string) => Generator<void, void> | null,
  ) {
    const rows = feed[list];
    if (!Array.isArray(rows)) return report("not-a-list", list);
    if (rows.length > bounds[list]) report("too-many", list);
    for (const [index, row] of rows.slice(0, bounds[list]).entries()) {
      if (index % STEP === 0) yield;
      const path = `${list}.${index}`;
      const read = schema.safeParse(row);
      if (read.success) yield* take(read.data, path) ?? [];
      else for (const fault of read.error.issues) report("bad-row", [path, ...fault.path].join("."));
    }
  }

  function takeModel(row: z.infer<typeof modelRow>, path: string): null {
    const read = normaliseCode(row.code);
    if (read.kind === "unreadable") report("unreadable-code", `${path}.code`, row.code);
    else if (models.has(row.code)) report("duplicate-model", `${path}.code`, row.code);
    else {
      models.set(row.code, { ...row, key: read.code });
      fitments.set(row.code, []);
      codesByKey.set(read.code, [...(codesByKey.get(read.code) ?? []), row.code]);
    }
    return null;
  }
  yield* readRows("models", modelRow, takeModel);

  /** A fitment written in another style counts if it can mean one model only. */
  function resolveFit(fit: string): string | undefined {
    if (models.has(fit)) return fit;
    const read = normaliseCode(fit);
    const codes = read.kind === "code" ? codesByKey.get(read.code) : undefined;
    return codes?.length === 1 ? codes[0] : undefined;
  }

  let fitsRead = 0;
  yield* readRows("parts", partRow, function* ({ link, picture, fits, ...row }, path) {
    if (parts.has(row.number)) return report("duplicate-part", `${path}.number`, row.number);
    const part: Part = { ...row, fits: [] };
    if (row.name.length > bounds.name) {
      report("name-cut", `${path}.name`, row.name);
      part.name = plainText(row.name.slice(0, bounds.name));
    }
    for (const [name, given] of [["link", link] as const, ["picture", picture] as const]) {
      const safe = safeLink(given);
      if (safe) part[name] = safe;
      else if (given !== undefined) report("unsafe-link", `${path}.${name}`, given);
    }
    const listed = new Set<string>();
    const codes = new Set<string>();
    const left = bounds.allFits - fitsRead;
    if (fits.length > left) report("too-many", `${path}.fits`);
    for (const [index, fit] of fits.slice(0, Math.max(0, left)).entries()) {
      if (++fitsRead % FITS_STEP === 0) yield;
      const at = `${path}.fits.${index}`;
      const read = fitRow.safeParse(fit);
      if (!read.success) {
        // A condition that cannot be read must not become a part that fits every machine of the model.
        report("bad-fit", at);
        continue;
      }
      const { code: named, ...when } = typeof read.data === "string" ? { code: read.data } : read.data;
      const code = resolveFit(named);
      if (code === undefined) report("unknown-model", at, named);
      if (code === undefined || listed.has(JSON.stringify([code, when]))) continue;
      listed.add(JSON.stringify([code, when]));
      codes.add(code);
      fitments.get(code)?.push(Object.keys(when).length > 0 ? { part, when } : { part });
    }
    part.fits = [...codes];
    parts.set(part.number, part);
  });

  const shop = typeof feed.shop === "string" ? plainText(feed.shop.slice(0, bounds.name)) : "";
  const lists = { models, parts: [...parts.values()], fitments };
  return { catalogue: shop ? { shop, ...lists } : lists, problems };
}
