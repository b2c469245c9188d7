import { createChance } from "./chance.ts";
import { createCodes, type Family, sizeOf } from "./codes.ts";
import { csv, jsonLines, modelColumns, partColumns, plateColumns } from "./columns.ts";
import { inventMakers } from "./makers.ts";
import { type FamilyPart, partsOf } from "./parts.ts";

/**
 * What feed is made. `dense`: codes that are numbered through; else few of the possible ones exist, with twins that look
 * alike in between. `minutes`: the time for fitting a part, by kind.
 */
export type DemoFeed = {
  models: number;
  seed: number;
  minutes: Record<string, number>;
  dense?: boolean;
  jsonLines?: boolean;
};

/** Characters in a piece of the feed, about: enough that writing costs little. */
const piece = 1 << 18;

/**
 * The feed in pieces of some hundred kilobytes, one row for each model and part; equal numbers give equal bytes. Keeps
 * nothing but a hash of each code, so that no code comes twice.
 */
export function* createDemoFeed({
  models,
  seed,
  minutes,
  dense = false,
  ...form
}: DemoFeed): Generator<string> {
  const writer = form.jsonLines ? jsonLines : csv;
  const codesOf = createCodes(seed, dense);
  const anyPlate = writer.group({}, plateColumns);
  let text = writer.header;
  let left = models;
  for (const family of familiesOf(seed, models)) {
    if (left <= 0) break;
    const { machine, parts } = partsOf(seed, family, minutes);
    const written = parts.map(({ cells, when }) => ({ when, cells: writer.group(cells, partColumns) }));
    for (const [at, code] of codesOf(family).slice(0, left).entries()) {
      const model = writer.group({ brand: family.maker.name, model: code, machine }, modelColumns);
      for (const { when, cells } of written) {
        const plate = when ? writer.group(plateOf(seed, family, at, when), plateColumns) : anyPlate;
        text += writer.row(model, plate, cells);
      }
    }
    left -= family.size;
    if (text.length < piece) continue;
    yield text;
    text = "";
  }
  if (text) yield text;
}

/** The codes of the models alone, in the order of the feed. */
export function* demoCodes({ models, seed, dense = false }: Omit<DemoFeed, "minutes">): Generator<string> {
  const codesOf = createCodes(seed, dense);
  let left = models;
  for (const family of familiesOf(seed, models)) {
    if (left <= 0) break;
    yield* codesOf(family).slice(0, left);
    left -= family.size;
  }
}

/** Families without end, maker by maker. */
function* familiesOf(seed: number, models: number): Generator<Family, never> {
  let place = 0;
  for (const maker of inventMakers(seed, models / 22.5))
    for (let placeInMaker = 0; placeInMaker < maker.families; placeInMaker++, place++)
      yield { maker, placeInMaker, place, size: sizeOf(seed, place) };
  throw new Error("Makers never run out");
}

/** What must stand on the plate of one model for the older or the newer of two parts. */
function plateOf(seed: number, family: Family, at: number, { by, half }: NonNullable<FamilyPart["when"]>) {
  if (by === "variant") return { variant: half === "older" ? "01" : "02" };
  const last = 10_000_000 + Math.floor(createChance(seed ^ at, -3 - family.place)() * 80_000_000);
  return half === "older" ? { "serial-to": `${last}` } : { "serial-from": `${last + 1}` };
}
