import fc from "fast-check";
import { describe, expect, test } from "vitest";

import { type FindResult, foldCode, type SoldPart } from "../../src/catalogue/index.ts";
import { createShardedCatalogue } from "../../src/catalogue/shards/index.ts";
import { filedIn, searchedIn } from "../../src/catalogue/shards/near-keys.ts";
import { collect, shardsOf } from "./shards-in-memory.ts";

const small = { bytesInShard: 600, codesInNearby: 4, codesInBucket: 3 };
const meant = (found: FindResult) => {
  if (found.kind === "exact") return { exact: found.model.code };
  if (found.kind === "near") return { near: found.candidates.map(({ model }) => model.code) };
  return found.kind;
};
const find = async (typed: string, ...codes: string[]) =>
  meant(await shardsOf(collect(codes), small).shop.findModel(typed));

/** A text and one slip of it: a sign other, missing, too much, or two neighbours swapped. */
const slip = fc
  .tuple(
    fc.string({ unit: fc.constantFrom(..."ABC4"), minLength: 1, maxLength: 16 }),
    fc.constantFrom("other", "missing", "more", "swap"),
    fc.nat(),
    fc.constantFrom(..."ABC4X"),
  )
  .map(([code, how, place, sign]) => {
    const at = place % code.length;
    const [before, after] = [code.slice(0, at), code.slice(at + 1)];
    const typed = {
      other: before + sign + after,
      missing: before + after,
      more: before + sign + code.slice(at),
      swap: before + (after[0] ?? "") + code[at] + after.slice(1),
    }[how] as string;
    return { code, typed };
  })
  .filter(({ code, typed }) => typed !== "" && typed !== code);

describe("the index by halves", () => {
  test("has a bucket in common for every two codes that are one slip apart, whatever was split", () => {
    fc.assert(
      fc.property(slip, fc.func(fc.boolean()), ({ code, typed }, isSplit) => {
        const filed = filedIn(code, isSplit);
        expect(searchedIn(typed, isSplit).some((bucket) => filed.includes(bucket))).toBe(true);
      }),
      { numRuns: 20_000 },
    );
  });

  test("asks for four buckets at most where none is split, and for eight where each is split once", () => {
    for (let length = 9; length <= 20; length++) {
      const code = "WXM431ABTRKVUNHPJEF9".slice(0, length);
      expect(searchedIn(code, () => false).length).toBeLessThanOrEqual(4);
      const first = new Set(searchedIn(code, () => false));
      expect(searchedIn(code, (bucket) => first.has(bucket)).length).toBeLessThanOrEqual(8);
    }
  });
});

describe("a catalogue of many files", () => {
  test("finds a code by its exact spelling in one file, and its part in the same", async () => {
    const { shop, asked } = shardsOf(collect(["WXM 431A/EU", "TBY-570-S1.R", "BLQ254NH/A0"]), small);
    expect(meant(await shop.findModel("wxm 431a/eu"))).toEqual({ exact: "WXM 431A/EU" });
    expect(await shop.partFor("WXM 431A/EU", "ice-bin")).toMatchObject({
      part: { number: "bin-WXM 431A/EU" },
    });
    expect(await shop.partFor("WXM 431A/EU", "door-seal")).toEqual({ kind: "no-part" });
    expect(asked).toHaveLength(1);
  });

  test("finds a look-alike in one file as well, and asks about it", async () => {
    const { shop, asked } = shardsOf(collect(["WXM 4O1AB", "TBY-570-S1.R"]), small);
    expect(meant(await shop.findModel("WXM 401A8"))).toEqual({ near: ["WXM 4O1AB"] });
    expect(asked).toHaveLength(1);
  });

  test("offers what one slip makes of a code that it does not have, the nearest first", async () => {
    expect(await find("WXC38HT", "WXC3XHT", "WXC33HT", "WXC3BHT", "UM4A", "KX12A4")).toEqual({
      near: ["WXC3BHT", "WXC33HT", "WXC3XHT"],
    });
  });

  test("never takes a code silently that one slip makes of another: both are offered, the typed one first", async () => {
    expect(await find("WXM431AT", "WXM437AT", "WXM431AT")).toEqual({ near: ["WXM431AT", "WXM437AT"] });
    expect(await find("WXM431AT", "WXM491AK", "WXM431AT")).toEqual({ exact: "WXM431AT" });
  });

  test("asks which ending a code has that was typed without, or with another one", async () => {
    const codes = ["WXM 431A/EU", "WXM 431A/UKX", "WXM 937B/UK"];
    expect(await find("wxm431a", ...codes)).toEqual({ near: ["WXM 431A/EU", "WXM 431A/UKX"] });
    expect(await find("WXM 431A/FRT", ...codes)).toEqual({ near: ["WXM 431A/EU", "WXM 431A/UKX"] });
    expect(await find("WXM 431A/FRT", "WXM 431A")).toEqual({ near: ["WXM 431A"] });
  });

  test("says how many more there are than it names", async () => {
    const codes = ["EU", "UK", "FR", "DE", "NL"].map((ending) => `WXM 4317A/${ending}`);
    const { shop } = shardsOf(collect(codes), small);
    expect(await shop.findModel("WXM 4317A")).toMatchObject({ more: 2, candidates: { length: 3 } });
    const digits = shardsOf(collect(["2", "3", "4", "6", "7"].map((digit) => `TBY${digit}MKX`)), small).shop;
    expect(await digits.findModel("TBY9MKX")).toMatchObject({ more: 2, candidates: { length: 3 } });
  });

  test("asks for eight files at most side by side, also where codes are numbered through", async () => {
    const codes = Array.from({ length: 3000 }, (_, at) => `KXT${10_000 + at}N-EU`);
    const { manifest, written } = shardsOf(collect(codes), { ...small, codesInBucket: 6 });
    let open = 0;
    let most = 0;
    const shop = createShardedCatalogue(manifest, async (path) => {
      most = Math.max(most, ++open);
      await Promise.resolve();
      open--;
      return JSON.parse(written.get(path) ?? "null");
    });
    for (const typed of ["KXT 10000N-EU", "KXT 10423N-FR", "KXT 1042N-EU", "KXT10424N-E", "KXT-99999N-EU"])
      await shop.findModel(typed);
    expect(manifest.split).not.toBe("");
    expect(most).toBe(8);
  });

  test("does not know what is further away, and says what cannot be read", async () => {
    expect(await find("ZZZ 999", "WXM 431A/EU")).toBe("unknown");
    expect(await find("", "WXM 431A/EU")).toBe("unreadable");
  });

  test("gives back every cell of a part, whatever its links look like", async () => {
    const row: SoldPart = {
      number: "AB-12",
      kind: "ice-bin",
      name: 'Bin, "large"',
      price: { minor: 3499, currency: "GBP" },
      stock: "few",
      link: "https://larder-lane.example/parts/ab-12?of=AB-12",
      picture: "https://larder-lane.example/pictures/77.webp",
      origin: "compatible",
      effortMinutes: 5,
      replaces: ["AB-10", "AB-11"],
    };
    const { shop } = shardsOf({ ...collect(["WXM 431A/EU"]), parts: [row] }, small);
    expect(await shop.partFor("WXM 431A/EU", "ice-bin")).toEqual({
      kind: "part",
      part: { ...row, fits: ["WXM 431A/EU"] },
      alternatives: [],
    });
  });

  test("asks for the serial number where the feed says that it decides", async () => {
    const feed = collect(["WXM 431A/EU", "WXM 999K"]);
    const conditions = new Map([[0, { serialFrom: "100", serialTo: "200" }]]);
    const { shop } = shardsOf({ ...feed, conditions }, small);
    expect(await shop.partFor("WXM 431A/EU", "ice-bin")).toEqual({ kind: "unread", about: "serial" });
    expect(await shop.partFor("WXM 431A/EU", "ice-bin", { serial: "150" })).toMatchObject({ kind: "part" });
    expect(await shop.partFor("WXM 431A/EU", "ice-bin", { serial: "250" })).toEqual({ kind: "no-part" });
  });

  test("knows no part for a code that it does not have", async () => {
    const { shop } = shardsOf(collect(["WXM 431A/EU"]), small);
    expect(await shop.partFor("WXM 431A/UK", "ice-bin")).toEqual({ kind: "unknown-model" });
    expect(await shop.partFor("", "ice-bin")).toEqual({ kind: "unknown-model" });
  });

  test("finds every code from every slip of it, among the candidates or counted beside them, however full its buckets", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(slip, { minLength: 1, maxLength: 40 }), async (slips) => {
        const unique = new Map(slips.map(({ code }) => [foldCode(code), code]));
        const { shop } = shardsOf(collect([...unique.values()]), small);
        for (const { code, typed } of slips) {
          if (unique.get(foldCode(code)) !== code || foldCode(typed) === foldCode(code)) continue;
          // Codes of one sign have nothing in common.
          if (Math.min(typed.length, code.length) < 2) continue;
          const found = await shop.findModel(typed);
          expect(found.kind, `${typed} for ${code}`).toBe("near");
          if (found.kind !== "near") continue;
          const isThere = found.candidates.some(({ model }) => model.code === code);
          expect(isThere || found.more > 0, `${typed} for ${code}`).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("writes the same files for the same feed, and no folder of more than 256", () => {
    const codes = Array.from({ length: 3000 }, (_, at) => `WX${(at * 7919) % 100_003}K`);
    const { written } = shardsOf(collect(codes), small);
    expect(written).toEqual(shardsOf(collect(codes), small).written);
    const inFolder = new Map<string, number>();
    for (const path of written.keys()) {
      const folder = path.slice(0, path.lastIndexOf("/"));
      inFolder.set(folder, (inFolder.get(folder) ?? 0) + 1);
    }
    expect(inFolder.size).toBeGreaterThan(10);
    expect(Math.max(...inFolder.values())).toBeLessThanOrEqual(256);
  });

  test("finds codes called like the properties of objects", async () => {
    const codes = ["__proto__", "constructor", "toString", "hasOwnProperty"];
    const { shop } = shardsOf(collect(codes), small);
    for (const code of codes) expect(meant(await shop.findModel(code))).toEqual({ exact: code });
  });
});

describe("a file that is not what it should be", () => {
  const readingBack = (json: unknown) => {
    const { manifest } = shardsOf(collect(["WXM 431A/EU"]), small);
    return createShardedCatalogue(manifest, async () => json);
  };

  test.each([
    [null],
    [7],
    ["<b>hi</b>"],
    [{ models: "many", parts: {}, endings: [1, "x"], codes: 7 }],
    [
      {
        models: [["WXM 431A/EU"], [null, {}, []], "x"],
        parts: [["n"], 7],
        endings: { WXM431A: { keys: [7] } },
      },
    ],
    [
      {
        models: [["WXM 431A/EU", "N", "french-door", 0, [0, 99, "x", [0], [1, 2, 3, 4]]]],
        parts: [[1, 2, 3]],
      },
    ],
  ])("%j gives an answer and throws nothing", async (json) => {
    const shop = readingBack(json);
    for (const typed of ["WXM 431A/EU", "WXM 431A", "WXM431B"])
      expect(["unknown", "exact", "near"]).toContain((await shop.findModel(typed)).kind);
    expect(["unknown-model", "no-part"]).toContain((await shop.partFor("WXM 431A/EU", "ice-bin")).kind);
  });

  test("links to scripts in it are left out and names stay text", async () => {
    const shop = readingBack({
      models: [["WXM 431A/EU", "<i>N</i>", "french-door", 0, [0]]],
      parts: [["n1"], ["ice-bin"], ["<script>x</script>"], [900], ["GBP"], ["few"], ["javascript:alert(1)"]],
    });
    expect(await shop.partFor("WXM 431A/EU", "ice-bin")).toEqual({
      kind: "part",
      alternatives: [],
      part: {
        number: "n1",
        kind: "ice-bin",
        name: "<script>x</script>",
        price: { minor: 900, currency: "GBP" },
        stock: "few",
        fits: ["WXM 431A/EU"],
      },
    });
  });

  test("that does not come is asked for again at the next question", async () => {
    const { manifest, written } = shardsOf(collect(["WXM 431A/EU"]), small);
    let isBack = false;
    const shop = createShardedCatalogue(manifest, async (path) => {
      if (!isBack) throw new Error("offline");
      return JSON.parse(written.get(path) ?? "null");
    });
    await expect(shop.findModel("WXM 431A/EU")).rejects.toThrow("offline");
    isBack = true;
    expect(meant(await shop.findModel("WXM 431A/EU"))).toEqual({ exact: "WXM 431A/EU" });
  });
});
