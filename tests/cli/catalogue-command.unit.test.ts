import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { catalogueCommand } from "../../src/cli/catalogue/index.ts";
import { feedOf, layOutByModel, served } from "./catalogue-fixture.ts";

let folder = "";
let out = "";
let feed = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "catalogue-"));
  out = join(folder, "out");
  feed = join(folder, "feed.csv");
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

async function run(...args: string[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  const code = await catalogueCommand(args, (line) => lines.push(line), { layOut: layOutByModel });
  return { code, lines };
}
const told = () => vi.spyOn(console, "error").mockImplementation(() => {});

describe("the command", () => {
  test("builds, says what it read and what is missing, and ends with 0", async () => {
    writeFileSync(feed, feedOf(3));
    const { code, lines } = await run("build", feed, "--out", out);
    expect(code).toBe(0);
    expect(lines).toEqual(
      expect.arrayContaining([
        "3 rows read, 3 used, 0 duplicates, 0 conflicts",
        "3 models, 3 parts, 3 fitments, 0 on a condition",
        "No water-filter for 3 models",
        expect.stringMatching(/^Switched to c-[0-9a-f]{12}: 3 files/),
      ]),
    );
    expect(lines).not.toContainEqual(expect.stringContaining("No ice-bin"));
  });

  test("names file, line and column of each problem, as an editor can jump to", async () => {
    writeFileSync(feed, feedOf(3).replace("34.99", "1.299,00"));
    const { code, lines } = await run("build", feed, "--out", out);
    expect(lines[0]).toMatch(new RegExp(`^${feed}:2:\\d+ This row has 9 fields`));
    expect(lines).toContain("1 problem of too-many-fields");
    expect(code).toBe(0);
  });

  test("prints a hundred problems at most and counts the others", async () => {
    writeFileSync(feed, feedOf(120).replaceAll("34.99", "free") + feedOf(1).split("\n")[1]);
    const { lines } = await run("build", feed, "--out", out);
    expect(lines.filter((line) => line.startsWith(feed))).toHaveLength(100);
    expect(lines).toContain("… and 20 more problems");
    expect(lines).toContain("120 problems of bad-price");
  });

  test("ends with 1 and one sentence where the old catalogue stays", async () => {
    writeFileSync(feed, feedOf(2).replace("34.99", "free"));
    const { code, lines } = await run("build", feed, "--out", out, "--strict");
    expect(code).toBe(1);
    expect(lines.at(-1)).toBe(
      `The feed has 1 problem, and --strict takes none. The catalogue in ${out} stays as it was.`,
    );
    expect(served(out)).toBeNull();
  });

  test("gives the same as JSON for other tools", async () => {
    writeFileSync(feed, feedOf(2).replace("34.99", "free"));
    const { code, lines } = await run("build", feed, "--out", out, "--json");
    const report = JSON.parse(lines.join("\n"));
    expect(report).toMatchObject({
      feed,
      figures: { rowsRead: 2, rowsUsed: 1, models: 1, chains: { count: 0, longest: 0, loops: 0 } },
      missingKinds: { "ice-bin": 0, "water-filter": 1 },
      problems: { total: 1, counts: { "bad-price": 1 }, first: [{ code: "bad-price", line: 2 }] },
      switched: { folder: served(out)?.folder, files: 1 },
    });
    expect(report.seconds).toBeGreaterThan(0);
    expect(report.peakBytes).toBeGreaterThan(0);
    expect(code).toBe(0);
  });

  test("takes the retailer's own headings and what all of its machines have in common", async () => {
    const text = "Modell;kind;SKU;name;price;currency;Farbe\nWX 1;ice-bin;S1;Bin;1,50;EUR;weiß\n";
    writeFileSync(feed, text);
    const brand = ["--brand", "Nettlewick", "--machine", "built-in", "--shop-name", "Larder Lane Spares"];
    const lines: string[] = [];
    const code = await catalogueCommand(
      ["build", feed, "--out", out, "--columns", "number=SKU,model=Modell", ...brand],
      (line) => lines.push(line),
      {
        layOut: ({ shop, models }) => ({ manifest: { shop, models }, files: [] }),
      },
    );
    expect(code).toBe(0);
    expect(lines).toContain("Columns that mean nothing here: Farbe");
    expect(JSON.parse(readFileSync(join(out, "catalogue.json"), "utf8"))).toMatchObject({
      shop: "Larder Lane Spares",
      models: [{ code: "WX 1", brand: "Nettlewick", machine: "built-in" }],
    });
  });

  test("shows how far it has come on the terminal only, or where it is asked to", async () => {
    const shown = vi.spyOn(process.stderr, "write").mockImplementation(() => true);
    writeFileSync(feed, feedOf(3));
    await run("build", feed, "--out", out);
    expect(shown).not.toHaveBeenCalled();
    await run("build", feed, "--out", out, "--progress");
    expect(shown.mock.calls.map(([text]) => String(text).trimEnd())).toEqual([
      expect.stringMatching(/^\r3 rows, .* MB of .* MB$/),
      "\r1 file written",
      "",
    ]);
  });

  test.each([
    [[], "fridgeside catalogue build <feed> --out <folder>"],
    [["build"], "--out <folder>"],
    [["build", "feed.csv"], "--out <folder>"],
    [["unbuild", "feed.csv", "--out", "x"], "--out <folder>"],
    [["build", "feed.csv", "--out", "x", "--columns", "sku=number"], 'There is no column "sku"'],
    [["build", "feed.csv", "--out", "x", "--columns", "number="], 'Say which heading means "number"'],
  ])("says how it is called when it is called with %j", async (args, said) => {
    const errors = told();
    expect((await run(...args)).code).toBe(2);
    expect(errors).toHaveBeenCalledWith(expect.stringContaining(said));
  });
});
