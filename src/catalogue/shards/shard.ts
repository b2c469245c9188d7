import type { Condition } from "../condition.ts";

/*
 * A shard: some dozen models with all that is sold for them, in rows without names, because each byte of it is waited
 * for beside a fridge. It is read back as a catalogue of one file, which is then checked as any other.
 */

/** A part as a feed gives it: a row of a catalogue file without `fits`. */
export type PartRow = {
  number: string;
  kind: string;
  name: string;
  price: { minor: number; currency: string };
  stock: string;
  link?: string;
  picture?: string;
  origin?: string;
  effortMinutes?: number;
  replaces?: string[];
};

/** A model with its parts by their places in a list. `isCrowded`: another code may be one slip away. */
export type ShardModel = {
  code: string;
  brand: string;
  machine: string;
  isCrowded: boolean;
  fits: { part: number; when?: Condition | undefined }[];
};

/** Codes, normalised, that go on where a folded code ends, and how many there are in all. */
export type Endings = Record<string, { all: number; keys: string[] }>;

type Cell = string | number | null;
type FitCell = number | [part: number, variant: Cell, from: Cell, to: Cell];

const nothing = null;

/** Writes a shard as JSON. `parts` is the list that the models' places mean; only those in use are written. */
export function writeShard(
  models: readonly ShardModel[],
  parts: readonly PartRow[],
  endings: Endings,
): string {
  const places = new Map<number, number>();
  const placeOf = (part: number) => {
    if (!places.has(part)) places.set(part, places.size);
    return places.get(part) as number;
  };
  const rows = models.map(({ code, brand, machine, isCrowded, fits }) => [
    code,
    brand,
    machine,
    Number(isCrowded),
    fits.map(
      ({ part, when }): FitCell =>
        when
          ? [placeOf(part), when.variant ?? nothing, when.serialFrom ?? nothing, when.serialTo ?? nothing]
          : placeOf(part),
    ),
  ]);
  const used = [...places.keys()].map((part) => partCells(parts[part] as PartRow));
  return JSON.stringify({ models: rows, parts: used, ...(Object.keys(endings).length ? { endings } : {}) });
}

function partCells(part: PartRow) {
  const cells = [
    part.number,
    part.kind,
    part.name,
    part.price.minor,
    part.price.currency,
    part.stock,
    part.link,
    part.picture,
    part.origin,
    part.effortMinutes,
    part.replaces,
  ].map((cell) => cell ?? nothing);
  // Most parts have little at the end of the row.
  while (cells.at(-1) === nothing) cells.pop();
  return cells;
}

/** A shard as it was fetched, its rows not yet looked at. */
export type Shard = {
  models: unknown[][];
  parts: unknown[][];
  endings: Map<string, { all: number; keys: string[] }>;
};

/** The outline of a fetched shard; what has another shape is left out. Never throws. */
export function readShard(json: unknown): Shard {
  const { models, parts, endings } = Object(json) as Record<string, unknown>;
  const rows = (list: unknown) => (Array.isArray(list) ? list.filter((row) => Array.isArray(row)) : []);
  const goesOn = Object.entries(Object(endings) as Record<string, unknown>).map(([fold, value]) => {
    const { all, keys } = Object(value) as Record<string, unknown>;
    const texts = Array.isArray(keys) ? keys.filter((key) => typeof key === "string") : [];
    return [fold, { all: Math.max(Number(all) || 0, texts.length), keys: texts }] as const;
  });
  return { models: rows(models), parts: rows(parts), endings: new Map(goesOn) };
}

/** Whether the row of a model says that another code may be one slip away; a row that does not say counts as such. */
export const isCrowded = (row: readonly unknown[]) => row[3] !== 0;

/** Some models of some shards as one catalogue file, to be read by `parseCatalogue`. */
export function catalogueOf(found: readonly { shard: Shard; row: readonly unknown[] }[]): object {
  const models = found.map(({ row: [code, brand, machine] }) => ({ code, brand, machine }));
  const parts = new Map<unknown, { fits: unknown[] }>();
  for (const { shard, row } of found) {
    const [code, , , , fits] = row;
    for (const fit of Array.isArray(fits) ? fits : []) {
      const [place, variant, serialFrom, serialTo] = Array.isArray(fit) ? fit : [fit];
      const cells = shard.parts[place];
      if (!cells) continue;
      const part = parts.get(cells[0]) ?? partOf(cells);
      parts.set(cells[0], part);
      part.fits.push(Array.isArray(fit) ? { code, ...given({ variant, serialFrom, serialTo }) } : code);
    }
  }
  return { models, parts: [...parts.values()] };
}

function partOf(cells: readonly unknown[]) {
  const [number, kind, name, minor, currency, stock, link, picture, origin, effortMinutes, replaces] = cells;
  const rest = given({ link, picture, origin, effortMinutes, replaces });
  return { number, kind, name, price: { minor, currency }, stock, ...rest, fits: [] as unknown[] };
}

const given = (cells: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(cells).filter(([, cell]) => cell !== null && cell !== undefined));
