import { bounds } from "../bounds.ts";
import type { Condition } from "../condition.ts";
import type { SoldPart } from "../schema.ts";

/*
 * A shard: a dozen models with all that is sold for them. Parts stand in columns, and a link says only where the part's
 * number comes into it: each byte is waited for beside a fridge, and so half of them are spared. A shard is read back
 * as a catalogue of one file, which is then checked as any other.
 */

/** Codes, normalised, that go on where a folded code ends, and how many there are in all. */
export type Endings = Record<string, { all: number; keys: string[] }>;

/** A part by its place in a list; with what else must stand on the plate, where there is something. */
type FitCell = number | [part: number, variant: string | null, from: string | null, to: string | null];

/** One model of a shard: its cells, the last of which is filled by `addFit`. */
export type ModelRow = [code: string, brand: string, machine: string, isCrowded: 0 | 1, fits: FitCell[]];

/** Adds a part by its place to a model. */
export function addFit([, , , , fits]: ModelRow, part: number, when: Condition | undefined): void {
  fits.push(when ? [part, when.variant ?? null, when.serialFrom ?? null, when.serialTo ?? null] : part);
}

/** Writes a shard as JSON. The models' places are those in `parts`. */
export function writeShard(
  models: readonly ModelRow[],
  parts: readonly SoldPart[],
  endings: Endings | undefined,
): string {
  const columns = columnNames.map((name) => parts.map((part) => cellIn[name](part) ?? null));
  return JSON.stringify({ models, parts: columns, ...(endings ? { endings } : {}) });
}

/** The columns of the parts, in their order. */
const columnNames = [
  ...["number", "kind", "name", "minor", "currency", "stock"],
  ...["link", "picture", "origin", "effortMinutes", "replaces"],
] as const;

// A feed of a million models writes tens of millions of cells: no object is made for a row.
const cellIn: Record<(typeof columnNames)[number], (part: SoldPart) => unknown> = {
  number: ({ number }) => number,
  kind: ({ kind }) => kind,
  name: ({ name }) => name,
  minor: ({ price }) => price.minor,
  currency: ({ price }) => price.currency,
  stock: ({ stock }) => stock,
  link: ({ link, number }) => shorten(link, number),
  picture: ({ picture, number }) => shorten(picture, number),
  origin: ({ origin }) => origin,
  effortMinutes: ({ effortMinutes }) => effortMinutes,
  replaces: ({ replaces }) => replaces,
};

// What stands in a link for the part's number, as it is or in small letters; no address has braces in it.
const shorten = (address: string | undefined, number: string) =>
  address?.replace(number, "{n}").replace(number.toLowerCase(), "{l}");
const lengthen = (address: unknown, number: unknown) =>
  typeof address === "string" && typeof number === "string"
    ? address.replace("{n}", () => number).replace("{l}", () => number.toLowerCase())
    : address;

/** A shard as it was fetched: rows of models, columns of parts, neither looked at yet. */
export type Shard = {
  models: unknown[][];
  parts: unknown[][];
  endings: Map<string, { all: number; keys: string[] }>;
};

/** The outline of a fetched shard; what has another shape, or is too much, is left out. Never throws. */
export function readShard(json: unknown): Shard {
  const { models, parts, endings } = Object(json) as Record<string, unknown>;
  const lists = (list: unknown, most: number = bounds.shardRows) =>
    Array.isArray(list) ? list.slice(0, most) : [];
  const told = Object.entries(Object(endings) as Record<string, unknown>).slice(0, bounds.shardRows);
  const goesOn = told.map(([fold, value]) => {
    const { all, keys } = Object(value) as Record<string, unknown>;
    const texts = lists(keys).filter((key) => typeof key === "string" && key.length <= bounds.code);
    return [fold, { all: Math.max(Number(all) || 0, texts.length), keys: texts }] as const;
  });
  return {
    models: lists(models, bounds.shardModels).filter((row) => Array.isArray(row)),
    parts: lists(parts, columnNames.length).map((column) => lists(column)),
    endings: new Map(goesOn),
  };
}

/** Whether the row of a model says that another code may be one slip away; a row that does not say counts as such. */
export const isCrowded = (row: readonly unknown[]) => row[3] !== 0;

/** Some models of some shards as one catalogue file, to be read by `parseCatalogue`. */
export function catalogueOf(found: readonly { shard: Shard; row: readonly unknown[] }[]): object {
  const models = found.map(({ row: [code, brand, machine] }) => ({ code, brand, machine }));
  const parts = new Map<unknown, Record<string, unknown> & { fits: unknown[] }>();
  for (const { shard, row } of found) {
    const [code, , , , fits] = row;
    for (const fit of Array.isArray(fits) ? fits.slice(0, bounds.shardRows) : []) {
      const [place, variant, serialFrom, serialTo] = Array.isArray(fit) ? fit : [fit];
      const number = shard.parts[0]?.[place];
      if (number === undefined) continue;
      const part = parts.get(number) ?? partAt(shard, place);
      parts.set(number, part);
      part.fits.push(Array.isArray(fit) ? { code, ...given({ variant, serialFrom, serialTo }) } : code);
    }
  }
  return { models, parts: [...parts.values()] };
}

function partAt({ parts }: Shard, place: number) {
  const cells = Object.fromEntries(columnNames.map((name, column) => [name, parts[column]?.[place]]));
  const { minor, currency, link, picture, ...rest } = cells;
  const links = { link: lengthen(link, rest.number), picture: lengthen(picture, rest.number) };
  const fits: unknown[] = [];
  return { ...given({ ...rest, ...links }), price: { minor, currency }, fits };
}

const given = (cells: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(cells).filter(([, cell]) => cell !== null && cell !== undefined));
