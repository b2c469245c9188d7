import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findModel, parseCatalogue } from "../../src/catalogue/index.ts";

const catalogueOf = (...codes: string[]) =>
  parseCatalogue({
    models: codes.map((code) => ({ code, brand: "Wexmarrow", machine: "french-door" })),
    parts: [],
  }).catalogue;

/** The codes that a typed text may mean: one for exact, one to three to choose from, or none. */
const meant = (typed: string, ...codes: string[]) => {
  const found = findModel(catalogueOf(...codes), typed);
  if (found.kind === "exact") return { exact: found.model.code };
  if (found.kind === "near") return { near: found.candidates.map(({ model }) => model.code) };
  return found.kind;
};

describe("finding a model", () => {
  test("accepts a code whatever its case, spaces and hyphens", () => {
    expect(meant("wxm-431 ab8 1", "WXM 431AB8/1", "WXM 754Y/EK")).toEqual({ exact: "WXM 431AB8/1" });
  });

  test("asks about a single look-alike, O typed for 0", () => {
    expect(meant("WXM 4O1AB", "WXM 401AB")).toEqual({ near: ["WXM 401AB"] });
  });

  test("offers both twins when one is typed exactly, the typed one first", () => {
    expect(meant("WX40A88", "WX40AB8", "WX40A88", "WX47B88")).toEqual({ near: ["WX40A88", "WX40AB8"] });
  });

  test("offers both twins when neither is typed exactly", () => {
    expect(meant("WX40ABB", "WX40AB8", "WX40A8B")).toEqual({ near: ["WX40A8B", "WX40AB8"] });
  });

  test("offers both of two models whose codes differ only by a hyphen", () => {
    expect(meant("KX12A4", "KX-12A4", "KX1-2A4")).toEqual({ near: ["KX-12A4", "KX1-2A4"] });
  });

  test("still finds a code of which every character was taken for its look-alike", () => {
    expect(meant("OOOOOOOIIIIIII", "00000001111111", "ABCDEFGHIJKLMN")).toEqual({ near: ["00000001111111"] });
  });

  test("puts what looks the same first, however many look-alikes, then the nearest", () => {
    expect(meant("OOOOOOOX4T", "OOOOOOOX4A", "0000000X4T")).toEqual({ near: ["0000000X4T", "OOOOOOOX4A"] });
  });

  test("puts the nearest first: look-alike, then misreading, then another character", () => {
    expect(meant("WXC38HT", "WXC3XHT", "WXC33HT", "WXC3BHT")).toEqual({
      near: ["WXC3BHT", "WXC33HT", "WXC3XHT"],
    });
  });

  test("offers three at most", () => {
    expect(meant("WXC35HT", "WXC3AHT", "WXC3CHT", "WXC3DHT", "WXC3EHT")).toEqual({
      near: ["WXC3AHT", "WXC3CHT", "WXC3DHT"],
    });
  });

  test("goes two edits far for long codes, one for codes under six characters", () => {
    expect(meant("WXCTTT", "WXCAAT")).toEqual({ near: ["WXCAAT"] });
    expect(meant("WXCTTT", "WXAAAT")).toBe("unknown");
    expect(meant("WXTTT", "WXAAT")).toBe("unknown");
    expect(meant("WXTTT", "WXATT")).toEqual({ near: ["WXATT"] });
  });

  test("takes a swap of neighbours and a missing character for the model that is meant", () => {
    expect(meant("WXM341AT", "WXM431AT")).toEqual({ near: ["WXM431AT"] });
    expect(meant("WXM41AT", "WXM431AT")).toEqual({ near: ["WXM431AT"] });
  });

  test("offers a code that was typed exactly, and beside it what one slip makes of it", () => {
    expect(meant("WXM431AT", "WXM431AT", "WXM437AT", "WXM491AK")).toEqual({ near: ["WXM431AT", "WXM437AT"] });
    expect(meant("WXM431AT", "WXM431AT", "WXM413AT")).toEqual({ near: ["WXM431AT", "WXM413AT"] });
    expect(meant("WXM431AT", "WXM431AT", "WXM431A")).toEqual({ near: ["WXM431AT", "WXM431A"] });
    expect(meant("WXM431AT", "WXM431AT", "WXM491AK")).toEqual({ exact: "WXM431AT" });
  });

  test("says which of the candidates was typed, which parts differ, and how many it does not name", () => {
    const { catalogue } = parseCatalogue({
      models: ["WXC35HT", "WXC3AHT", "WXC3CHT", "WXC3DHT"].map((code) => ({
        code,
        brand: "Wexmarrow",
        machine: "french-door",
      })),
      parts: [
        ["bin", "ice-bin", ["WXC35HT", "WXC3AHT", "WXC3CHT", "WXC3DHT"]],
        ["seal-1", "door-seal", ["WXC35HT", "WXC3AHT"]],
        ["seal-2", "door-seal", ["WXC3CHT", "WXC3DHT"]],
      ].map(([number, kind, fits]) => ({
        number,
        kind,
        fits,
        name: "Part",
        price: { minor: 100, currency: "GBP" },
        stock: "few",
      })),
    });
    expect(findModel(catalogue, "wxc35ht")).toMatchObject({
      candidates: [{ asTyped: true, marks: [] }, { asTyped: false }, { asTyped: false }],
      differing: ["door-seal"],
      more: 1,
    });
  });

  test("goes on where a code was typed without what stands behind the slash, and asks which", () => {
    expect(meant("WXM431A", "WXM 431A/EU", "WXM 431A/UK", "WXM 431B/UK")).toEqual({
      near: ["WXM 431A/EU", "WXM 431A/UK"],
    });
    expect(meant("WXM 431A", "WXM 431A/EUK")).toEqual({ near: ["WXM 431A/EUK"] });
    expect(meant("WXM 431A", "WXM 431A", "WXM 431A/EUK")).toEqual({ near: ["WXM 431A", "WXM 431A/EUK"] });
  });

  test("offers the same code with another ending, or with none", () => {
    expect(meant("WXM 431A/FR", "WXM 431A/EUK", "WXM 431B/EUK")).toEqual({ near: ["WXM 431A/EUK"] });
    expect(meant("WXM 431A/FRX", "WXM 431A")).toEqual({ near: ["WXM 431A"] });
  });

  test("takes a whole code with its ending, though the same is sold with others", () => {
    expect(meant("wxm 431a/eu", "WXM 431A/EU", "WXM 431A/FR")).toEqual({ exact: "WXM 431A/EU" });
  });

  test("does not take a question mark for any character", () => {
    expect(meant("WXM43?AT", "WXM431AT", "WXM43AT")).toEqual({ near: ["WXM431AT", "WXM43AT"] });
  });

  test("finds nothing in common between two codes of one character", () => {
    expect(meant("A", "B")).toBe("unknown");
  });

  test("marks the character of the candidate that differs", () => {
    const found = findModel(catalogueOf("WX-40B8"), "wx4088");
    expect(found).toMatchObject({
      kind: "near",
      candidates: [{ marks: [false, false, false, false, false, true, false] }],
    });
  });

  test("keeps what was typed, also for an unknown or unreadable code", () => {
    const catalogue = catalogueOf("WXM 431AB8/1");
    for (const typed of ["wxm 431ab8/1", "wxm 431abb/1", "Frost King", "🙂", " "])
      expect(findModel(catalogue, typed).typed).toBe(typed);
    expect(findModel(catalogue, "🙂")).toEqual({
      kind: "unreadable",
      problem: "no-code-characters",
      typed: "🙂",
    });
    expect(findModel(catalogue, "Frost King")).toEqual({ kind: "unknown", typed: "Frost King" });
  });

  test("calls 300 characters too long instead of comparing them", () => {
    expect(findModel(catalogueOf("WXM1"), "W".repeat(300))).toMatchObject({ problem: "too-long" });
  });

  test("finds models called __proto__ and constructor, and no others by those names", () => {
    expect(meant("constructor", "__proto__", "constructor")).toEqual({ exact: "constructor" });
    expect(meant("__proto__", "__proto__", "constructor")).toEqual({ exact: "__proto__" });
    expect(meant("constructor", "WXM1")).toBe("unknown");
  });

  test("answers any text without throwing, also from an empty catalogue", () => {
    const catalogue = catalogueOf("WXM 431AB8/1", "A", "🅰1");
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (typed) => {
        expect(findModel(catalogue, typed).typed).toBe(typed);
        expect(["unknown", "unreadable"]).toContain(findModel(catalogueOf(), typed).kind);
      }),
    );
  });

  test("gives the same candidates whatever the order of the feed", () => {
    const codes = ["WXC3AHT", "WXC3CHT", "WXC3DHT", "WXC3BHT", "WXC38HT"];
    fc.assert(
      fc.property(fc.shuffledSubarray(codes, { minLength: 5 }), (shuffled) => {
        expect(meant("WXC3YHT", ...shuffled)).toEqual(meant("WXC3YHT", ...codes));
      }),
    );
  });
});
