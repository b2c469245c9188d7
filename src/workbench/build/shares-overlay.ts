import { parse, parseDocument } from "yaml";
import * as z from "zod/mini";
import { id, recordOf } from "../../guide/index.ts";

const folder = /^machine[\\/]causes[\\/]/;

/** Shares of causes that take the place of those in flows/machine/causes/: homes in 1,000. Nothing else fits in. */
export const sharesShape = recordOf(id, z.number().check(z.gt(0), z.maximum(1000)));

export type Shares = z.infer<typeof sharesShape>;

/** Reads a file of shares. @throws Error that says what it must be */
export function readShares(text: string): Shares {
  const read = sharesShape.safeParse(parse(text, { strict: true, uniqueKeys: true, maxAliasCount: 0 }));
  if (!read.success)
    throw new Error(
      "A file of shares has a line for each cause: its id, and a number above 0 and up to 1000",
    );
  return read.data;
}

/**
 * The files of a flows folder with other shares. Only those numbers are written anew, each in its place, so that lines
 * stay where they are.
 * @param files texts by path
 * @throws Error where a cause is named that the folder has not
 */
export function withShares(files: Record<string, string>, shares: Shares): Record<string, string> {
  const open = new Set(Object.keys(shares));
  const changed = Object.entries(files).map(([path, text]) => {
    if (!folder.test(path)) return [path, text] as const;
    const document = parseDocument(text);
    const places = Object.keys(shares).flatMap((cause) => {
      const node = document.getIn([cause, "share"], true) as { range?: [number, number, number] } | undefined;
      if (!node?.range) return [];
      open.delete(cause);
      return [{ from: node.range[0], to: node.range[1], share: shares[cause] }];
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
