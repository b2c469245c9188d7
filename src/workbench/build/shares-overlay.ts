import { parse, parseDocument } from "yaml";
import * as z from "zod/mini";
import { errorLimits } from "../../compile/index.ts";
import { id, recordOf } from "../../guide/index.ts";

const folder = /^machine[\\/]causes[\\/]/;

const errorIds = Object.values(errorLimits);

const share = z.number().check(z.gt(0), z.maximum(1000));
/** Above a half an answer would say the reverse of what it says. */
export const rate = z.number().check(z.gt(0), z.maximum(0.5));

/**
 * Numbers that take the place of those in flows/: shares of causes (machine/causes/), in homes of 1,000, and how often
 * people err (choosing.yaml). Nothing else fits in: no gate, danger, proof or other limit.
 */
export type Shares = Record<string, number>;

/** Reads a file of shares. @throws Error that says what it must be */
export function readShares(text: string): Shares {
  const read = recordOf(id, share).safeParse(
    parse(text, { strict: true, uniqueKeys: true, maxAliasCount: 0 }),
  );
  const isRight = read.success && errorIds.every((one) => rate.safeParse(read.data[one] ?? 0.5).success);
  if (!isRight)
    throw new Error(
      "A file of shares has a line for each cause: its id, and a number above 0 and up to 1000; and for each error of choosing.yaml one up to 0.5",
    );
  return read.data;
}

/**
 * The files of a flows folder with other shares and rates. Only those numbers are written anew, each in its place, so that lines
 * stay where they are.
 * @param files texts by path
 * @throws Error where a cause is named that the folder has not
 */
export function withShares(files: Record<string, string>, shares: Shares): Record<string, string> {
  const open = new Set(Object.keys(shares));
  const changed = Object.entries(files).map(([path, text]) => {
    const field = folder.test(path) ? "share" : path === "choosing.yaml" ? "value" : null;
    if (!field) return [path, text] as const;
    const document = parseDocument(text);
    const places = Object.entries(shares).flatMap(([id, share]) => {
      // Of the limits in that file none but these.
      if (field === "value" && !errorIds.some((error) => error === id)) return [];
      const node = document.getIn([id, field], true) as { range?: [number, number, number] } | undefined;
      if (!node?.range) return [];
      open.delete(id);
      return [{ from: node.range[0], to: node.range[1], share }];
    });
    places.sort((one, other) => other.from - one.from);
    const next = places.reduce(
      (left, { from, to, share }) => left.slice(0, from) + share + left.slice(to),
      text,
    );
    return [path, next] as const;
  });
  const [unknown] = open;
  if (unknown !== undefined) throw new Error(`"${unknown}" has a share, and is no cause of machine/causes/`);
  return Object.fromEntries(changed);
}
