import { decodeHTMLStrict } from "entities";
import { UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";
import type { BadRow, Table, TableRow } from "./table.ts";

/** A row with its cells by heading. */
type Loose = { line: number; cells: Map<string, string> };

/**
 * Reads a JSON list of objects, an object with one such list in it, or an object on each line. What lies inside an
 * object is named by its way: `price amount`. Lists become one cell, an entry a line.
 * @throws UnusableFeed where it is no JSON, or holds no list of objects
 */
export function readJsonTable(text: string): Table {
  const bad: BadRow[] = [];
  const source = text.replace(/^\uFEFF/, "");
  const rows = readWhole(source) ?? readLines(source, bad);
  return { format: "json", ...layOut(rows), bad };
}

/** Rows with cells in the order of headings that come as they were first met. */
export function layOut(loose: readonly Loose[]): Pick<Table, "headings" | "rows"> {
  const headings = [...new Set(loose.flatMap(({ cells }) => [...cells.keys()]))];
  const rows: TableRow[] = loose.map(({ line, cells }) => ({
    line,
    cells: headings.map((heading) => cells.get(heading) ?? ""),
  }));
  return { headings, rows };
}

function readWhole(text: string): Loose[] | null {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (fault) {
    if (text.trimStart().startsWith("{") && text.includes("\n{")) return null;
    throw new UnusableFeed(`This feed is no JSON. ${(fault as Error).message.slice(0, 200)}`);
  }
  const list = listOf(json);
  if (!list) return null;
  const lines = linesOfEntries(text, list.length, Array.isArray(json) ? 1 : 2);
  return list.map((entry, at) => ({ line: lines[at] ?? 1, cells: flatten(entry) }));
}

/** The list itself, or the longest list of objects among an object's values. */
function listOf(json: unknown): Record<string, unknown>[] | null {
  const lists = (Array.isArray(json) ? [json] : Object.values(json as object)).filter(
    (one): one is Record<string, unknown>[] =>
      Array.isArray(one) && one.length > 0 && one.every((entry) => isObject(entry)),
  );
  const [longest] = lists.sort((a, b) => b.length - a.length);
  if (longest && longest.length > shopFeedBounds.rows)
    throw new UnusableFeed(`This feed has more than ${shopFeedBounds.rows} rows`);
  if (!longest && Array.isArray(json))
    throw new UnusableFeed("This JSON list has entries that are no objects");
  return longest ?? null;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function readLines(text: string, bad: BadRow[]): Loose[] {
  return text.split("\n").flatMap((line, at) => {
    if (line.trim() === "") return [];
    try {
      const entry: unknown = JSON.parse(line);
      if (isObject(entry)) return [{ line: at + 1, cells: flatten(entry) }];
    } catch {}
    bad.push({ line: at + 1, message: "This line is no JSON object." });
    return [];
  });
}

function flatten(entry: Record<string, unknown>): Map<string, string> {
  const cells = new Map<string, string>();
  const put = (way: string, text: string) => {
    const before = cells.get(way);
    const decoded = decodeHTMLStrict(text);
    cells.set(way, before ? `${before}\n${decoded}` : decoded);
  };
  const walk = (value: unknown, way: string, depth: number) => {
    if (depth > 8 || value === null || value === undefined) return;
    if (Array.isArray(value)) for (const one of value) walk(one, way, depth + 1);
    else if (isObject(value))
      for (const [key, one] of Object.entries(value)) walk(one, way ? `${way} ${key}` : key, depth + 1);
    // A longer number has lost its last digits already, as a spreadsheet's does.
    else if (typeof value === "number" && Number.isInteger(value) && !Number.isSafeInteger(value))
      put(way, value.toExponential().replace("e", "E"));
    else put(way, String(value));
  };
  walk(entry, "", 0);
  return cells;
}

/** In which line each entry of the list starts, as far as that can be told by brackets alone. */
function linesOfEntries(text: string, count: number, level: number): number[] {
  const lines: number[] = [];
  let [depth, line] = [0, 1];
  for (const [token] of text.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\]\n]/g)) {
    if (token === "\n") line++;
    else if (token === "{" || token === "[") {
      if (token === "{" && depth === level) lines.push(line);
      depth++;
    } else if (token === "}" || token === "]") depth--;
  }
  return lines.length === count ? lines : Array.from({ length: count }, (_, at) => at + 1);
}
