import type { FileGuess, Inspection, Table } from "../../workbench/shop-feed/index.ts";
import { counted } from "./build-catalogue.ts";
import { understoodLines } from "./loss-lines.ts";
import type { ReadShop } from "./shop-files.ts";

const formats = { json: "JSON", xml: "XML", csv: "CSV" };
const marks: Record<string, string> = { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars" };
const mostKinds = 40;

/** What a shop's feed seems to be, as lines. */
export function inspectLines(shop: ReadShop, { guess, understood, fitments, shown }: Inspection): string[] {
  const [first, second] = shop.encodings;
  const { mapping } = guess;
  return [
    ...fileLines(shop.parts, guess.parts, first),
    ...(shop.fitments && guess.fitments ? fileLines(shop.fitments, guess.fitments, second) : []),
    splitLine(guess),
    ...(mapping.decimal ? [`Prices: with a decimal ${mapping.decimal}`] : []),
    ...kindLines(guess.kinds),
    ...(shown.length > 0 ? ["The first rows, as they are understood:"] : []),
    ...shown.map(({ line, part, models, count }) => {
      const more = count > models.length ? `, … (${count})` : "";
      const price = `${part.price} ${part.currency}`;
      return `  line ${line}: ${part.number}, ${part.kind}, "${part.name}", ${price}, ${stockOf(part.stock)}; fits ${models.join(", ")}${more}`;
    }),
    ...(understood ? [...understoodLines(understood), counted(fitments, "fitment")] : []),
    ...guess.needs.map((need) => `Before it can be built: ${need}`),
  ];
}

function splitLine({ mapping: { modelsSplit = "" }, split }: Inspection["guess"]): string {
  const why = "signs" in split ? split.why : split.unsure;
  if (modelsSplit === "") return `Models: it is unclear what parts them. ${why}`;
  if (modelsSplit === "none") return `Models: one in each cell (${why})`;
  return `Models: parted by ${modelsSplit} (${why})`;
}

const stockOf = (stock: string) => (/^-?\d/.test(stock) ? `stock ${stock}` : stock || "in-stock");

function fileLines(
  { format, mark, rows, bad }: Table,
  { taken, left }: FileGuess,
  read: ReadShop["encodings"][number] | undefined,
): string[] {
  const parted = mark ? ` with ${marks[mark] ?? mark} between fields` : "";
  const width = Math.max(0, ...[...taken, ...left].map(({ heading }) => heading.length)) + 2;
  const quoted = (heading: string) => `"${heading}"`.padEnd(width);
  return [
    `${read?.file}: ${formats[format]}${parted}, ${read?.encoding} (${read?.why}), ${counted(rows.length + bad.length, "row")}`,
    ...taken.map(({ column, heading, why }) => `  ${quoted(heading)}  is ${column} (${why})`),
    ...left.map(({ heading, why }) => `  ${quoted(heading)}  is not used${why ? `: ${why}` : ""}`),
  ];
}

function kindLines(kinds: Inspection["guess"]["kinds"]): string[] {
  if (kinds.length === 0) return [];
  return [
    "Kinds of parts that are not ours, and what they seem to be:",
    ...kinds.slice(0, mostKinds).map(({ word, count, kind }) => {
      const meant =
        kind === "by-name" ? "by the name of each part" : (kind ?? "nothing that is known; left out");
      return `  "${word}", ${counted(count, "row")}: ${meant}`;
    }),
    ...(kinds.length > mostKinds ? [`  … and ${kinds.length - mostKinds} more`] : []),
  ];
}
