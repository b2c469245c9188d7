import { describe, expect, test } from "vitest";
import { readTrade } from "../../../src/cli/catalogue/trade.ts";
import { ownFlows } from "../../../src/workbench/build/index.ts";
import { readStock, tellKind } from "../../../src/workbench/shop-feed/index.ts";
import { allWords } from "../../../src/workbench/shop-feed/words/index.ts";

describe("a part's name", () => {
  test.each<[name: string, kind: string]>([
    ["Water filter", "water-filter"],
    ["Wexmarrow WX-430 water filter cartridge, pack of 2", "water-filter"],
    ["Set of 2 water filters", "water-filter"],
    ["Inlet valve for ice maker", "inlet-valve"],
    ["Ice maker inlet valve 230V", "inlet-valve"],
    ["Ice maker (for models with water tank)", "ice-maker"],
    ["ICE MAKER ASSEMBLY", "ice-maker"],
    ["Freezer door gasket white", "door-seal"],
    ["LLS-4711 - Door switch", "door-switch"],
    ["Ice maker fill tube", "fill-tube"],
    ["Genuine ice & water filter", "water-filter"],
    ['Water supply hose 5/16"', "supply-line"],
  ])("tells the kind that it names: %s", (name, kind) => {
    expect(tellKind(name)).toBe(kind);
  });

  test.each([
    "Water filter housing",
    "Ice maker control board",
    "Bracket for water filter",
    "Cover, ice maker",
    "Cap water filter",
    "Ice bin auger motor",
    "Door switch ice maker",
    "Inlet valve and supply hose",
    "Shelf",
    "Cleaner for ice makers",
    "",
  ])("tells none where it may be a piece of it, or another thing: %s", (name) => {
    expect(tellKind(name)).toBeNull();
  });

  test("can tell every kind of the trade, and no other", () => {
    const { kinds } = readTrade(ownFlows);
    const named = allWords.flatMap((words) => Object.keys(words.kinds));
    expect([...new Set(named)].sort()).toEqual([...kinds].sort());
    for (const [kind, names] of allWords.flatMap((words) => Object.entries(words.kinds)))
      for (const name of names) expect(tellKind(name), name).toBe(kind);
  });
});

describe("a cell of stock", () => {
  test.each([
    ["In Stock", "in-stock"],
    ["https://schema.org/InStock", "in-stock"],
    ["out_of_stock", "out-of-stock"],
    ["Auf Lager", "in-stock"],
    ["nicht lieferbar", "out-of-stock"],
    ["en rupture", "out-of-stock"],
    ["12", "12"],
    ["12 pcs", "12"],
    [">10", "10"],
    ["", ""],
  ])("is read: %s", (written, stock) => {
    expect(readStock(written)).toBe(stock);
  });

  test.each(["2 weeks", "ask us", "3-5 days", "constructor"])(
    "promises nothing where it is unknown: %s",
    (written) => {
      expect(readStock(written)).toBeNull();
    },
  );

  test("may be a word of the shop's own", () => {
    expect(readStock("2 weeks", { "2 weeks": "out-of-stock" })).toBe("out-of-stock");
  });
});
