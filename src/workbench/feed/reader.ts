import { plainText } from "../../catalogue/index.ts";
import {
  type ColumnName,
  type Columns,
  columnNames,
  createHeadings,
  type OwnHeadings,
  requiredColumns,
} from "./columns.ts";
import { createCsvReader } from "./csv.ts";
import { createJsonReader } from "./json-lines.ts";
import { createProblemList, type FeedProblem, type ProblemList } from "./problem.ts";
import type { FeedReader, RowPlace, RowSink } from "./row.ts";
import { UnusableFeed } from "./unusable.ts";

/** Takes the rows of a feed; `columns` stays the same from the first row on. */
export type FeedSink = {
  row(fields: readonly string[], columns: Columns, at: RowPlace): void;
  problem(problem: FeedProblem): void;
  /** A heading or key that means no column, told once. */
  ignored(heading: string): void;
};

const jsonColumns: Columns = new Map(columnNames.map((name, index) => [name, index]));

/**
 * Reads a feed of either format, told by its first sign: `{` begins JSON lines, all else is a heading line of CSV.
 * @param own the retailer's own headings
 * @throws UnusableFeed from push or end, where a column is missing that no feed can do without
 */
export function createFeedReader(sink: FeedSink, own?: OwnHeadings): FeedReader {
  const columnOf = createHeadings(own);
  let reader: FeedReader | null = null;
  let held = "";
  let columns: Columns | null = null;
  const rows: RowSink = {
    row(fields, at) {
      if (columns) sink.row(fields, columns, at);
      else columns = readHeading(fields, at);
    },
    problem: sink.problem,
  };

  return {
    push(text) {
      if (reader) return reader.push(text);
      held += text;
      const first = /[^\s\uFEFF]/.exec(held)?.[0];
      if (first === undefined) return;
      if (first === "[")
        throw new UnusableFeed("This is one JSON list. Write one object on each line instead");
      if (first === "{") columns = jsonColumns;
      reader = first === "{" ? createJsonReader(rows, columnOf, sink.ignored) : createCsvReader(rows);
      reader.push(held);
      held = "";
    },
    end() {
      reader?.end();
      if (!columns) throw new UnusableFeed("This feed is empty: it has no heading line");
    },
  };

  function readHeading(fields: readonly string[], at: RowPlace): Columns {
    const text = fields.join("");
    if (text.includes("\uFFFD") || text.includes("\0"))
      throw new UnusableFeed("The heading line cannot be read. Save the feed as UTF-8");
    const found = new Map<ColumnName, number>();
    for (const [index, heading] of fields.entries()) {
      const name = columnOf(heading);
      if (name && found.has(name))
        sink.problem({
          code: "doubled-heading",
          ...at.placeOf(index),
          found: plainText(heading),
          message: `Two headings mean "${name}"; the first one counts.`,
        });
      else if (name) found.set(name, index);
      else if (plainText(heading) !== "") sink.ignored(plainText(heading));
    }
    const missing = requiredColumns.filter((name) => !found.has(name));
    if (missing.length > 0)
      throw new UnusableFeed(
        `The heading line has no ${missing.join(", no ")}. It has: ${plainText(fields.join(", ")).slice(0, 400)}. Say which heading means which column: --columns ${missing[0]}=Heading`,
      );
    return found;
  }
}

/**
 * Reads and parses a feed and does nothing else with it; what a build is measured against.
 * @param take is handed each row; the list of fields is used again for the next one
 */
export function readRows(
  chunks: Iterable<string>,
  take: FeedSink["row"] = () => {},
  own?: OwnHeadings,
): { rows: number; problems: ProblemList; ignored: string[] } {
  const problems = createProblemList();
  const ignored: string[] = [];
  let rows = 0;
  const reader = createFeedReader(
    {
      row(fields, columns, at) {
        rows++;
        take(fields, columns, at);
      },
      problem: problems.add,
      ignored: (heading) => ignored.push(heading),
    },
    own,
  );
  for (const chunk of chunks) reader.push(chunk);
  reader.end();
  return { rows, problems, ignored };
}
