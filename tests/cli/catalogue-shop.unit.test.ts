import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import iconv from "iconv-lite";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { catalogueCommand } from "../../src/cli/catalogue/index.ts";
import { feedOf, layOutByModel, served } from "./catalogue-fixture.ts";

let folder = "";
let out = "";
let feed = "";
let mapping = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "shop-"));
  [out, feed, mapping] = ["out", "feed.csv", "mapping.json"].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

const shopFeed = [
  "Art.-Nr.;Bezeichnung;Preis;Passend für;Foto",
  '4711;"Water filter f&uuml;r alle";"1.299,00 €";"WX 430/E, WX 431/E";/a.png',
  '4712;"Ice bin";"12,90 €";"WX 430/E";/b.png',
  '4713;"Ice bin";;"WX 430/E";/c.png',
  "",
].join("\r\n");

async function run(...args: string[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  const code = await catalogueCommand(args, (line) => lines.push(line), { layOut: layOutByModel });
  return { code, lines };
}

describe("a feed in a shop's own columns", () => {
  test("is inspected, its mapping written, and built by that mapping", async () => {
    writeFileSync(feed, iconv.encode(shopFeed, "windows-1252"));
    const looked = await run("inspect", feed, "--base", "https://shop.example", "--write", mapping);
    expect(looked.code).toBe(0);
    expect(looked.lines).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/CSV with semicolons between fields, windows-1252 \(.*--encoding\), 3 rows$/),
        expect.stringMatching(/"Passend für" +is model \(by its heading\)/),
        expect.stringMatching(
          /^ {2}line 2: 4711, water-filter, "Water filter für alle", 1299\.00 EUR, .*WX 430\/E, WX 431\/E$/,
        ),
        "2 of 3 rows can be used (66.6 %)",
        '  1 × The price is empty. Line 4 "4713"',
        "3 fitments",
      ]),
    );
    const built = await run("build", feed, "--mapping", mapping, "--out", out);
    expect(built.lines).toEqual(
      expect.arrayContaining([
        "2 of 3 rows can be used (66.6 %)",
        "3 rows read, 2 used, 0 duplicates, 0 conflicts",
        "2 models, 2 parts, 3 fitments, 0 on a condition",
      ]),
    );
    expect(built.code).toBe(0);
    const file = served(out)?.files["models/WX430E.json"] ?? "";
    expect(JSON.parse(file)).toMatchObject([
      {
        number: "4711",
        kind: "water-filter",
        price: { minor: 129900, currency: "EUR" },
        picture: "https://shop.example/a.png",
      },
      { number: "4712", kind: "ice-bin" },
    ]);
  });

  test("is built without a mapping where nothing is unclear, packed or not", async () => {
    writeFileSync(feed, gzipSync(shopFeed));
    expect((await run("build", feed, "--base", "https://shop.example", "--out", out)).code).toBe(0);
    expect(Object.keys(served(out)?.files ?? {})).toHaveLength(2);
  });

  test("is not built where something is, and the sentence says what to say", async () => {
    writeFileSync(feed, shopFeed.replaceAll(" €", "").replaceAll("WX 430/E, WX 431/E", "WX430A/KN775B"));
    const { code, lines } = await run("build", feed, "--base", "https://shop.example", "--out", out);
    expect(code).toBe(1);
    expect(lines).toContainEqual(expect.stringMatching(/--models-split.*stays as it was/));
    expect(lines.at(-1)).toBe(
      `To have a feed with other columns read: fridgeside catalogue inspect ${feed} --write mapping.json`,
    );
    expect(existsSync(out)).toBe(false);
    const said = ["--currency", "eur", "--models-split", "none", "--base", "https://shop.example"];
    expect((await run("build", feed, "--out", out, ...said)).code).toBe(0);
  });

  test("may come as two files, its kinds as a third, and headings may be said", async () => {
    const [second, kinds] = [join(folder, "fits.tsv"), join(folder, "kinds.json")];
    writeFileSync(feed, "SKU;Name;Price;Category;Nr\nX;Sieb;9,90 €;Siebe;A1\n");
    writeFileSync(second, "Part number\tModel\nA1\tWX1\nA1\tWX2\n");
    writeFileSync(kinds, '{"Siebe": "water-filter"}');
    const { code, lines } = await run(
      ...["build", feed, "--fitments", second, "--kinds", kinds, "--columns", "number=Nr", "--out", out],
    );
    expect(lines).toEqual(
      expect.arrayContaining([
        "1 of 1 rows of parts can be used (100 %)",
        "2 of 2 rows of fitments can be used (100 %)",
      ]),
    );
    expect(code).toBe(0);
    expect(Object.keys(served(out)?.files ?? {})).toEqual(["models/WX1.json", "models/WX2.json"]);
  });

  test("keeps the old catalogue with --strict where anything is left out", async () => {
    writeFileSync(feed, shopFeed);
    const { code, lines } = await run(
      "build",
      feed,
      "--base",
      "https://shop.example",
      "--out",
      out,
      "--strict",
    );
    expect(code).toBe(1);
    expect(lines).toContainEqual(expect.stringMatching(/^The feed has 1 problem, and --strict takes none/));
  });

  test("is inspected for a program as one object, with nothing else on the way", async () => {
    writeFileSync(feed, iconv.encode(shopFeed, "windows-1252"));
    const { code, lines } = await run(
      "inspect",
      feed,
      "--json",
      "--base",
      "https://shop.example",
      "--write",
      mapping,
    );
    expect(code).toBe(0);
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0] ?? "")).toMatchObject({
      files: [{ file: feed, format: "csv", mark: ";", encoding: "windows-1252", rows: 3 }],
      mapping: JSON.parse(readFileSync(mapping, "utf8")),
      needs: [],
      fitments: 3,
    });
  });

  test("in our columns is pointed at inspect only where it is not", async () => {
    writeFileSync(feed, feedOf(2));
    expect((await run("build", feed, "--out", out)).lines.join()).not.toContain("inspect");
    writeFileSync(feed, shopFeed);
    const { lines } = await run("build", feed, "--out", out);
    expect(lines.at(-1)).toContain("inspect");
  });

  test("never writes its mapping over another file", async () => {
    writeFileSync(feed, shopFeed);
    writeFileSync(mapping, "mine");
    const { code, lines } = await run("inspect", feed, "--write", mapping);
    expect(code).toBe(1);
    expect(lines.at(-1)).toMatch(/lies there/);
    expect(readFileSync(mapping, "utf8")).toBe("mine");
  });

  test.each<[what: string, args: string[], why: RegExp]>([
    ["a currency that is none", ["--currency", "euro"], /--currency/],
    ["a base that is none", ["--base", "shop.example"], /--base/],
    ["a separator that is none", ["--models-split", "+"], /--models-split/],
    ["kinds that are not there", ["--kinds", "/nowhere.json"], /cannot be read/],
  ])("is not touched with options that cannot be used: %s", async (_, args, why) => {
    const told = vi.spyOn(console, "error").mockImplementation(() => {});
    writeFileSync(feed, shopFeed);
    expect((await run("build", feed, "--out", out, ...args)).code).toBe(2);
    expect(told).toHaveBeenCalledWith(expect.stringMatching(why));
    expect(existsSync(out)).toBe(false);
  });

  test("that is not there or is nothing is told in one sentence", async () => {
    expect((await run("inspect", feed)).lines).toEqual([expect.stringMatching(/no such file/)]);
    writeFileSync(feed, "");
    expect((await run("inspect", feed)).lines).toEqual(["This feed is empty"]);
  });
});

describe("the page about such feeds", () => {
  const page = readFileSync("demo/docs/feeds.md", "utf8");

  test("shows what the commands print, and the mapping that they write", async () => {
    const sample = "demo/feeds/shop.csv";
    const looked = await run("inspect", sample, "--base", "https://larder.example", "--write", mapping);
    expect(page).toContain(looked.lines.slice(0, -1).join("\n"));
    expect(page).toContain(readFileSync(mapping, "utf8"));
    const built = await run("build", sample, "--mapping", mapping, "--out", out);
    const figures = built.lines.filter((line) => /rows read|\d models,/.test(line));
    expect(figures).toHaveLength(2);
    expect(page).toContain(figures.join("\n"));
    expect(page).toContain(readFileSync(sample, "utf8"));
  });
});
