import type { FileGuess, Inspection, Table } from "../../workbench/shop-feed/index.ts";
import type { ReadShop } from "./shop-files.ts";

/** What a shop's feed seems to be, for a program: the same as the lines say, all of it. */
export function inspectJson(shop: ReadShop, { guess, ...found }: Inspection) {
  const [first, second] = shop.encodings;
  const { mapping, split, kinds, needs } = guess;
  const fileOf = (
    { format, mark, rows, bad }: Table,
    columns: FileGuess,
    read: ReadShop["encodings"][number] | undefined,
  ) => ({ ...read, format, mark, rows: rows.length + bad.length, ...columns });
  return {
    files: [
      fileOf(shop.parts, guess.parts, first),
      ...(shop.fitments && guess.fitments ? [fileOf(shop.fitments, guess.fitments, second)] : []),
    ],
    ...{ mapping, split, kinds, needs },
    ...found,
  };
}
