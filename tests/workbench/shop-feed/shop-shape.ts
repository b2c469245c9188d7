import { createChance, demoCodes, pick } from "../../../demo/generate/feed/index.ts";

/** A feed as a shop exports it, and what it says truly: by part number the models that it fits. */
export type ShopShape = { text: string; rows: number; truth: Map<string, Set<string>> };

const kinds: [category: string, names: string[]][] = [
  ["Water filters", ["Water filter", "Water filter cartridge, pack of 2", "Genuine ice & water filter"]],
  ["Seals", ["Freezer door seal, white", "Door gasket for freezer"]],
  ["Ice makers & bins", ["Ice maker assembly", "Ice bin", "Ice maker kit – complete", "Ice bucket, 4 l"]],
  ["Valves & hoses", ["Water inlet valve 230 V", 'Water supply hose 5/16"', "Ice maker inlet valve"]],
  ["Small parts", ["Door switch", "Bin sensor", "Fill tube for ice maker", "Dispenser flap"]],
];
const others = ["Door shelf", "Ice maker control board", "Vegetable drawer", "Water filter housing"];
const makers = ["Müller & Söhne", "Wexmarrow", "Tarn"];

/**
 * Makes a feed in the manner of a shop: a row a part, 1 to 79 models in a cell, a byte order mark, semicolons, decimal
 * commas, entities, rows that come twice, and prices that are missing in some.
 * @param rows of the feed, those that come twice included
 * @param different models that its cells are drawn from
 */
export function shopShape(rows = 2060, seed = 11, different = 9000): ShopShape {
  const chance = createChance(seed, 1);
  const codes = [...demoCodes({ models: different, seed, dense: false })];
  const truth = new Map<string, Set<string>>();
  const lines: string[] = [];
  const written = new Map<string, string[]>();
  for (let at = 0; lines.length < rows; at++) {
    const number = `LLS-${10_000 + at}`;
    const count = 1 + Math.floor(chance() ** 2 * 79);
    const start = Math.floor(chance() * (codes.length - count));
    const models = codes.slice(start, start + count);
    const isOther = chance() < 0.02;
    const [category, names] = pick(kinds, chance);
    const name = `${isOther ? pick(others, chance) : pick(names, chance)} (${pick(makers, chance)})`;
    // Some prices are missing for good: nobody can sell such a part.
    const price = chance() < 0.008 ? "" : priceOf(5 + Math.floor(chance() * 250_000) / 100);
    if (!isOther) truth.set(number, new Set(models));
    const row = [number, entities(name), category, price, pick(["Auf Lager", "12", "0"], chance)];
    lines.push(rowOf([...row, `/p/${number}`, models.join(", ")]));
    if (price) written.set(number, row);
    if (chance() > 0.04 || lines.length >= rows) continue;
    // The same part again, with the models of another country, and now and then another price or none.
    const again = codes.slice(start + count, start + count + 3);
    if (price === "" || again.length === 0) continue;
    const own = [...row];
    if (chance() < 0.3) own[3] = "";
    if (!isOther) for (const code of again) truth.get(number)?.add(code);
    lines.push(rowOf([...own, `/p/${number}`, again.join(", ")]));
  }
  const heading = rowOf([
    "Art.-Nr.",
    "Bezeichnung",
    "Category",
    "Preis",
    "Lagerbestand",
    "Link",
    "Passend für",
  ]);
  return { text: `\uFEFF${heading}${lines.join("")}`, rows: lines.length, truth };
}

/** RFC 4180 with semicolons. */
const rowOf = (cells: readonly string[]) =>
  `${cells.map((cell) => (/[";\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(";")}\r\n`;

const priceOf = (euros: number) => {
  const [whole = "", cents = "00"] = euros.toFixed(2).split(".");
  return `${whole.replace(/\B(?=(\d{3})+$)/g, ".")},${cents} €`;
};

const entities = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("ü", "&uuml;").replaceAll("ö", "&#246;").replaceAll('"', "&quot;");
