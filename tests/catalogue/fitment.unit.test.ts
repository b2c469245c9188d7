import { describe, expect, test } from "vitest";
import { parseCatalogue, partFor } from "../../src/catalogue/index.ts";

type Row = { number: string; kind?: string; stock?: string; origin?: string; fits?: string[] };
const shopWith = (...rows: Row[]) =>
  parseCatalogue({
    models: ["WX-1B", "WX-18"].map((code) => ({ code, brand: "Wexmarrow", machine: "french-door" })),
    parts: rows.map((row) => ({
      kind: "ice-bin",
      name: "Ice bin",
      price: { minor: 3499, currency: "GBP" },
      stock: "in-stock",
      fits: ["WX-1B"],
      ...row,
    })),
  }).catalogue;

/** The numbers on offer for WX-1B, the best first. */
const offered = (...rows: Row[]) => {
  const fitment = partFor(shopWith(...rows), "WX-1B", "ice-bin");
  return fitment.kind === "part"
    ? [fitment.part, ...fitment.alternatives].map(({ number }) => number)
    : fitment.kind;
};

describe("the part for a model", () => {
  test("is the one of its kind that fits it", () => {
    expect(offered({ number: "bin" }, { number: "seal", kind: "door-seal" })).toEqual(["bin"]);
  });

  test("is never one that fits only the look-alike model", () => {
    expect(offered({ number: "other-bin", fits: ["WX-18"] })).toBe("no-part");
  });

  test("may be out of stock, and is then still the right part", () => {
    expect(offered({ number: "bin", stock: "out-of-stock" })).toEqual(["bin"]);
  });

  test("is one in stock rather than an original out of stock", () => {
    expect(
      offered(
        { number: "gone", stock: "out-of-stock", origin: "original" },
        { number: "few", stock: "few", origin: "compatible" },
      ),
    ).toEqual(["few", "gone"]);
  });

  test("is the original rather than a compatible one when both are in stock", () => {
    expect(
      offered(
        { number: "copy", origin: "compatible" },
        { number: "unsaid" },
        { number: "real", stock: "few", origin: "original" },
      ),
    ).toEqual(["real", "unsaid", "copy"]);
  });

  test("keeps the shop's order among equals, and leaves the catalogue's own order alone", () => {
    const catalogue = shopWith({ number: "b", stock: "out-of-stock" }, { number: "c" }, { number: "a" });
    expect(partFor(catalogue, "WX-1B", "ice-bin")).toMatchObject({
      part: { number: "c" },
      alternatives: [{ number: "a" }, { number: "b" }],
    });
    expect(catalogue.fitments.get("WX-1B")?.map(({ part }) => part.number)).toEqual(["b", "c", "a"]);
  });

  test("is none for a model without one, and not asked for a model that the shop does not know", () => {
    const catalogue = shopWith({ number: "bin" });
    expect(partFor(catalogue, "WX-18", "ice-bin")).toEqual({ kind: "no-part" });
    expect(partFor(catalogue, "WX-1B", "constructor")).toEqual({ kind: "no-part" });
    for (const code of ["WX-99", "__proto__", "constructor", "wx1b", ""])
      expect(partFor(catalogue, code, "ice-bin")).toEqual({ kind: "unknown-model" });
  });
});
