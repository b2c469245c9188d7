import { gzipSync } from "node:zlib";
import { strToU8, zipSync } from "fflate";
import iconv from "iconv-lite";
import { describe, expect, test } from "vitest";
import { UnusableFeed } from "../../../src/workbench/feed/index.ts";
import { decode, readTable, unpack } from "../../../src/workbench/shop-feed/index.ts";

const german = "Nummer;Größe\r\nLLS-1;Türdichtung – 12 €\r\n";

describe("bytes", () => {
  test.each<[encoding: string, addBOM: boolean, found: string]>([
    ["utf-8", false, "utf-8"],
    ["utf-8", true, "utf-8"],
    ["utf-16le", true, "utf-16le"],
    ["utf-16be", true, "utf-16be"],
    ["utf-16le", false, "utf-16le"],
    ["utf-16be", false, "utf-16be"],
    ["windows-1252", false, "windows-1252"],
  ])("become text by what they are: %s, with its mark: %s", (encoding, addBOM, found) => {
    const read = decode(iconv.encode(german, encoding, { addBOM }));
    expect(read.encoding).toBe(found);
    expect(read.text.replace(/^\uFEFF/, "")).toBe(german);
  });

  test("become text by what is said of them, or by their first line", () => {
    const polish = "Nummer;Nazwa\nLLS-1;łącznik\n";
    expect(decode(iconv.encode(polish, "iso-8859-2"), "iso-8859-2").text).toBe(polish);
    const xml = '<?xml version="1.0" encoding="ISO-8859-1"?><a>Tür</a>';
    expect(decode(iconv.encode(xml, "latin1"))).toMatchObject({ text: xml, encoding: "iso-8859-1" });
    expect(() => decode(Buffer.from("a"), "martian")).toThrow(/Nobody here knows/);
  });

  test("that are packed are unpacked: gz, and a zip with one feed in it", () => {
    expect(unpack(gzipSync(german)).toString()).toBe(german);
    const zip = zipSync({
      "shop/feed.csv": strToU8(german),
      "__MACOSX/feed.csv": strToU8("x"),
      "a.pdf": strToU8("x"),
    });
    expect(unpack(Buffer.from(zip)).toString()).toBe(german);
    expect(unpack(Buffer.from(german)).toString()).toBe(german);
  });

  test.each<[what: string, bytes: Buffer, why: RegExp]>([
    [
      "two feeds in one zip",
      Buffer.from(zipSync({ "a.csv": strToU8("a"), "b.csv": strToU8("b") })),
      /holds 2 feeds/,
    ],
    ["a zip without one", Buffer.from(zipSync({ "a.pdf": strToU8("a") })), /no feed/],
    ["a spreadsheet", Buffer.from(zipSync({ "xl/workbook.xml": strToU8("a") })), /spreadsheet/],
    ["half of a gz", gzipSync(german).subarray(0, 30), /cut off or damaged/],
    [
      "half of a zip",
      Buffer.from(zipSync({ "a.csv": strToU8(german) })).subarray(0, 40),
      /cut off or damaged/,
    ],
  ])("that cannot be unpacked are refused: %s", (_, bytes, why) => {
    expect(() => unpack(bytes)).toThrow(UnusableFeed);
    expect(() => unpack(bytes)).toThrow(why);
  });
});

describe("text", () => {
  test.each<[what: string, text: string]>([
    ["commas", 'Part,Name\n1,"a, b"\n'],
    ["semicolons", "Part;Name\n1;a, b\n"],
    ["tabs", "Part\tName\n1\ta, b\n"],
    ["bars", "Part|Name\n1|a, b\n"],
    ["a line that says what parts", 'sep=;\r\nPart;Name\r\n1;"a, b"\r\n'],
    ["JSON, a list", '[{"Part": 1, "Name": "a, b"}]'],
    ["JSON, a list inside", '{"shop": "x", "parts": [{"Part": 1, "Name": "a, b"}]}'],
    ["JSON, an object a line", '{"Part": "1", "Name": "a, b"}\n{"Part": "2", "Name": ""}\n'],
    ["XML", "<parts><part><Part>1</Part><Name>a, b</Name></part></parts>"],
    [
      "entities",
      "Part;Name\n&#49;;a&comma; b\n".replace("&#49;;", '"&#49;";').replace("a&comma; b", '"a&comma; b"'),
    ],
  ])("becomes rows and columns: %s", (_, text) => {
    const { headings, rows } = readTable(text);
    expect(headings).toEqual(["Part", "Name"]);
    expect(rows[0]?.cells).toEqual(["1", "a, b"]);
  });

  test("of a row that cannot be read costs that row", () => {
    const { rows, bad } = readTable('Part;Name\n1;a\n2;b;c\n3;"d\n4;e\n');
    expect(rows.map(({ line, cells }) => [line, cells[0]])).toEqual([
      [2, "1"],
      [5, "4"],
    ]);
    expect(bad.map(({ line }) => line)).toEqual([3, 4]);
  });

  test("in JSON names what lies inside by its way, makes a list lines, and knows where each entry starts", () => {
    const { headings, rows } = readTable(
      '[\n {"id": "A", "price": {"amount": 3, "currency": "EUR"}},\n {"id": "B", "fits": [{"model": "WX1"}, {"model": "WX2"}]}\n]',
    );
    expect(headings).toEqual(["id", "price amount", "price currency", "fits model"]);
    expect(rows.map(({ line }) => line)).toEqual([2, 3]);
    expect(rows[1]?.cells).toEqual(["B", "", "", "WX1\nWX2"]);
  });

  test("in JSON shows a number that has lost digits as one that has", () => {
    expect(readTable('[{"number": 12345678901234567890}]').rows[0]?.cells[0]).toMatch(/^1\.23\d+E\+19$/);
  });

  test("in XML has its rows in the elements that come again: an RSS channel, an Atom feed", () => {
    const rss = readTable(
      `<?xml version="1.0"?><rss version="2.0" xmlns:p="urn:p"><channel><title>Shop</title><link>x</link>
      <item><title>A &amp; B</title><p:price>3.00 EUR</p:price><p:fits>WX1</p:fits><p:fits>WX2</p:fits></item>
      <item><title><![CDATA[C & D]]></title><p:shipping><p:price>1</p:price></p:shipping></item></channel></rss>`,
    );
    expect(rss.headings).toEqual(["title", "p:price", "p:fits", "p:shipping p:price"]);
    expect(rss.rows.map(({ line, cells }) => [line, ...cells])).toEqual([
      [2, "A & B", "3.00 EUR", "WX1\nWX2", ""],
      [3, "C & D", "", "", "1"],
    ]);
    const atom = readTable(
      '<feed xmlns="http://www.w3.org/2005/Atom"><title>Shop</title><entry><id>1</id><link href="/a"/></entry><entry><id>2</id></entry></feed>',
    );
    expect(atom.headings).toEqual(["id", "link"]);
    expect(atom.rows[0]?.cells).toEqual(["1", "/a"]);
    expect(
      readTable("<rss><channel><item><id>1</id><name>a</name></item></channel></rss>").rows,
    ).toHaveLength(1);
  });

  test.each<[what: string, text: string, why: RegExp]>([
    ["nothing", " \n", /empty/],
    ["a heading alone", "Part;Name\n", /no rows/],
    ["XML that is torn", "<a><b><c>1</c></b>", /cannot be read/],
    [
      "XML that names a file as an entity",
      '<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]><a><b><c>&e;</c></b></a>',
      /cannot be read/,
    ],
    ["XML without end", "<a>".repeat(40), /elements inside each other/],
    ["JSON that is torn", '[{"a": 1}', /no JSON/],
    ["a JSON list of texts", '["a"]', /no objects/],
  ])("that is no feed is refused: %s", (_, text, why) => {
    expect(() => readTable(text)).toThrow(UnusableFeed);
    expect(() => readTable(text)).toThrow(why);
  });
});
