import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseCatalogue } from "../../../src/catalogue/index.ts";
import { createCollector, UnusableFeed } from "../../../src/workbench/feed/index.ts";
import { collectRows, collectText, type FeedRow, fitsOf, goodRow, placesOf, toCsv } from "./feed-fixture.ts";

const messages = (feed: ReturnType<typeof collectRows>) => feed.problems.first.map(({ message }) => message);

describe("a feed", () => {
  test("is kept whole when nothing is wrong", () => {
    const full = {
      ...{ variant: "B", "serial-from": "100", "serial-to": "200", stock: "in-stock", origin: "original" },
      ...{ link: "https://a.example/1", picture: "https://a.example/1.jpg", minutes: "5" },
    };
    const feed = collectRows(full);
    expect(feed.problems.total).toBe(0);
    expect(feed.collected.models).toEqual([
      { code: "WX-1B", key: "WX1B", brand: "Wexmarrow", machine: "french-door" },
    ]);
    expect(feed.collected.parts).toEqual([
      {
        ...{ number: "LLS-1", kind: "ice-bin", name: "Ice bin", stock: "in-stock", origin: "original" },
        ...{ price: { minor: 3499, currency: "GBP" }, effortMinutes: 5 },
        ...{ link: "https://a.example/1", picture: "https://a.example/1.jpg" },
      },
    ]);
    expect([...feed.collected.conditions]).toEqual([
      [0, { variant: "B", serialFrom: "100", serialTo: "200" }],
    ]);
  });

  test("may write its headings in its own way, and its own names for some", () => {
    const text =
      "Brand;MODEL;Kind;SKU;Name;Price;Currency;Serial From;replaced_by\nW;WX-1;ice-bin;N1;Bin;1;EUR;7;\n";
    const feed = collectText(text, { own: new Map([["number", "sku"]]) });
    expect(feed.problems.total).toBe(0);
    expect(feed.ignored).toEqual([]);
    expect(fitsOf(feed)).toEqual({ "WX-1": ["N1"] });
    expect(feed.collected.conditions.get(0)).toEqual({ serialFrom: "7" });
  });

  test("has each column that means nothing named once, and is read all the same", () => {
    const feed = collectRows({ colour: "white" }, { colour: "black" });
    expect(feed.ignored).toEqual(["colour"]);
    expect(feed.problems.total).toBe(0);
  });

  test.each([
    ["", "empty"],
    ["\n\n", "empty"],
    ["model,kind,name\n1,2,3\n", "no number, no price, no currency"],
    ["m\uFFFDdel,kind\n", "UTF-8"],
    ["\uFFFD\uFFFDm\0o\0d\0e\0l\0", "UTF-8"],
    ["[{}]", "one object on each line"],
  ])("that cannot be read at all is refused with a sentence: %j", (text, said) => {
    const collector = createCollector({ few: 3 });
    const read = () => {
      collector.push(text);
      collector.end();
    };
    expect(read).toThrow(UnusableFeed);
    expect(read).toThrow(said);
  });

  test("may have two headings that mean the same: the first counts, and it is told", () => {
    const feed = collectText("model,kind,number,name,price,currency,Name\nA1,k,n,first,1,EUR,second\n");
    expect(placesOf(feed)).toEqual(["1:39 doubled-heading"]);
    expect(feed.collected.parts[0]?.name).toBe("first");
  });

  test("never sends what a terminal would obey: control characters of headings and cells are left out", () => {
    const command = "\u001B]0;gone\u0007";
    const feed = collectText(`${toCsv([goodRow]).split("\n")[0]},x${command}\n,,,,,${command},,,\n`);
    expect(() => collectText(`model,${command}\n`)).toThrow(/It has: model, +\]0;gone\./);
    expect(JSON.stringify([feed.ignored, feed.problems.first])).not.toContain("u001b");
    expect(feed.ignored).toEqual(["x ]0;gone"]);
  });

  test("gives what a catalogue takes without a complaint, whatever stands in it", () => {
    const wild = fc.oneof(
      fc.string({ unit: "grapheme", maxLength: 12 }),
      fc.constantFrom(
        "",
        "1",
        "1,50",
        "a-b",
        "EUR",
        "WX 1*",
        "javascript:alert(1)",
        "x".repeat(300),
        "\u202E",
      ),
    );
    const change = fc.record(
      Object.fromEntries(
        ["brand", "model", "machine", "variant", "serial-from", "kind", "number", "name", "price", "currency"]
          .concat(["stock", "link", "picture", "replaces", "replaced-by", "origin", "minutes"])
          .map((name) => [name, wild]),
      ),
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        const { collected, figures } = collectRows(...(changes as FeedRow[]));
        const { models, parts, offsets, partOf, conditions } = collected;
        expect(offsets).toHaveLength(models.length + 1);
        expect(offsets.at(-1)).toBe(partOf.length);
        expect(figures.rowsUsed).toBeLessThanOrEqual(changes.length);
        const fits = parts.map(() => [] as object[]);
        for (const [model, { code }] of models.entries())
          for (let at = offsets[model] ?? 0; at < (offsets[model + 1] ?? 0); at++)
            fits[partOf[at] ?? 0]?.push({ code, ...conditions.get(at) });
        const json = {
          models: models.map(({ code, brand, machine }) => ({ code, brand, machine })),
          parts: parts.map((part, index) => ({ ...part, fits: fits[index] })),
        };
        const parsed = parseCatalogue(JSON.parse(JSON.stringify(json)));
        expect(parsed.problems).toEqual([]);
        expect([...parsed.catalogue.models.values()].map(({ key }) => key)).toEqual(
          models.map(({ key }) => key),
        );
      }),
      { numRuns: 300 },
    );
  });
});

describe("a row that cannot be used", () => {
  test.each([
    [{ model: "" }, "empty-field"],
    [{ model: "🧊" }, "bad-model"],
    [{ model: "W".repeat(60) }, "bad-model"],
    [{ model: "W".repeat(90) }, "bad-model"],
    [{ number: "" }, "empty-field"],
    [{ number: "N".repeat(81) }, "bad-number"],
    [{ kind: "Ice Bin" }, "bad-kind"],
    [{ kind: "<b>" }, "bad-kind"],
    [{ name: "" }, "empty-field"],
    [{ price: "" }, "bad-price"],
    [{ price: "1.299,00" }, "bad-price"],
    [{ price: "-1" }, "bad-price"],
    [{ currency: "£" }, "bad-currency"],
    [{ currency: "XQQ" }, "bad-currency"],
    [{ variant: "?" }, "bad-condition"],
    [{ "serial-from": "S".repeat(81) }, "bad-condition"],
    [{ "serial-from": "200", "serial-to": "100" }, "bad-condition"],
    [{ "serial-from": "A100", "serial-to": "200" }, "bad-condition"],
    [{ name: "Ice\u0000bin" }, "control-character"],
    [{ number: "LLS\u001B[31m" }, "control-character"],
    [{ model: "WX\u0007" }, "control-character"],
    [{ variant: "\u0000" }, "control-character"],
    [{ name: "Bac \uFFFD gla\uFFFDons" }, "bad-encoding"],
    [{ model: "WX\uFFFD" }, "bad-encoding"],
  ])("is told with its line, and its neighbours are kept: %j", (change, code) => {
    const feed = collectRows({ model: "WX-7", number: "LLS-7", ...change }, { number: "LLS-2" });
    expect(feed.problems.first).toMatchObject([{ code, line: 2 }]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-2"] });
    expect(feed.figures).toMatchObject({ rowsRead: 2, rowsUsed: 1 });
  });

  test("has each thing that is wrong with its part told, at the place where it stands", () => {
    expect(placesOf(collectRows({ kind: "Ice Bin", price: "1.299,00" }))).toEqual([
      "2:29 bad-kind",
      "2:51 bad-price",
    ]);
  });

  test("says how a kind would have to be written", () => {
    expect(messages(collectRows({ kind: "Ice Bin" }))[0]).toContain('Write it as "ice-bin"');
  });

  test("does not become a part that fits every machine when its condition is broken", () => {
    const feed = collectRows({}, { number: "LLS-2", "serial-from": "\u0000" });
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"] });
  });

  test("is passed over in silence when a spreadsheet left it empty", () => {
    const feed = collectText(`${toCsv([goodRow])},,,,,,,\n`);
    expect(feed.problems.total).toBe(0);
    expect(feed.figures.rowsRead).toBe(1);
  });

  test("is counted but not kept whole beyond the first ones", () => {
    const feed = collectText(toCsv(Array.from({ length: 250 }, () => ({ ...goodRow, price: "x" }))));
    expect(feed.problems.first).toHaveLength(100);
    expect(feed.problems.total).toBe(250);
    expect([...feed.problems.counts]).toEqual([["bad-price", 250]]);
  });
});

describe("a row that is kept without something", () => {
  test.each([
    [{ link: "javascript:alert(1)" }, "unsafe-link", "link"],
    [{ link: "//evil.example" }, "unsafe-link", "link"],
    [{ picture: "data:text/html,<script>" }, "unsafe-link", "picture"],
    [{ origin: "stolen" }, "bad-origin", "origin"],
    [{ minutes: "soon" }, "bad-minutes", "effortMinutes"],
    [{ minutes: "-5" }, "bad-minutes", "effortMinutes"],
    [{ "replaced-by": "A|B" }, "bad-replacement", "replaces"],
    [{ replaces: "N".repeat(81) }, "bad-replacement", "replaces"],
  ])("is told: %j", (change, code, field) => {
    const feed = collectRows(change);
    expect(feed.problems.first).toMatchObject([{ code, line: 2 }]);
    expect(feed.collected.parts[0]).not.toHaveProperty(field);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"] });
  });

  test("has a name over 200 characters cut, without half a character at its end", () => {
    const feed = collectRows({ name: `${"n".repeat(199)}🧊 and more` });
    expect(feed.problems.first).toMatchObject([{ code: "name-cut", line: 2 }]);
    expect(feed.collected.parts[0]?.name).toBe("n".repeat(199));
  });

  test("keeps markup in names as text, and line ends as blanks", () => {
    const feed = collectRows({ name: '<img src=x onerror="alert(1)">\n& more' });
    expect(feed.problems.total).toBe(0);
    expect(feed.collected.parts[0]?.name).toBe('<img src=x onerror="alert(1)"> & more');
  });

  test("may be called __proto__ or constructor without harm", () => {
    const names = ["__proto__", "constructor", "toString"];
    const feed = collectRows(
      ...names.map((name) => ({ model: name, number: name, brand: name, variant: name })),
    );
    expect(feed.problems.total).toBe(0);
    expect(feed.collected.models.map(({ code }) => code)).toEqual(names);
    expect(feed.collected.parts.map(({ number }) => number)).toEqual(names);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe("stock", () => {
  const stockOf = (stock: string) => collectRows({ stock }).collected.parts[0]?.stock;
  test.each([
    ["in-stock", "in-stock"],
    ["In Stock", "in-stock"],
    ["out_of_stock", "out-of-stock"],
    ["few", "few"],
    ["0", "out-of-stock"],
    ["-2", "out-of-stock"],
    ["1", "few"],
    ["3", "few"],
    ["4", "in-stock"],
    ["12.0", "in-stock"],
  ])("is read: %s is %s", (written, stock) => {
    expect(stockOf(written)).toBe(stock);
  });

  test("counts as out of stock, and is told, where nobody can read it", () => {
    const feed = collectRows({ stock: "plenty" });
    expect(feed.collected.parts[0]?.stock).toBe("out-of-stock");
    expect(feed.problems.first).toMatchObject([{ code: "bad-stock" }]);
  });

  test("is taken for granted where the feed does not speak of it", () => {
    expect(stockOf("")).toBe("in-stock");
    expect(collectRows({}).collected.parts[0]?.stock).toBe("in-stock");
  });
});
