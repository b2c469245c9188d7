import { describe, expect, test } from "vitest";
import { compareSerials, parseCatalogue, partFor } from "../../src/catalogue/index.ts";

type Fit = string | { code: string; variant?: string; serialFrom?: string; serialTo?: string };
const shopWith = (...rows: [number: string, ...fits: Fit[]][]) =>
  parseCatalogue({
    models: [{ code: "WX-1B", brand: "Wexmarrow", machine: "french-door" }],
    parts: rows.map(([number, ...fits]) => ({
      number,
      kind: "ice-bin",
      name: "Ice bin",
      price: { minor: 3499, currency: "GBP" },
      stock: "in-stock",
      fits,
    })),
  }).catalogue;
const until = (serialTo: string) => ({ code: "WX-1B", serialTo });
const from = (serialFrom: string) => ({ code: "WX-1B", serialFrom });
const inVariant = (variant: string) => ({ code: "WX-1B", variant });

const offered = (catalogue: ReturnType<typeof shopWith>, plate = {}) => {
  const fit = partFor(catalogue, "WX-1B", "ice-bin", plate);
  return fit.kind === "part" ? [fit.part, ...fit.alternatives].map(({ number }) => number) : fit;
};

describe("a part that changed in the middle of a model's life", () => {
  const byNumber = shopWith(["old", until("4999")], ["new", from("5000")]);

  test("is not named before the serial number is known", () => {
    expect(offered(byNumber)).toEqual({ kind: "unread", about: "serial" });
  });

  test.each([
    ["4999", "old"],
    ["04999", "old"],
    ["5000", "new"],
    ["12 000", "new"],
  ])("is the one for serial number %s, both ends included", (serial, number) => {
    expect(offered(byNumber, { serial })).toEqual([number]);
  });

  test("is not named for a serial number of another kind, nor for none", () => {
    for (const serial of ["B4999", "?", "", null])
      expect(offered(byNumber, { serial })).toEqual({ kind: "unread", about: "serial" });
  });

  test("is asked for by production variant, the variants in order", () => {
    const byVariant = shopWith(["b", inVariant("B")], ["a", inVariant("A")], ["a2", inVariant("A")]);
    expect(offered(byVariant)).toEqual({ kind: "unread", about: "variant", choices: ["A", "B"] });
    expect(offered(byVariant, { variant: " a " })).toEqual(["a", "a2"]);
    expect(offered(byVariant, { variant: "C" })).toEqual({ kind: "no-part" });
    expect(offered(byVariant, { variant: null })).toMatchObject({ kind: "unread", about: "variant" });
  });

  test("is never taken for a variant that has neither letters nor digits", () => {
    const starred = shopWith(["star", inVariant("★")], ["b", inVariant("B")]);
    for (const variant of ["★", "-"]) expect(offered(starred, { variant })).toEqual({ kind: "no-part" });
  });

  test("is asked for by variant first where both decide", () => {
    const both = shopWith(
      ["a-old", { ...inVariant("A"), serialTo: "99" }],
      ["a-new", { ...inVariant("A"), serialFrom: "100" }],
      ["b", inVariant("B")],
    );
    expect(offered(both)).toMatchObject({ about: "variant" });
    expect(offered(both, { variant: "A" })).toMatchObject({ about: "serial" });
    expect(offered(both, { variant: "A", serial: "100" })).toEqual(["a-new"]);
    expect(offered(both, { variant: "B" })).toEqual(["b"]);
  });

  test("leaves a part that fits every machine of the model to those who cannot read the plate", () => {
    const withCopy = shopWith(["old", until("4999")], ["new", from("5000")], ["copy", "WX-1B"]);
    expect(offered(withCopy)).toMatchObject({ about: "serial" });
    expect(offered(withCopy, { serial: null })).toEqual(["copy"]);
    expect(offered(withCopy, { serial: "1" })).toEqual(["old", "copy"]);
  });

  test("is named once where two of its ranges hold", () => {
    expect(offered(shopWith(["bin", until("50"), from("10")]), { serial: "20" })).toEqual(["bin"]);
  });
});

describe("which of two serial numbers is later", () => {
  test.each([
    ["9", "10", -1],
    ["010", "10", 0],
    ["S/N 412-B7", "SN412B7", 0],
    ["A0412", "A0398", 1],
    ["FD 9801", "FD 9912", -1],
    ["98765432109876543210", "98765432109876543211", -1],
  ])("%s beside %s", (one, other, order) => {
    expect(Math.sign(compareSerials(one, other) ?? Number.NaN)).toBe(order);
  });

  test.each([
    ["A412", "412"],
    ["A412", "A1412"],
    ["4B12", "B412"],
    ["", "412"],
    ["🧊", "🧊"],
  ])("cannot be told of %s and %s", (one, other) => {
    expect(compareSerials(one, other)).toBeNull();
  });
});
