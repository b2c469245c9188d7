import { shopFeedBounds } from "./bounds.ts";
import { tellKind, tellKinds } from "./kinds.ts";
import type { Losses } from "./losses.ts";
import { byName, leftOut, type Mapping } from "./mapping.ts";
import { isDated, isRounded } from "./model-codes.ts";
import { readMoney } from "./money.ts";
import { type RowReader, readLine } from "./part-cells.ts";
import { readStock } from "./stock.ts";
import type { TableRow } from "./table.ts";

/** A part as the feed's reader takes it, cell by cell, and the line it was first read in. */
export type ShopPart = {
  line: number;
  number: string;
  kind: string;
  name: string;
  price: string;
  currency: string;
  stock: string;
  link: string;
  picture: string;
  replaces: string;
  "replaced-by": string;
  origin: string;
  minutes: string;
};

/** Why a row's part cannot be used, and what stands there. */
export type PartFault = { fault: string; found: string };

const mark = { number: "The part number", name: "The name" } as const;

/** The number of a row's part, or why there is none. */
export function readNumber(row: TableRow, read: RowReader): { number: string } | PartFault {
  const written = read(row, "number");
  const line = readLine(written, mark.number);
  if ("fault" in line) return { fault: line.fault, found: written };
  if (line.text === "") return { fault: "The part number is empty.", found: read(row, "name") };
  if (isRounded(line.text) || isDated(line.text))
    return {
      fault: "A spreadsheet has made a number or a date of this part number; it is lost. Export it as text.",
      found: written,
    };
  if (line.text.length > 80)
    return { fault: "The part number is longer than 80 characters.", found: written };
  return { number: line.text };
}

/**
 * Reads what a row says of its part.
 * @param kinds of the trade
 * @param losses is told what is left out of a part that is kept
 */
export function readShopPart(
  row: TableRow,
  read: RowReader,
  mapping: Mapping,
  kinds: readonly string[],
  losses: Losses,
): ShopPart | PartFault {
  const number = readNumber(row, read);
  if ("fault" in number) return number;
  const name = readLine(read(row, "name"), mark.name);
  if ("fault" in name) return { fault: name.fault, found: read(row, "name") };
  if (name.text === "") return { fault: "The name is empty.", found: number.number };
  const kind = kindOf(read(row, "kind"), name.text, mapping, kinds);
  if ("fault" in kind) return kind;
  const written = read(row, "price");
  if (written === "") return { fault: "The price is empty.", found: number.number };
  const currency = readCurrency(read(row, "currency")) || mapping.currency || "";
  const money = readMoney(written, mapping.decimal ?? null, currency);
  if ("fault" in money) return { fault: money.fault, found: written };
  const note = (message: string, found: string) => losses.add("note", message, row.line, found);
  if (/Ã[\u0080-\u00BF]|Â[\u00A0-\u00BF]/.test(name.text))
    note("Letters of the name look as if they were read in a wrong encoding. Say --encoding.", name.text);
  const stock = readStock(read(row, "stock"), mapping.stock);
  if (stock === null)
    note(
      "The stock is a word that is not known; it counts as out of stock. Name it in stock.",
      read(row, "stock"),
    );
  const olds = readLine(read(row, "replaces").replace(/[\r\n,;]+/g, "|"), "");
  return {
    line: row.line,
    number: number.number,
    kind: kind.kind,
    name: name.text,
    ...money,
    stock: stock ?? "out-of-stock",
    link: fullLink(read(row, "link"), mapping.base, (why) => note(why, read(row, "link"))),
    picture: fullLink(firstLink(read(row, "picture")), mapping.base, (why) =>
      note(why, read(row, "picture")),
    ),
    replaces: "text" in olds ? olds.text : "",
    "replaced-by": read(row, "replaced-by"),
    origin: read(row, "origin"),
    minutes: read(row, "minutes"),
  };
}

const currencySigns = new Map([
  ["€", "EUR"],
  ["£", "GBP"],
]);

const readCurrency = (written: string) => currencySigns.get(written) ?? written.toUpperCase();

/** Some shops put all pictures of a part into one cell. */
const firstLink = (cell: string) => cell.split(/[\s|]|[,;](?=\s|https?:)/)[0] ?? "";

function fullLink(written: string, base: string | undefined, tell: (why: string) => void): string {
  if (written === "" || /^https?:/i.test(written)) return written;
  if (!base) {
    tell("An address has no host. Say --base, or it is left out.");
    return "";
  }
  const full = URL.canParse(written, base) ? new URL(written, base).href : "";
  if (!/^https?:/.test(full)) {
    tell("An address is none of http or https; it is left out.");
    return "";
  }
  return full;
}

/** The key under which a mapping has a shop's word for a kind. */
export const kindKey = (cell: string): string =>
  cell.replace(/\s+/g, " ").trim().slice(0, shopFeedBounds.label);

function kindOf(
  cell: string,
  name: string,
  { columns, kinds: own = {}, names = {} }: Mapping,
  kinds: readonly string[],
): { kind: string } | PartFault {
  const key = kindKey(cell);
  const said = Object.hasOwn(own, key) ? own[key] : kinds.includes(key) ? key : undefined;
  if (said === leftOut) return { fault: "Its kind is left out, as the mapping says.", found: key };
  if (said !== undefined && said !== byName) {
    if (kinds.includes(said)) return { kind: said };
    return { fault: `The mapping makes it "${said}", which is none of the kinds of parts.yaml.`, found: key };
  }
  if (columns.kind !== undefined && said === undefined && key !== "")
    return { fault: "Its kind is not known. Name it in kinds.", found: key };
  const low = name.toLowerCase();
  const named =
    Object.entries(names).find(([words]) => low.includes(words.toLowerCase()))?.[1] ?? tellKind(name);
  if (named === leftOut) return { fault: "Its name is left out, as the mapping says.", found: name };
  if (named && kinds.includes(named)) return { kind: named };
  const several = named ? [] : tellKinds(name);
  if (several.length > 1)
    return {
      fault: `Its name may mean ${several.join(" or ")}. Name it in names, or in a column.`,
      found: name,
    };
  return {
    fault: "Its name tells no kind of part that is known. Name it in names, or in a column.",
    found: name,
  };
}
