import { describe, expect, test } from "vitest";
import { type FindResult, findModel, parseCatalogue } from "../../../src/catalogue/index.ts";
import { writeNearby } from "../../../src/catalogue/shards/nearby.ts";
import { count, emptyTally } from "./accuracy.ts";
import { sampleOf, typedRightly, typedWrongly } from "./sample.ts";

const { catalogue } = parseCatalogue({
  models: ["NWK 401A", "NWK 401C", "NWK 952T"].map((code) => ({
    code,
    brand: "Nettlewick",
    machine: "side-by-side",
  })),
  parts: [],
});

/** The tally of one lookup of a code that was typed in some way. */
function tallyOf(code: string, typed: string, given?: Partial<FindResult>, nearby: string[] = []) {
  const tally = emptyTally();
  const result = { ...findModel(catalogue, typed), ...given } as FindResult;
  const files = [{ path: "nearby", json: JSON.parse(writeNearby(nearby)) }];
  count(tally, { code, slip: null, typed }, { result, files, widest: 1, rounds: 1 }, (key) =>
    [...catalogue.models.values()].some((model) => model.key === key),
  );
  return tally;
}

describe("a lookup counts", () => {
  test("as found, shown and first where the code that was meant is taken", () => {
    expect(tallyOf("NWK 952T", "nwk952t")).toMatchObject({
      exact: 1,
      found: 1,
      shown: 1,
      first: 1,
      silent: 0,
    });
  });

  test("as silent where another code is taken without a question, and as nothing else", () => {
    const tally = tallyOf("NWK 401A", "NWK 952T");
    expect(tally).toMatchObject({ silent: 1, exact: 0, found: 0, shown: 0, first: 0, another: 1 });
  });

  test("as shown and not first where another stands before it", () => {
    expect(tallyOf("NWK 401C", "NWK 401A")).toMatchObject({ found: 1, shown: 1, first: 0, another: 1 });
  });

  test("as found where the code is among those that are counted only, and was read", () => {
    const only = { candidates: [] as never[], more: 4 };
    expect(tallyOf("NWK 401C", "NWK 401A", only, ["NWK401C"])).toMatchObject({ found: 1, shown: 0 });
    expect(tallyOf("NWK 401C", "NWK 401A", only, ["NWK401X"])).toMatchObject({ found: 0, shown: 0 });
  });

  test("as nothing where no code is found", () => {
    expect(tallyOf("NWK 952T", "QQ")).toEqual({ ...emptyTally(), typed: 1 });
  });
});

describe("a sample", () => {
  const codes = Array.from({ length: 1000 }, (_, at) => `NWK ${at + 1000}`);

  test("takes each code once where there are enough, and from all over", () => {
    const some = sampleOf(codes, 100, 7);
    expect(new Set(some).size).toBe(100);
    expect(some[0]?.slice(0, 5)).toBe("NWK 1");
    expect(codes.indexOf(some[99] ?? "")).toBeGreaterThanOrEqual(990);
    expect(sampleOf(codes, 5000, 7)).toHaveLength(5000);
  });

  test("is typed with all kinds of slips equally often, and without separators half of the time", () => {
    const typed = typedWrongly(codes, 7);
    for (const slip of ["look-alike", "swap", "missing", "doubled", "wrong"])
      expect(typed.filter((each) => each.slip === slip).length).toBeGreaterThan(195);
    const plain = typedRightly(codes, 7).filter((each) => !each.typed.includes(" "));
    expect(plain.length).toBeGreaterThan(400);
    expect(plain.length).toBeLessThan(600);
  });
});
