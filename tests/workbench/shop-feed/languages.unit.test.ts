import { describe, expect, test } from "vitest";
import { readTrade } from "../../../src/cli/catalogue/trade.ts";
import { ownFlows } from "../../../src/workbench/build/index.ts";
import {
  guessMapping,
  inspectFeed,
  type Mapping,
  readStock,
  readTable,
  tellKind,
} from "../../../src/workbench/shop-feed/index.ts";
import { accuracyOf } from "./accuracy.ts";
import { languageShape, languages, namesIn } from "./language-shape.ts";

const { kinds } = readTrade(ownFlows);
const bare = (text: string) => text.normalize("NFD").replace(/\p{M}/gu, "").replaceAll("ł", "l");

describe.each(languages)("a feed in %s", (language) => {
  test.each<[how: string, change: (heading: string) => string]>([
    ["as it is written", (heading) => heading],
    ["in capitals", (heading) => heading.toUpperCase()],
    ["without accents", bare],
  ])("keeps 97 of 100 true fitments and none that is wrong, headings %s", (_, change) => {
    const made = languageShape(language, change);
    const { truth, found, wrong, understood, needs } = accuracyOf(made, kinds);
    expect(needs).toEqual([]);
    expect(wrong).toEqual([]);
    expect(found / truth).toBeGreaterThanOrEqual(0.97);
    const { read, used, losses } = understood.parts;
    const rows = losses.filter(({ of }) => of === "row");
    expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(read - used);
    expect(losses.map(({ message }) => message).sort()).toEqual([
      "Its name tells no kind of part that is known. Name it in names, or in a column.",
      "The price is empty.",
    ]);
  });

  test("tells every kind of the trade by names with and without accents, and by capitals", () => {
    const { names } = namesIn(language);
    expect(Object.keys(names).sort()).toEqual([...kinds].sort());
    for (const [kind, name] of Object.entries(names))
      for (const written of [name, bare(name), name.toUpperCase()])
        expect(tellKind(written), written).toBe(kind);
  });

  test("takes a piece of a part for none", () => {
    for (const name of namesIn(language).others) expect(tellKind(name), name).toBeNull();
  });
});

describe("a word that means two things", () => {
  const table = (heading: string, row: string) => ({ parts: readTable(`${heading}\n${row}\n`) });

  test("in two languages is asked about where the other headings do not tell the language", () => {
    const { parts, needs } = guessMapping(table("SKU;Nombre;Price;Model", "A1;Ice bin;8 €;WX1"), {}, kinds);
    expect(parts.left).toEqual([
      { heading: "Nombre", why: expect.stringMatching(/name and for stock|stock and for name/) },
    ]);
    expect(needs).toEqual([expect.stringMatching(/"name"/)]);
  });

  test("is read as in the language of the other headings", () => {
    const { mapping } = guessMapping(
      table("Referencia;Nombre;Precio;Modelos", "A1;Filtro de agua;8 €;WX1"),
      {},
      kinds,
    );
    expect(mapping.columns.name).toBe("Nombre");
  });

  test("among names is left out, with both meanings and its count", () => {
    const said: Partial<Mapping> = { modelsSplit: "," };
    const tables = {
      parts: readTable(
        "Referencia;Nombre;Precio;Modelos\nA1;Cubitera;8 €;WX1\nA2;Cubitera;9 €;WX2\nA3;Filtro de agua;9 €;WX2\n",
      ),
    };
    const { understood, fitments } = inspectFeed(tables, said, kinds);
    expect(fitments).toBe(1);
    expect(understood?.parts.losses).toMatchObject([
      { count: 2, message: expect.stringMatching(/may mean ice-bin or ice-maker/) },
    ]);
  });

  test("a piece's word of one language counts in a name of another", () => {
    expect(tellKind("Gehäuse water filter")).toBeNull();
  });
});

test.each([
  ["Agotado", "out-of-stock"],
  ["DOSTEPNY", "in-stock"],
  ["Op voorraad", "in-stock"],
  ["non disponibile", "out-of-stock"],
  ["épuisé", "out-of-stock"],
  ["EPUISE", "out-of-stock"],
])("a word for stock is read in each language: %s", (written, stock) => {
  expect(readStock(written)).toBe(stock);
});
