import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseCatalogue, parseInSteps } from "../../src/catalogue/index.ts";

const model = { code: "WX-1B", brand: "Wexmarrow", machine: "french-door" };
const part = {
  number: "LLS-1",
  kind: "ice-bin",
  name: "Ice bin",
  price: { minor: 3499, currency: "GBP" },
  stock: "in-stock",
  link: "https://larder-lane.example/parts/lls-1",
  fits: ["WX-1B"],
};
const parse = (models: unknown, parts: unknown = []) => parseCatalogue({ models, parts });
const withPart = (change: object) => parse([model], [{ ...part, ...change }]);

describe("a catalogue from a shop", () => {
  test("is kept whole when nothing is wrong", () => {
    const full = { ...part, origin: "original", effortMinutes: 5 };
    const { catalogue, problems } = parseCatalogue({ shop: "Larder Lane", models: [model], parts: [full] });
    expect(problems).toEqual([]);
    expect(catalogue.shop).toBe("Larder Lane");
    expect(catalogue.models.get("WX-1B")).toEqual({ ...model, key: "WX1B" });
    expect(catalogue.parts).toEqual([full]);
    expect(catalogue.fitments.get("WX-1B")).toEqual([{ part: full }]);
  });

  test.each([undefined, null, 7, "{}", true])("is empty and reported when it is %j", (json) => {
    const { catalogue, problems } = parseCatalogue(json);
    expect(catalogue.models.size + catalogue.parts.length).toBe(0);
    expect(problems[0]).toEqual({ code: "not-a-catalogue", path: "" });
  });

  test.each([[[]], [{}], [{ models: {}, parts: "no" }]])("is empty and reported when it is %j", (json) => {
    const { catalogue, problems } = parseCatalogue(json);
    expect(catalogue.models.size + catalogue.parts.length).toBe(0);
    expect(problems).toEqual([
      { code: "not-a-list", path: "models" },
      { code: "not-a-list", path: "parts" },
    ]);
  });

  test("is read without throwing whatever JSON it is", () => {
    const rows = fc.array(fc.oneof(fc.jsonValue(), fc.constant(model), fc.constant(part)));
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), fc.record({ models: rows, parts: rows })), (json) => {
        const { catalogue } = parseCatalogue(json);
        for (const each of catalogue.parts)
          for (const code of each.fits) expect(catalogue.models.has(code)).toBe(true);
      }),
    );
  });
});

describe("a model row", () => {
  test.each([
    [null, "models.0"],
    ["WX-1B", "models.0"],
    [{ ...model, code: 5 }, "models.0.code"],
    [{ ...model, code: "" }, "models.0.code"],
    [{ ...model, code: "W".repeat(81) }, "models.0.code"],
    [{ ...model, brand: undefined }, "models.0.brand"],
    [{ ...model, machine: "French Door" }, "models.0.machine"],
  ])("is dropped when it is %j, reported at %s, and its neighbours kept", (row, path) => {
    const { catalogue, problems } = parse([row, { ...model, code: "OK-1" }]);
    expect([...catalogue.models.keys()]).toEqual(["OK-1"]);
    expect(problems).toEqual([{ code: "bad-row", path }]);
  });

  test.each(["🧊", "--", "<b></b>", "W".repeat(60)])(
    "is dropped when nobody could type its code %j",
    (code) => {
      const { catalogue, problems } = parse([{ ...model, code }]);
      expect(catalogue.models.size).toBe(0);
      expect(problems).toEqual([{ code: "unreadable-code", path: "models.0.code", found: code }]);
    },
  );

  test("is dropped when its code was there before", () => {
    const { catalogue, problems } = parse([model, { ...model, brand: "Tarnhoxby" }]);
    expect(catalogue.models.get("WX-1B")?.brand).toBe("Wexmarrow");
    expect(problems).toEqual([{ code: "duplicate-model", path: "models.1.code", found: "WX-1B" }]);
  });

  test("is kept beside its look-alike twin, and beside one with other separators", () => {
    const codes = ["WX-1B", "WX-18", "WX1B"];
    const { catalogue, problems } = parse(codes.map((code) => ({ ...model, code })));
    expect([...catalogue.models.keys()]).toEqual(codes);
    expect(problems).toEqual([]);
  });

  test("may be called __proto__ or constructor without harm", () => {
    const codes = ["__proto__", "constructor", "toString"];
    const json = JSON.parse('{"__proto__": {"polluted": true}, "models": [], "parts": []}');
    json.models = codes.map((code) => ({ ...model, code }));
    json.parts = [{ ...part, number: "__proto__", fits: codes }];
    const { catalogue, problems } = parseCatalogue(json);
    expect(problems).toEqual([]);
    expect([...catalogue.models.keys()]).toEqual(codes);
    expect(catalogue.fitments.get("__proto__")?.map(({ part }) => part.number)).toEqual(["__proto__"]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe("a part row", () => {
  test.each([
    [{ number: "" }, "number"],
    [{ kind: "Ice Bin" }, "kind"],
    [{ kind: "ice--bin" }, "kind"],
    [{ name: 7 }, "name"],
    [{ name: " \u0000 " }, "name"],
    [{ price: "34.99" }, "price"],
    [{ price: { minor: 34.99, currency: "GBP" } }, "price.minor"],
    [{ price: { minor: -1, currency: "GBP" } }, "price.minor"],
    [{ price: { minor: 2 ** 53, currency: "GBP" } }, "price.minor"],
    [{ price: { minor: 3499, currency: "£" } }, "price.currency"],
    [{ stock: "plenty" }, "stock"],
    [{ fits: "WX-1B" }, "fits"],
    [{ origin: "stolen" }, "origin"],
    [{ effortMinutes: "soon" }, "effortMinutes"],
  ])("is dropped when it holds %j, reported at %s, and its neighbours kept", (change, field) => {
    const { catalogue, problems } = parse(
      [model],
      [
        { ...part, ...change },
        { ...part, number: "LLS-2" },
      ],
    );
    expect(catalogue.parts.map(({ number }) => number)).toEqual(["LLS-2"]);
    expect(problems).toEqual([{ code: "bad-row", path: `parts.0.${field}` }]);
  });

  test("has each of its faults reported", () => {
    const { problems } = withPart({ stock: "plenty", price: { minor: "1", currency: 2 } });
    expect(problems.map(({ path }) => path).sort()).toEqual([
      "parts.0.price.currency",
      "parts.0.price.minor",
      "parts.0.stock",
    ]);
  });

  test("takes any kind in kebab case, since the list of kinds is kept elsewhere", () => {
    expect(withPart({ kind: "left-hand-2nd-hinge" }).problems).toEqual([]);
  });

  test("is dropped when its number was there before", () => {
    const { catalogue, problems } = parse([model], [part, { ...part, name: "Another" }]);
    expect(catalogue.parts.map(({ name }) => name)).toEqual(["Ice bin"]);
    expect(problems).toEqual([{ code: "duplicate-part", path: "parts.1.number", found: "LLS-1" }]);
  });

  test("keeps markup in its name as text", () => {
    const name = '<img src=x onerror="alert(1)"> & <script>';
    expect(withPart({ name }).catalogue.parts[0]?.name).toBe(name);
  });

  test("loses control characters, half characters and turned directions from its name", () => {
    const { catalogue } = withPart({ name: "Ice\u0000\tbin\u202E gnp.\uD800 exe\u2066" });
    expect(catalogue.parts[0]?.name).toBe("Ice bin  gnp.  exe");
  });

  test("has a name over 200 characters cut, without half a character at the end, and reported", () => {
    const { catalogue, problems } = withPart({ name: `${"n".repeat(199)}🧊 and more` });
    expect(catalogue.parts[0]?.name).toBe("n".repeat(199));
    expect(problems).toEqual([{ code: "name-cut", path: "parts.0.name", found: "n".repeat(80) }]);
    expect(withPart({ name: "n".repeat(200) }).problems).toEqual([]);
  });

  test("drops keys that nobody asked for", () => {
    expect(withPart({ onclick: "alert(1)" }).catalogue.parts[0]).not.toHaveProperty("onclick");
  });
});

describe("what a part fits", () => {
  test("loses models that the catalogue does not have, each reported", () => {
    const { catalogue, problems } = withPart({ fits: ["WX-1B", "WX-99", 7, null, "🧊"] });
    expect(catalogue.parts[0]?.fits).toEqual(["WX-1B"]);
    expect(problems).toEqual([
      { code: "unknown-model", path: "parts.0.fits.1", found: "WX-99" },
      { code: "bad-fit", path: "parts.0.fits.2" },
      { code: "bad-fit", path: "parts.0.fits.3" },
      { code: "unknown-model", path: "parts.0.fits.4", found: "🧊" },
    ]);
  });

  test("counts once when it is listed twice or in another style", () => {
    const { catalogue } = withPart({ fits: ["WX-1B", "wx1b", "WX 1B"] });
    expect(catalogue.parts[0]?.fits).toEqual(["WX-1B"]);
    expect(catalogue.fitments.get("WX-1B")).toHaveLength(1);
  });

  test("may depend on a serial range or a production variant, and on several of them", () => {
    const { catalogue, problems } = withPart({
      fits: [
        { code: "wx1b", serialFrom: "1000", serialTo: "1999" },
        { code: "WX-1B", serialFrom: "1000", serialTo: "1999" },
        { code: "WX-1B", variant: " B\u202E " },
      ],
    });
    expect(problems).toEqual([]);
    expect(catalogue.fitments.get("WX-1B")?.map(({ when }) => when)).toEqual([
      { serialFrom: "1000", serialTo: "1999" },
      { variant: "B" },
    ]);
  });

  test("is nothing where its condition cannot be read, so that it never becomes a fit without one", () => {
    const { catalogue, problems } = withPart({
      fits: [
        { code: "WX-1B", serialFrom: 1000 },
        { code: "WX-1B", variant: "" },
        { code: "WX-1B", variant: "B".repeat(81) },
      ],
    });
    expect(catalogue.fitments.get("WX-1B")).toEqual([]);
    expect(problems.map(({ code }) => code)).toEqual(["bad-fit", "bad-fit", "bad-fit"]);
  });

  test("is never guessed: neither a look-alike nor one of two models with the same letters", () => {
    expect(withPart({ fits: ["WX-18"] }).catalogue.parts[0]?.fits).toEqual([]);
    const twins = [model, { ...model, code: "W-X1B" }];
    expect(parse(twins, [{ ...part, fits: ["WX1B"] }]).catalogue.parts[0]?.fits).toEqual([]);
    expect(parse(twins, [{ ...part, fits: ["W-X1B"] }]).catalogue.parts[0]?.fits).toEqual(["W-X1B"]);
  });

  test("may be ten thousand odd things", () => {
    const junk = Array.from({ length: 10_000 }, (_, index) => (index % 2 ? index : { index }));
    const { catalogue, problems } = withPart({ fits: [...junk, "WX-1B"] });
    expect(catalogue.parts[0]?.fits).toEqual(["WX-1B"]);
    expect(problems).toHaveLength(10_000);
  });

  test("survives ten thousand rows of which none is a row", () => {
    const junk = Array.from({ length: 10_000 }, (_, index) => (index % 2 ? [index] : null));
    const { catalogue, problems } = parse([...junk, model], [...junk, part]);
    expect(catalogue.fitments.get("WX-1B")).toHaveLength(1);
    expect(new Set(problems.map(({ path }) => path.split(".", 2).join("."))).size).toBe(20_000);
  });
});

test("parts that fit many models are read in steps, too: pauses follow the fitments, not the rows alone", () => {
  const models = Array.from({ length: 400 }, (_, index) => ({
    code: `WXM ${1000 + index}`,
    brand: "Wexmarrow",
    machine: "french-door",
  }));
  const part = {
    number: "P1",
    kind: "ice-bin",
    name: "Bin",
    price: { minor: 100, currency: "GBP" },
    stock: "in-stock",
    fits: models.map(({ code }) => code),
  };
  const pausesOf = (parts: object[]) => {
    const steps = parseInSteps({ models, parts });
    let pauses = 0;
    while (!steps.next().done) pauses += 1;
    return pauses;
  };
  const few = pausesOf([{ ...part, fits: ["WXM 1000"] }]);
  expect(pausesOf([part])).toBeGreaterThanOrEqual(few + 2);
  expect(pausesOf([part, { ...part, number: "P2" }])).toBeGreaterThanOrEqual(few + 4);
});
