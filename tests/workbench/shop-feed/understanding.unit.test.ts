import { describe, expect, test } from "vitest";
import { UnusableFeed } from "../../../src/workbench/feed/index.ts";
import {
  guessMapping,
  inspectFeed,
  type Mapping,
  readMapping,
  readTable,
  understand,
} from "../../../src/workbench/shop-feed/index.ts";

const kinds = ["water-filter", "ice-bin", "inlet-valve"];
const mapping: Mapping = {
  columns: { number: "SKU", name: "Name", price: "Price", model: "Fits", link: "Link", stock: "Stock" },
  currency: "EUR",
};
const heading = "SKU;Name;Price;Fits;Link;Stock";

/** What a feed of these rows comes to: fitments as `number model`, and every loss as `count of: message`. */
function read(rows: string[], change: Partial<Mapping> = {}) {
  const fits: string[] = [];
  const links: string[] = [];
  const tables = { parts: readTable([heading, ...rows, ""].join("\n")) };
  const { parts } = understand(tables, { ...mapping, ...change }, kinds, ({ part, models }) => {
    for (const model of models) fits.push(`${part.number} ${model}`);
    links.push(part.link);
  });
  const losses = parts.losses.map(({ of, count, message }) => `${count} ${of}: ${message}`);
  return { fits, links, losses, parts };
}

describe("a row of a shop's feed", () => {
  test("gives a fitment for each model of its cell, and its entities are letters", () => {
    const { fits, losses, parts } = read(['A1;"Water filter";"12,90";"WX 1, WX 2,WX 1, "; ;3']);
    expect(fits).toEqual(["A1 WX 1", "A1 WX 2"]);
    expect(losses).toEqual([]);
    expect(parts).toMatchObject({ read: 1, used: 1 });
  });

  test.each<[what: string, row: string, why: RegExp]>([
    ["without a price", "A1;Water filter;;WX1;;", /price is empty/],
    ["without a number", ";Water filter;1;WX1;;", /number is empty/],
    ["without a name", "A1;;1;WX1;;", /name is empty/],
    ["without a model", "A1;Water filter;1;;;", /No model/],
    ["of another kind", "A1;Shelf;1;WX1;;", /no kind of part that is known/],
    ["whose number is lost", "4.31E+11;Water filter;1;WX1;;", /spreadsheet/],
    ["whose number is a date", "43-Jan;Water filter;1;WX1;;", /spreadsheet/],
    ["whose price is in another currency", "A1;Water filter;£1;WX1;;", /not in EUR/],
    ["whose letters are lost", "A1;Water filter \uFFFD;1;WX1;;", /--encoding/],
    ["with too many fields", "A1;Water filter;1;WX1;;;", /7 fields/],
  ])("is left out for one reason, with its line: %s", (_, row, why) => {
    const { fits, parts } = read(["B1;Ice bin;1;WX9;;", row]);
    expect(fits).toEqual(["B1 WX9"]);
    expect(parts).toMatchObject({ read: 2, used: 1 });
    expect(parts.losses.filter(({ of }) => of === "row")).toEqual([
      {
        of: "row",
        message: expect.stringMatching(why),
        count: 1,
        places: [expect.objectContaining({ line: 3 })],
      },
    ]);
  });

  test.each(["4.31E+11", "WX 43*", "all models", "WX430 and WX431", "WX430 (from 2019)", "series"])(
    "keeps its other models where one is none: %s",
    (strange) => {
      const { fits, losses } = read([`A1;Water filter;1;WX1,${strange},WX2;;`]);
      expect(fits).toEqual(["A1 WX1", "A1 WX2"]);
      expect(losses).toEqual([expect.stringMatching(/^1 model: /)]);
    },
  );

  test("that comes again adds its models; what it says otherwise is told, and the first counts", () => {
    const { fits, losses } = read([
      "A1;Water filter;1;WX1;;",
      "A1;Water filter;2;WX2;;",
      "A1;Water filter;;WX3;;",
    ]);
    expect(fits).toEqual(["A1 WX1", "A1 WX2", "A1 WX3"]);
    expect(losses).toEqual([
      "1 note: An earlier row of this part has another price; the earlier one counts.",
    ]);
  });

  test("has whole links with a base, and none without", () => {
    expect(read(["A1;Water filter;1;WX1;/p/1;"], { base: "https://shop.example/de/" }).links).toEqual([
      "https://shop.example/p/1",
    ]);
    const without = read(["A1;Water filter;1;WX1;/p/1;"]);
    expect(without.links).toEqual([""]);
    expect(without.losses).toEqual([expect.stringMatching(/--base/)]);
    expect(read(["A1;Water filter;1;WX1;javascript:alert(1);"], { base: "https://a.example" }).links).toEqual(
      [""],
    );
  });

  test("has the kind that the mapping says, by its name's words too", () => {
    const said = { names: { regal: "ice-bin", eimer: "left-out" } };
    const { fits, losses } = read(["A1;Regal;1;WX1;;", "A2;Eimer;1;WX1;;"], said);
    expect(fits).toEqual(["A1 WX1"]);
    expect(losses).toEqual([expect.stringMatching(/as the mapping says/)]);
  });

  test("is one of a column of numbers that has probably lost zeros in front: it is kept and told", () => {
    const rows = Array.from({ length: 12 }, (_, at) => `4000${100 + at};Water filter;1;WX1;;`);
    const { losses, fits } = read([...rows, "40012;Water filter;1;WX1;;"]);
    expect(fits).toHaveLength(13);
    expect(losses).toEqual([expect.stringMatching(/cut off zeros/)]);
  });
});

describe("models that nobody can part", () => {
  const rows = ["A1;Water filter;1;WX430A/KN775B;;", "A2;Water filter;1;WX431A/KN776B;;"];

  test("stop the build, with what to say", () => {
    expect(() => read(rows)).toThrow(UnusableFeed);
    expect(() => read(rows)).toThrow(/--models-split/);
  });

  test("are parted as it is said", () => {
    expect(read(rows, { modelsSplit: "/" }).fits).toHaveLength(4);
    expect(read(rows, { modelsSplit: "none" }).fits).toEqual(["A1 WX430A/KN775B", "A2 WX431A/KN776B"]);
  });
});

describe("two files", () => {
  const parts = readTable("SKU;Name;Price\nA1;Water filter;1\nA2;Ice bin;\n");
  const fitments = readTable("Part number,Model,Brand\nA1,WX1,Tarn\nA1,WX2,Tarn\nA2,WX1,Tarn\nZ9,WX1,Tarn\n");

  test("go together by the part's number; each has its own share and reasons", () => {
    const fits: string[] = [];
    const guess = guessMapping({ parts, fitments }, { currency: "EUR" }, kinds);
    expect(guess.needs).toEqual([]);
    expect(guess.mapping.fitments?.columns).toEqual({
      number: "Part number",
      model: "Model",
      brand: "Brand",
    });
    const understood = understand({ parts, fitments }, guess.mapping, kinds, ({ part, models, brand }) => {
      for (const model of models) fits.push(`${part.number} ${model} ${brand}`);
    });
    expect(fits).toEqual(["A1 WX1 Tarn", "A1 WX2 Tarn"]);
    expect(understood.parts).toMatchObject({ read: 2, used: 1 });
    expect(understood.fitments).toMatchObject({ read: 4, used: 2 });
    expect(understood.fitments?.losses[0]).toMatchObject({ count: 2, places: [{ line: 4 }, { line: 5 }] });
  });
});

describe("what is shown of a feed", () => {
  test("has four models of a part at most, and the count of all, also where one line has several elements", () => {
    const fits = (from: number, to: number) =>
      Array.from({ length: to - from }, (_, at) => `<model>WX50${from + at}A</model>`).join("");
    const item = (models: string) =>
      `<item><id>A1</id><title>Water filter</title><price>5.00</price>${models}</item>`;
    const parts = readTable(`<list>${item(fits(0, 3))}${item(fits(3, 6))}\n${item(fits(6, 9))}</list>`);
    const { fitments, shown } = inspectFeed({ parts }, { currency: "EUR" }, kinds);
    expect(fitments).toBe(9);
    expect(shown).toMatchObject([
      { line: 1, models: ["WX500A", "WX501A", "WX502A", "WX503A"], count: 6 },
      { line: 2, models: ["WX506A", "WX507A", "WX508A"], count: 3 },
    ]);
  });
});

describe("a guess", () => {
  const feed = (heading: string, row: string) => ({ parts: readTable(`${heading}\n${row}\n`) });

  test("finds columns by the trade's words, and leaves a part's brand, old prices and strangers alone", () => {
    const { mapping, parts, needs } = guessMapping(
      feed(
        "Brand;Part no.;Title;Old price;Price;Compatible models;Image;colour",
        "X;A1;Ice bin;9 €;8 €;WX1;/a.png;red",
      ),
      {},
      kinds,
    );
    expect(mapping.columns).toEqual({
      number: "Part no.",
      name: "Title",
      price: "Price",
      model: "Compatible models",
      picture: "Image",
    });
    expect(parts.left.map(({ heading }) => heading)).toEqual(["Brand", "Old price", "colour"]);
    expect(parts.left[0]?.why).toMatch(/part's brand/);
    expect(needs).toEqual([]);
  });

  test("does not believe a heading against what stands below it", () => {
    const { parts, needs } = guessMapping(
      feed("SKU;Name;Price;Fits", "A1;Ice bin;on request;WX1"),
      {},
      kinds,
    );
    expect(parts.left).toEqual([
      { heading: "Price", why: expect.stringMatching(/few of its cells are prices/) },
    ]);
    expect(needs).toEqual([expect.stringMatching(/"price"/)]);
  });

  test("says what has to be said, and takes it where it is", () => {
    const tables = feed("SKU;Name;Price;Fits", "A1;Ice bin;8.00;WX430A/KN775B");
    expect(guessMapping(tables, {}, kinds).needs).toEqual([
      expect.stringMatching(/--models-split/),
      expect.stringMatching(/--currency/),
    ]);
    expect(inspectFeed(tables, {}, kinds).understood).toBeUndefined();
    const said = inspectFeed(tables, { currency: "EUR", modelsSplit: "none" }, kinds);
    expect(said.shown).toMatchObject([{ line: 2, models: ["WX430A/KN775B"], count: 1 }]);
  });

  test("suggests kinds by the shop's word, and by names where these tell more", () => {
    const rows = [
      "1;Water filter;1;WX1;Filters",
      "2;Water filter housing;1;WX1;Filters",
      "3;Trim;1;WX1;Fridge > Ice bins",
      "4;Hook;1;WX1;Odds",
    ];
    const tables = { parts: readTable(["SKU;Name;Price;Fits;Category", ...rows, ""].join("\n")) };
    const { mapping, kinds: told } = guessMapping(tables, { currency: "EUR" }, kinds);
    expect(mapping.kinds).toEqual({ Filters: "by-name", "Fridge > Ice bins": "ice-bin", Odds: "left-out" });
    expect(told.map(({ word, count }) => [word, count])).toEqual([
      ["Filters", 2],
      ["Fridge > Ice bins", 1],
      ["Odds", 1],
    ]);
  });
});

describe("a mapping", () => {
  test("is read from JSON, and a wrong one is told with the place", () => {
    expect(readMapping('{"columns": {"number": "SKU"}, "currency": "EUR"}', "m.json").currency).toBe("EUR");
    expect(() => readMapping('{"columns": {"nummer": "SKU"}}', "m.json")).toThrow(
      /m\.json cannot be used. columns/,
    );
    expect(() => readMapping('{"columns": {}, "currency": "euro"}', "m.json")).toThrow(/currency/);
    expect(() => readMapping("SKU", "m.json")).toThrow(/no JSON/);
  });

  test("that does not go with the feed stops the build", () => {
    expect(() => read(["A;B;1;WX1;;"], { columns: { ...mapping.columns, price: "Preis" } })).toThrow(
      /no heading "Preis"/,
    );
    expect(() => read(["A;B;1;WX1;;"], { columns: { number: "SKU" } })).toThrow(
      /no name, no price, no model/,
    );
  });
});
