import { gzipSync } from "node:zlib";
import { strToU8, zipSync } from "fflate";
import iconv from "iconv-lite";

const models = [["WX 430A/EU", "WX 431A/EU"], ["TRN-77K20"], ["WX 430A/EU", "TRN-77K21", "TRN-77K22"]];
const parts = ["Water filter für Ihr Gerät", "Door seal", "Ice bin & lid"].map((name, at) => ({
  sku: `LLS-${at}`,
  name: name.replace(" & lid", ", 4 l"),
  price: ["1.299,00 €", "12,90 €", "7,00 €"][at] ?? "",
  availability: "in stock",
  models: models[at] ?? [],
}));
const cells = parts.map(({ models: own, ...part }) => [...Object.values(part), own.join(", ")]);
const heading = ["SKU", "Name", "Price", "Availability", "Fits models"];

const textOf = (mark: string, end: string, rows = [heading, ...cells]) =>
  rows
    .map(
      (row) =>
        row.map((cell) => (cell.includes(mark) || cell.includes("\n") ? `"${cell}"` : cell)).join(mark) + end,
    )
    .join("");
const inLines = [
  heading,
  ...parts.map(({ models: own, ...part }) => [...Object.values(part), own.join("\n")]),
];
const xmlOf = (row: string, around: (rows: string) => string) =>
  around(
    parts
      .map(
        ({ sku, name, price, models: own }) =>
          `<${row}><id>${sku}</id><title>${name}</title><price>${price}</price><availability>in_stock</availability>${own
            .map((model) => `<model>${model}</model>`)
            .join("")}</${row}>\n`,
      )
      .join(""),
  );

/** The same three parts, as ten shops and more would write them. */
export const shapes: Record<string, Buffer> = {
  "commas, UTF-8": Buffer.from(textOf(",", "\n")),
  "semicolons, a byte order mark, CRLF": Buffer.from(`\uFEFF${textOf(";", "\r\n")}`),
  tabs: Buffer.from(textOf("\t", "\n")),
  bars: Buffer.from(textOf("|", "\n")),
  "models on lines of their own": Buffer.from(textOf(";", "\n", inLines)),
  "UTF-16 LE": iconv.encode(textOf("\t", "\r\n"), "utf-16le", { addBOM: true }),
  "UTF-16 BE": iconv.encode(textOf(";", "\r\n"), "utf-16be", { addBOM: true }),
  "Windows-1252": iconv.encode(textOf(";", "\r\n"), "windows-1252"),
  "entities, unquoted between semicolons": Buffer.from(
    textOf(";", "\n").replaceAll("ü", "&uuml;").replaceAll("ä", "&#228;").replaceAll("€", "&euro;"),
  ),
  gz: gzipSync(textOf(";", "\n")),
  zip: Buffer.from(zipSync({ "feed.csv": strToU8(textOf(";", "\n")) })),
  "a JSON list": Buffer.from(JSON.stringify(parts)),
  "a JSON list in an object": Buffer.from(JSON.stringify({ shop: "x", items: parts }, null, 2)),
  "JSON, an object a line": Buffer.from(parts.map((part) => `${JSON.stringify(part)}\n`).join("")),
  "RSS 2.0": Buffer.from(
    xmlOf(
      "item",
      (rows) => `<?xml version="1.0"?><rss version="2.0"><channel><title>Shop</title>${rows}</channel></rss>`,
    ),
  ),
  Atom: Buffer.from(
    xmlOf("entry", (rows) => `<feed xmlns="http://www.w3.org/2005/Atom"><title>Shop</title>${rows}</feed>`),
  ),
  "XML of the shop's own, Latin-1": iconv.encode(
    xmlOf("Produkt", (rows) => `<?xml version="1.0" encoding="ISO-8859-15"?><Produkte>${rows}</Produkte>`),
    "iso-8859-15",
  ),
};
