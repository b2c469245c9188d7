import { Writable } from "node:stream";
import { parse } from "csv-parse/sync";
import { describe, expect, test, vi } from "vitest";
import {
  columns,
  createDemoFeed,
  type DemoFeed,
  demoCodes,
  demoFeedCommand,
} from "../../demo/generate/feed/index.ts";
import { foldCode, isOneSlip } from "../../src/catalogue/index.ts";
import { keyOf } from "../catalogue/slips.ts";
import { ownFlow } from "../own-flow.ts";

type Row = Record<string, string>;

const { parts: kindsOfParts } = ownFlow;
const minutes = Object.fromEntries(Object.entries(kindsOfParts).map(([kind, each]) => [kind, each.minutes]));
const textOf = (feed: Partial<DemoFeed>) =>
  [...createDemoFeed({ models: 6000, seed: 7, minutes, ...feed })].join("");
// csv-parse knows RFC 4180 by itself: it refuses rows of another length and quotes where none may stand.
const read = (text: string): Row[] => parse(text, { columns: true });

const rows = read(textOf({}));
function grouped<Item>(items: Iterable<Item>, nameOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(nameOf(item));
    if (group) group.push(item);
    else groups.set(nameOf(item), [item]);
  }
  return groups;
}
const by = (column: string) => grouped(rows, (row) => row[column] ?? "");
const models = by("model");
const parts = new Map([...by("number")].map(([number, [row]]) => [number, row as Row]));
const keys = [...models.keys()].map(keyOf);
const share = (of: readonly Row[], is: (row: Row) => unknown) => of.filter(is).length / of.length;

const isWithin = (least: number, most: number) => (number: number) => number >= least && number <= most;

describe("a demo feed", () => {
  test("has the named columns in every row, and nothing that a CSV parser stumbles over", () => {
    expect(Object.keys(rows[0] ?? {})).toEqual(columns);
    expect(models.size).toBe(6000);
    expect(rows.length).toBeGreaterThan(8 * 6000);
    for (const { price, minutes: time, kind = "" } of rows) {
      expect(price).toMatch(/^\d+\.\d\d$/);
      expect(Number(time)).toBe(minutes[kind]);
    }
  });

  test("has names with commas and with quotes", () => {
    expect(rows.some(({ name }) => name?.includes(","))).toBe(true);
    expect(rows.some(({ name }) => name?.includes('"'))).toBe(true);
  });

  test("is byte for byte the same for the same seed and size, and another for another seed", () => {
    expect(textOf({ models: 500 })).toBe(textOf({ models: 500 }));
    expect(textOf({ models: 500 })).not.toBe(textOf({ models: 500, seed: 8 }));
  });

  test("says the same as JSON lines", () => {
    const lines = textOf({ models: 500, jsonLines: true }).trim().split("\n");
    const filled = (row: Row) => Object.fromEntries(Object.entries(row).filter(([, cell]) => cell));
    expect(lines.map((line) => JSON.parse(line))).toEqual(read(textOf({ models: 500 })).map(filled));
  });

  test("has as many models as asked for, be it one", () => {
    for (const count of [1, 24, 300])
      expect(new Set(read(textOf({ models: count })).map(({ model }) => model)).size).toBe(count);
  });

  test("has eight kinds of part for each model, those of its water", () => {
    for (const of of models.values()) {
      const kinds = new Set(of.map(({ kind = "" }) => kind));
      expect(kinds.size).toBe(8);
      const isTankFed = of[0]?.["machine"] === "tank-fed";
      expect(kinds.has("water-tank")).toBe(isTankFed);
      expect(kinds.has("water-filter")).toBe(!isTankFed);
      for (const kind of kinds) expect(Object.keys(kindsOfParts)).toContain(kind);
    }
  });

  test("has the codes that can be had without it, in the same order", () => {
    expect([...demoCodes({ models: 6000, seed: 7 })]).toEqual([...models.keys()]);
  });

  test("has several makers, none of them with most of the models", () => {
    const sizes = [...by("brand").values()].map((of) => of.length);
    expect(sizes.length).toBeGreaterThan(5);
    expect(Math.max(...sizes) / rows.length).toBeLessThan(0.25);
  });

  test("shares parts within families of 20 to 25 models", () => {
    const sizes = [...by("number").values()].map((of) => new Set(of.map(({ model }) => model)).size);
    // The last family is cut off where there are enough models.
    expect(sizes.filter((size) => size < 20).length).toBeLessThan(20);
    expect(Math.max(...sizes)).toBe(25);
  });
});

describe("the shares of a demo feed", () => {
  const all = [...parts.values()];

  test("are 5 % of compatible parts beside another, 2 % superseded, 8 % out of stock", () => {
    expect(share(all, ({ origin }) => origin === "compatible")).toSatisfy(isWithin(0.04, 0.06));
    expect(share(all, (row) => row["replaced-by"])).toSatisfy(isWithin(0.015, 0.025));
    expect(share(all, ({ stock }) => stock === "out-of-stock")).toSatisfy(isWithin(0.07, 0.09));
  });

  test("are 3 % of fitments on a condition, by serial and by variant", () => {
    expect(share(rows, (row) => row["variant"] || row["serial-from"] || row["serial-to"])).toSatisfy(
      isWithin(0.022, 0.038),
    );
    expect(rows.some((row) => row["variant"])).toBe(true);
    expect(rows.some((row) => row["serial-from"])).toBe(true);
  });

  test("leave no machine between two serial ranges without a part", () => {
    for (const of of models.values()) {
      const lasts = of.flatMap((row) => Number(row["serial-to"]) || []);
      const firsts = of.flatMap((row) => Number(row["serial-from"]) || []);
      expect(firsts.sort()).toEqual(lasts.map((last) => last + 1).sort());
    }
  });

  test("have chains of one to three older parts, each naming the next and named by it", () => {
    const lengths = new Set<number>();
    for (const first of all.filter((row) => row["replaced-by"] && !row["replaces"])) {
      let [length, at] = [0, first];
      for (let next = parts.get(at["replaced-by"] ?? ""); next; next = parts.get(at["replaced-by"] ?? "")) {
        expect(next["replaces"]).toBe(at["number"]);
        at = next;
        length++;
      }
      lengths.add(length);
    }
    expect([...lengths].sort()).toEqual([1, 2, 3]);
  });
});

describe("the codes of a demo feed", () => {
  test("are distinct without their separators, numbered through or not", () => {
    expect(new Set(keys).size).toBe(keys.length);
    const dense = new Set(read(textOf({ dense: true })).map(({ model = "" }) => keyOf(model)));
    expect(dense.size).toBe(6000);
  });

  test("have about 7 to 15 letters and digits, and separators as on plates", () => {
    for (const key of keys) expect(key).toMatch(/^[A-Z0-9]{7,15}$/);
    for (const mark of [" ", "-", "/", "."])
      expect([...models.keys()].some((code) => code.includes(mark))).toBe(true);
    expect([...models.keys()].some((code) => /[/-](EU|UK)$/.test(code))).toBe(true);
  });

  test("are mostly a full edit apart, but for twins that look alike and take other parts", () => {
    const alike = [...grouped(models.keys(), (code) => foldCode(keyOf(code))).values()];
    const twins = alike.filter((codes) => codes.length > 1);
    expect(twins.length).toBeGreaterThan(20);
    expect(twins.length / keys.length).toBeLessThan(0.04);
    for (const [one = "", other = ""] of twins)
      expect(models.get(one)?.[0]?.["number"]).not.toBe(models.get(other)?.[0]?.["number"]);
    const some = keys.filter((_, at) => at % 40 === 0);
    const crowded = some.filter((key) => keys.some((other) => isOneSlip(foldCode(key), foldCode(other))));
    expect(crowded.length / some.length).toBeLessThan(0.1);
  });

  test("are one digit apart where they are numbered through", () => {
    const dense = [
      ...new Set(read(textOf({ models: 600, dense: true })).map(({ model = "" }) => keyOf(model))),
    ];
    const crowded = dense.filter((key) => dense.some((other) => isOneSlip(key, other)));
    expect(crowded.length / dense.length).toBeGreaterThan(0.9);
  });
});

describe("npm run demo-feed", () => {
  async function run(...args: string[]) {
    let text = "";
    const out = new Writable({
      write(chunk, _, done) {
        text += chunk;
        done();
      },
    });
    return { code: await demoFeedCommand(args, out), text };
  }

  test("prints the feed of its options", async () => {
    expect(await run("--models", "50", "--seed", "3")).toEqual({
      code: 0,
      text: textOf({ models: 50, seed: 3 }),
    });
    expect((await run("--models", "50", "--jsonl", "--dense")).text).toBe(
      textOf({ models: 50, jsonLines: true, dense: true }),
    );
  });

  test("waits for a slow reader instead of holding all that is left", async () => {
    let most = 0;
    const slow = new Writable({
      write(_, __, done) {
        most = Math.max(most, slow.writableLength);
        setImmediate(done);
      },
    });
    expect(await demoFeedCommand(["--models", "6000"], slow)).toBe(0);
    expect(most).toBeLessThan(2_000_000);
    expect(textOf({}).length).toBeGreaterThan(10_000_000);
  });

  test("takes a reader that has had enough for no mistake", async () => {
    const closing = new Writable({
      write(_, __, done) {
        done(Object.assign(new Error("write EPIPE"), { code: "EPIPE" }));
      },
    });
    expect(await demoFeedCommand(["--models", "6000"], closing)).toBe(0);
  });

  test.each([
    ["--models", "0"],
    ["--models", "many"],
    ["--seed", "-1"],
  ])("says what is wrong with %s %s", async (...args) => {
    const said = vi.spyOn(console, "error").mockReturnValue();
    expect(await run(...(args[1].startsWith("-") ? [`${args[0]}=${args[1]}`] : args))).toEqual({
      code: 2,
      text: "",
    });
    expect(said.mock.calls.flat().join()).toContain(args[0]);
    said.mockRestore();
  });
});
