import * as z from "zod/mini";
import { recordOf } from "../../condition/index.ts";
import { type ColumnName, columnNames, UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";

const label = z.string().check(z.maxLength(shopFeedBounds.label));
const words = <Value extends z.ZodMiniType>(value: Value) => recordOf(label, value, shopFeedBounds.kinds);

const byColumn = Object.fromEntries(columnNames.map((name) => [name, z.optional(label)]));

/** How one file says things: its heading for each field of a feed, what stands between its fields, how it is encoded. */
const file = {
  columns: z.strictObject(byColumn as Record<ColumnName, z.ZodMiniOptional<typeof label>>),
  encoding: z.optional(label),
  delimiter: z.optional(z.enum([",", ";", "\t", "|"])),
};

export const kindsSchema = words(label);

/**
 * How a shop's own feed is read, as a JSON file. `fitments` is of a second file, with a part's number and its models.
 * `kinds`: the shop's word for a kind of part, and the kind that it is, or `by-name` (told by the part's name) or
 * `left-out`. `names`: words of a part's name, and the kind that they mean. `stock`: the shop's words for it.
 */
export const mappingSchema = z.strictObject({
  ...file,
  fitments: z.optional(z.strictObject(file)),
  decimal: z.optional(z.enum(["comma", "dot"])),
  currency: z.optional(z.string().check(z.regex(/^[A-Z]{3}$/), z.maxLength(3))),
  base: z.optional(label),
  modelsSplit: z.optional(z.string().check(z.maxLength(20))),
  kinds: z.optional(kindsSchema),
  names: z.optional(words(label)),
  stock: z.optional(words(z.enum(["in-stock", "few", "out-of-stock"]))),
});

export type Mapping = z.infer<typeof mappingSchema>;
export type FileMapping = Pick<Mapping, "columns" | "encoding" | "delimiter">;

/** Kinds that are none of flows/: where to look instead, and that rows are not wanted. */
export const byName = "by-name";
export const leftOut = "left-out";

/** @param name of the file, for the message. @throws UnusableFeed with what is wrong, and where */
export function readMapping(text: string, name: string): Mapping {
  return read(text, name, (json) => mappingSchema.safeParse(json));
}

/** A file of kinds alone: `{"Wasserfilter": "water-filter"}`. @throws UnusableFeed with what is wrong, and where */
export function readKinds(text: string, name: string): Record<string, string> {
  return read(text, name, (json) => kindsSchema.safeParse(json));
}

type Parsed<T> = { success: true; data: T } | { success: false; error: { issues: readonly Issue[] } };
type Issue = { path: PropertyKey[]; message: string };

function read<T>(text: string, name: string, parse: (json: unknown) => Parsed<T>): T {
  let json: unknown;
  try {
    if (text.length > shopFeedBounds.mappingBytes) throw new Error("too long");
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    throw new UnusableFeed(`${name} is no JSON, or too long`);
  }
  const parsed = parse(json);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new UnusableFeed(
    `${name} cannot be used. ${issue?.path.join(".") || "All of it"}: ${issue?.message}`,
  );
}
