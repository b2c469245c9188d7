import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { baseOf, normaliseCode, parseCatalogue, safeLink } from "../../src/catalogue/index.ts";

/** What a paste, a feed or a broken export can hold: marks that pile up, halves of pairs, marks of direction, nulls. */
const hostileUnit = fc.constantFrom(
  ...[
    "\u0301",
    "\u0316",
    "\u202E",
    "\u2067",
    "\uD83E",
    "\uDDCA",
    "\u0000",
    "\uFDFA",
    "A",
    "7",
    " ",
    "<",
    "/",
  ],
);
const hostile = fc
  .tuple(fc.array(hostileUnit, { minLength: 1, maxLength: 12 }), fc.integer({ min: 300, max: 1_000_000 }))
  .map(([units, length]) => units.join("").repeat(length).slice(0, length));
const marks = `W${"\u0316\u0301".repeat(50_000)}`;

/** The longest text that was put into a normal form while `work` ran: what marks in a row cost grows by its square. */
function longestNormalised(work: () => unknown): number {
  const real = String.prototype.normalize;
  let longest = 0;
  const spy = vi.spyOn(String.prototype, "normalize").mockImplementation(function (this: string, form) {
    longest = Math.max(longest, this.length);
    // Nothing that long is worth the wait: the test has failed by then.
    return this.length > 10_000 ? "" : real.call(this, form);
  });
  work();
  spy.mockRestore();
  return longest;
}

describe("however long a text is that was pasted as a model code", () => {
  test("no more of it is normalised than a code with its separators can have", () => {
    fc.assert(
      fc.property(hostile, (typed) => {
        expect(longestNormalised(() => normaliseCode(typed))).toBeLessThanOrEqual(5000);
        expect(longestNormalised(() => baseOf(typed))).toBeLessThanOrEqual(5000);
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  test("it is too long, and kept as it was typed", () => {
    expect(normaliseCode(marks)).toEqual({ kind: "unreadable", problem: "too-long", typed: marks });
  });
});

describe("a shop's row with a text without end", () => {
  const model = { code: "WX-1B", brand: "Wexmarrow", machine: "french-door" };
  const part = {
    number: "LLS-1",
    kind: "ice-bin",
    name: "Ice bin",
    price: { minor: 3499, currency: "GBP" },
    stock: "in-stock",
    fits: ["WX-1B"],
  };

  test("loses the entry of `fits` and keeps the others, and nothing of it is normalised", () => {
    const fits = [marks, { code: marks }, "WX-1B"];
    let read = parseCatalogue(null);
    const longest = longestNormalised(() => {
      read = parseCatalogue({ models: [model], parts: [{ ...part, fits }] });
    });
    expect(read.catalogue.parts[0]?.fits).toEqual(["WX-1B"]);
    expect(read.problems.map(({ code, path }) => [code, path])).toEqual([
      ["bad-fit", "parts.0.fits.0"],
      ["bad-fit", "parts.0.fits.1"],
    ]);
    expect(longest).toBeLessThanOrEqual(100);
  });

  test.each([
    ["name", { name: "n".repeat(100_000) }],
    ["replaces", { replaces: Array.from({ length: 5000 }, (_, at) => `LLS-${at}`) }],
    ["effortMinutes", { effortMinutes: 10_000_000 }],
  ])("is left out for its %s, and its neighbours are kept", (field, change) => {
    const parts = [
      { ...part, ...change },
      { ...part, number: "LLS-2" },
    ];
    const { catalogue, problems } = parseCatalogue({ models: [model], parts });
    expect(catalogue.parts.map(({ number }) => number)).toEqual(["LLS-2"]);
    expect(problems).toEqual([{ code: "bad-row", path: `parts.0.${field}` }]);
  });

  test("never makes a link", () => {
    fc.assert(
      fc.property(hostile, (text) => {
        expect(safeLink(`https://larder-lane.example/${text}`)?.length ?? 0).toBeLessThanOrEqual(2000);
      }),
      { seed: 32, numRuns: 30 },
    );
  });
});

test("of a list of rows without end the first are read, and that there were more is reported once", () => {
  const models = Array.from({ length: 60_000 }, (_, at) => ({
    code: `W-${at}`,
    brand: "Wexmarrow",
    machine: "other",
  }));
  const { catalogue, problems } = parseCatalogue({ models, parts: [] });
  expect(catalogue.models.size).toBeLessThan(60_000);
  expect(problems).toEqual([{ code: "too-many", path: "models" }]);
});
