import type { SoldPart } from "../../catalogue/index.ts";
import { plainText } from "../../catalogue/index.ts";
import { type Cells, ownCopy } from "./cells.ts";
import type { Columns } from "./columns.ts";
import { createGrowable } from "./growable.ts";
import { partColumns, readPart } from "./part-row.ts";
import { shorten } from "./problem.ts";
import { readReplacements } from "./replacement-row.ts";
import type { Replacement } from "./supersede.ts";

/** Reads and keeps the parts of a feed, each of which stands in many rows. */
export type PartStore = {
  readonly all: SoldPart[];
  readonly replacements: Replacement[];
  indexOf(number: string): number | undefined;
  /** @returns the part's index, and −1 where the row cannot be used, which is told */
  take(cells: Cells, fields: readonly string[], columns: Columns): number;
  /** Lets go of what only reading needs. */
  close(): void;
};

/**
 * A part is read and judged once; its other rows are only compared with the first as they are written.
 * @param few up to how many pieces in stock count as few
 */
export function createPartStore(few: number): PartStore {
  const all: SoldPart[] = [];
  const lines = createGrowable();
  const replacements: Replacement[] = [];
  const byNumber = new Map<string, number>();
  /** What stood in the first row of each part, by column. */
  const written = partColumns.map(() => [] as string[]);
  const words = new Map<string, string>();
  const prices = new Map<string, SoldPart["price"]>();
  let places: number[] = [];
  let placedBy: Columns | null = null;
  let numberPlace = -1;

  /** Columns with few different values share them; names and addresses are copied out of the feed's text. */
  function keep(text: string, part: SoldPart, column: (typeof partColumns)[number]): string {
    if (column !== "name" && column !== "link" && column !== "picture") return word(text);
    return part[column] === text ? part[column] : ownCopy(text);
  }

  function isRepeated(index: number, fields: readonly string[]): boolean {
    for (let column = 0; column < places.length; column++) {
      const place = places[column] ?? -1;
      if (place >= 0 && fields[place] !== written[column]?.[index]) return false;
    }
    return true;
  }

  function enter(cells: Cells, part: SoldPart): number {
    const { number, name, kind, link, picture } = part;
    const own: SoldPart = {
      ...part,
      number: ownCopy(number),
      name: ownCopy(name),
      kind: word(kind),
      price: shared(part.price),
    };
    if (link !== undefined) own.link = ownCopy(link);
    if (picture !== undefined) own.picture = ownCopy(picture);
    for (const [at, column] of partColumns.entries()) written[at]?.push(keep(cells.raw(column), own, column));
    byNumber.set(own.number, all.length);
    lines.push(cells.line);
    replacements.push(...readReplacements(cells, own.number));
    return all.push(own) - 1;
  }

  function word(text: string): string {
    const known = words.get(text);
    if (known !== undefined) return known;
    const own = ownCopy(text);
    words.set(own, own);
    return own;
  }

  function shared({ minor, currency }: SoldPart["price"]): SoldPart["price"] {
    const text = `${minor} ${currency}`;
    const known = prices.get(text) ?? { minor, currency: word(currency) };
    prices.set(text, known);
    return known;
  }

  return {
    all,
    replacements,
    indexOf: (number) => byNumber.get(number),
    take(cells, fields, columns) {
      if (columns !== placedBy) {
        placedBy = columns;
        places = partColumns.map((column) => columns.get(column) ?? -1);
        numberPlace = columns.get("number") ?? -1;
      }
      const number = fields[numberPlace] ?? "";
      const known = byNumber.get(number) ?? byNumber.get(plainText(number));
      if (known !== undefined && isRepeated(known, fields)) return known;
      const part = readPart(cells, few);
      if (!part) return -1;
      const first = all[known ?? -1];
      if (known === undefined || !first) return enter(cells, part);
      const other = differing(first, part) ?? (isOtherwiseReplaced(cells, known) ? "replaces" : null);
      if (other)
        cells.problem(
          "part-conflict",
          other,
          `${part.number} has another "${other}" here than in line ${lines.at(known ?? 0)}${said(first, other)}; the first one counts.`,
        );
      return known;
    },
    close() {
      words.clear();
      for (const column of written) column.length = 0;
    },
  };

  /** Only a row that names replacements can contradict; an empty cell in a later row says nothing. */
  function isOtherwiseReplaced(cells: Cells, index: number): boolean {
    return (["replaces", "replaced-by"] as const).some((column) => {
      const now = cells.raw(column).trim();
      return now !== "" && now !== written[partColumns.indexOf(column)]?.[index]?.trim();
    });
  }
}

type Differing = "kind" | "name" | "price" | "currency" | "stock" | "link" | "picture" | "origin" | "minutes";

function differing(one: SoldPart, other: SoldPart): Differing | null {
  for (const column of ["kind", "name", "stock", "link", "picture", "origin"] as const)
    if (one[column] !== other[column]) return column;
  if (one.price.currency !== other.price.currency) return "currency";
  if (one.price.minor !== other.price.minor) return "price";
  return one.effortMinutes === other.effortMinutes ? null : "minutes";
}

function said(part: SoldPart, column: Differing | "replaces"): string {
  const shown = column === "kind" || column === "name" || column === "stock" ? part[column] : undefined;
  return shown === undefined ? "" : ` ("${shorten(shown)}")`;
}
