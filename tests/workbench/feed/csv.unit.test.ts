import { readdirSync, readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  createCsvReader,
  type FeedProblem,
  longestField,
  longestRow,
} from "../../../src/workbench/feed/index.ts";

type Row = { line: number; fields: string[] };

function read(...pieces: string[]): { rows: Row[]; problems: FeedProblem[] } {
  const rows: Row[] = [];
  const problems: FeedProblem[] = [];
  const reader = createCsvReader({
    row: (fields, { line }) => rows.push({ line, fields: [...fields] }),
    problem: (problem) => problems.push(problem),
  });
  for (const piece of pieces) reader.push(piece);
  reader.end();
  return { rows, problems };
}
const fieldsOf = (...pieces: string[]) => read(...pieces).rows.map(({ fields }) => fields);
const placesOf = (text: string) =>
  read(text).problems.map(({ code, line, column }) => `${line}:${column} ${code}`);

/** A text in pieces of this length. */
const cut = (text: string, size: number) =>
  Array.from({ length: Math.ceil(text.length / size) }, (_, at) => text.slice(at * size, at * size + size));

const cases = new URL("../../../node_modules/csv-spectrum/", import.meta.url);

describe("rows of CSV", () => {
  // Published cases: csv-spectrum 2.0.0.
  // Of location_coordinates the published answer is another row than the published question.
  const published = readdirSync(new URL("csvs/", cases)).filter((file) => !file.startsWith("location"));
  test.each(published)("are read as csv-spectrum has them: %s", (file) => {
    const text = readFileSync(new URL(`csvs/${file}`, cases), "utf8");
    const wanted = JSON.parse(readFileSync(new URL(`json/${file.replace(".csv", ".json")}`, cases), "utf8"));
    const [heading = [], ...rows] = fieldsOf(text);
    const objects = rows.map((row) => Object.fromEntries(row.map((field, at) => [heading[at], field])));
    expect(objects).toEqual(wanted);
    expect(read(text).problems).toEqual([]);
  });

  // Examples of RFC 4180, section 2, rules 1 to 7.
  test.each([
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("are read as RFC 4180 says: %j", (text, rows) => {
    expect(fieldsOf(text)).toEqual(rows);
  });

  const field = fc.oneof(
    fc.string({ maxLength: 6 }),
    fc.string({ unit: fc.constantFrom('"', ",", ";", "\t", "\n", "\r", "a", "ß", "🧊", " "), maxLength: 6 }),
  );
  const table = fc
    .record({ width: fc.integer({ min: 2, max: 4 }), height: fc.integer({ min: 0, max: 5 }) })
    .chain(({ width, height }) =>
      fc.array(fc.array(field, { minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );
  const write = (rows: string[][], mark: string, end: string, isQuoted: boolean) =>
    rows
      .map((row) =>
        row
          .map((one) => (isQuoted || /[",;\t\r\n]/.test(one) ? `"${one.replaceAll('"', '""')}"` : one))
          .join(mark),
      )
      .join(end);

  // The reference: csv-parse 7.0.3.
  test("are the same for csv-parse, with any mark, line end, quoting, and cut into pieces anywhere", () => {
    fc.assert(
      fc.property(
        table,
        fc.constantFrom(",", ";", "\t"),
        fc.constantFrom("\n", "\r\n", "\r"),
        fc.boolean(),
        fc.boolean(),
        fc.integer({ min: 1, max: 7 }),
        (rows, mark, end, isQuoted, hasMark, size) => {
          const heading = rows[0]?.map((_, at) => `h${at}`) ?? ["h0", "h1"];
          const text = write([heading, ...rows], mark, end, isQuoted);
          const theirs: string[][] = parse(text, { delimiter: mark, record_delimiter: end });
          const marked = hasMark ? `\uFEFF${text}` : text;
          const ours = read(...cut(marked, size));
          expect(ours.problems).toEqual([]);
          expect(ours.rows.map(({ fields }) => fields)).toEqual(theirs);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("say where they start, whatever line ends their fields hold", () => {
    const { rows } = read('a,b\r\n"1\r\n2",3\r\n\r\n4,"5\n\n6"\r\n7,8\r\n');
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 5, 8]);
  });

  test("may have inches in a field that does not start with a quote", () => {
    expect(fieldsOf('name,size\nTube,5/16"\n')[1]).toEqual(["Tube", '5/16"']);
  });

  test("are told apart by the mark that stands most often in the heading, outside of quotes", () => {
    expect(fieldsOf('"a,b,c";d;e\n1;2;3\n')).toEqual([
      ["a,b,c", "d", "e"],
      ["1", "2", "3"],
    ]);
  });

  test("may end in three different ways in one feed", () => {
    expect(fieldsOf("a,b\n1,2\r\n3,4\r5,6")).toEqual([
      ["a", "b"],
      ["1", "2"],
      ["3", "4"],
      ["5", "6"],
    ]);
  });
});

describe("a broken row of CSV", () => {
  const good = (text: string) =>
    fieldsOf(text)
      .slice(1)
      .map(([first]) => first);

  test.each([
    ["too few fields", "a,b,c\n1,2\n3,4,5\n", "2:4 too-few-fields", ["3"]],
    ["too many fields", "a,b\n1,2,3\n4,5\n", "2:5 too-many-fields", ["4"]],
    ["text behind a closing quote", 'a,b\n1,"x"y\n3,4\n', "2:6 stray-quote", ["3"]],
    ["a feed cut off inside a row", "a,b,c\n1,2,3\n4,5", "3:4 cut-off", ["1"]],
    ["a feed cut off inside a quoted field", 'a,b\n1,2\n3,"half', "3:3 cut-off", ["1"]],
    ["a feed cut off behind a doubled quote", 'a,b\n1,2\n3,"half""', "3:3 cut-off", ["1"]],
  ])("is told with its place, and its neighbours are kept: %s", (_, text, place, kept) => {
    expect(placesOf(text)).toEqual([place]);
    expect(good(text)).toEqual(kept);
  });

  test("with a quote that nobody closed costs that row only, though later rows have quotes", () => {
    const text = 'a,b,c\n1,"open,x\n2,y,"closed"\n3,"z",w\n';
    expect(placesOf(text)).toEqual(["3:6 stray-quote"]);
    expect(good(text)).toEqual(["2", "3"]);
  });

  test("with a quote that nobody closed costs that row only, in a feed without another quote", () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => `${at},plain`);
    const text = `a,b\nx,"open\n${rows.join("\n")}\n`;
    const { rows: kept, problems } = read(...cut(text, 50_000));
    expect(problems).toMatchObject([{ code: "unterminated-quote", line: 2, column: 3 }]);
    expect(kept).toHaveLength(20_001);
    expect(kept.at(-1)).toEqual({ line: 20_002, fields: ["19999", "plain"] });
  });

  test("with a quote that another row's closes does not swallow what lies between", () => {
    const text = 'a,b,c\n1,"open,x\n2,y,z\n3,y,"\n4,y,z\n';
    expect(placesOf(text)[0]).toBe("2:3 unterminated-quote");
    expect(good(text)).toEqual(expect.arrayContaining(["2", "4"]));
  });

  test("before the feed ends with an open quote is told, and what follows is read", () => {
    const text = 'a,b\n1,"open\n2,3\n4,5';
    expect(placesOf(text)).toEqual(["2:3 unterminated-quote"]);
    expect(good(text)).toEqual(["2", "4"]);
  });

  test.each([
    ["plain", `1,${"x".repeat(2 ** 20)}`],
    ["quoted", `1,"${"x".repeat(2 ** 20)}"`],
    ["quoted over many lines, each with as many fields", `1,"${"y,z\n".repeat(2 ** 15)}"`],
    ["plain beside a quoted one", `"1",${"x".repeat(longestField + 1)}`],
  ])("with a field of a megabyte is told, and its neighbours are kept: %s", (_, row) => {
    const text = `a,b\n0,0\n${row}\n9,9\n`;
    const { rows, problems } = read(...cut(text, 65_536));
    expect(problems[0]).toMatchObject({ line: 3 });
    expect(problems[0]?.code).toMatch(/field-too-long|unterminated-quote|row-too-long/);
    expect(rows.at(1)?.fields).toEqual(["0", "0"]);
    expect(rows.at(-1)?.fields).toEqual(["9", "9"]);
  });

  test("that never ends is told once and never kept: a feed without line ends", () => {
    const { rows, problems } = read(
      "a,b\n",
      ..."x"
        .repeat(40)
        .split("")
        .map((x) => x.repeat(longestRow / 8)),
    );
    expect(rows).toHaveLength(1);
    expect(problems).toMatchObject([{ code: "row-too-long", line: 2 }]);
  });

  test("never makes the reader throw, and its line is always one of the feed", () => {
    const wild = fc.string({
      unit: fc.constantFrom('"', ",", "\n", "\r", "a", "\0", "\uFFFD"),
      maxLength: 60,
    });
    fc.assert(
      fc.property(wild, fc.integer({ min: 1, max: 9 }), (text, size) => {
        const whole = read(text);
        const lines = text.split(/\r\n|\r|\n/).length;
        for (const { line } of [...whole.problems, ...whole.rows]) expect(line).toBeLessThanOrEqual(lines);
        // Where the pieces end makes no difference.
        expect(read(...cut(text, size))).toEqual(whole);
      }),
      { numRuns: 600 },
    );
  });
});
