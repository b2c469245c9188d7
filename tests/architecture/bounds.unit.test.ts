import { describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { boundRows } from "../bench/bounds.ts";
import { sourceFiles } from "./source-files.ts";
import { findUnbounded } from "./unbounded.ts";

/** What a schema leaves open on purpose, and who bounds it instead. */
const boundedElsewhere: Record<string, string> = {
  "src/catalogue/schema.ts partRow/link (anything)": "safeLink takes a text of bounded length, or nothing",
  "src/catalogue/schema.ts partRow/picture (anything)": "safeLink takes a text of bounded length, or nothing",
  "src/catalogue/schema.ts partRow/fits/[] (anything)":
    "each entry is read by fitRow, so that one may be bad",
};

const isSchema = (value: unknown): value is z.ZodMiniType =>
  typeof value === "object" && value !== null && "_zod" in value;

const doors = sourceFiles("src").filter(({ source }) => /^import \* as z from "zod/m.test(source));

/** Every schema that a file exports, those in a table of schemas too. */
async function schemasOf(path: string): Promise<[name: string, schema: z.ZodMiniType][]> {
  const exported: Record<string, unknown> = await import(/* @vite-ignore */ `../../${path}`);
  return Object.entries(exported).flatMap(([name, value]) => {
    if (isSchema(value)) return [[name, value] as [string, z.ZodMiniType]];
    const table = typeof value === "object" && value !== null ? Object.entries(value) : [];
    return table.flatMap(([key, one]) =>
      isSchema(one) ? [[`${name}.${key}`, one] as [string, z.ZodMiniType]] : [],
    );
  });
}

describe("whatever comes from outside", () => {
  test("has a bound on every text, list, set of keys and number", async () => {
    const open: string[] = [];
    for (const { path } of doors)
      for (const [name, schema] of await schemasOf(path))
        open.push(...findUnbounded(schema).map((place) => `${path} ${name}${place}`));
    expect([...new Set(open)].sort()).toEqual(Object.keys(boundedElsewhere).sort());
  });

  test("is parsed by schemas that a file exports, so that none escapes the test above", async () => {
    for (const { path, source } of doors) {
      const names = (await schemasOf(path)).map(([name]) => name.split(".")[0]);
      // The one function that reads rows is handed its schema.
      for (const [, name] of source.matchAll(/\b(\w+)(?:\[\w+\])?\s*\.(?:safeParse|parse)\(/g))
        if (name !== "schema" && name !== "JSON" && name !== "Date") expect(names, path).toContain(name);
    }
  });
});

test.each<[what: string, schema: z.ZodMiniType, place: string]>([
  ["a text", z.object({ name: z.string() }), "/name (text)"],
  ["a text that only has a form", z.object({ name: z.string().check(z.regex(/^a+$/)) }), "/name (text)"],
  ["a list", z.object({ runs: z.array(z.boolean()) }), "/runs (list)"],
  ["a list in a choice", z.union([z.null(), z.array(z.boolean())]), " (list)"],
  ["a set of keys", z.object({ by: z.record(z.string().check(z.maxLength(3)), z.boolean()) }), "/by (keys)"],
  ["a number", z.object({ value: z.optional(z.number()) }), "/value (number)"],
  ["anything", z.object({ more: z.unknown() }), "/more (anything)"],
])("%s without a bound would be found", (_, schema, place) => {
  expect(findUnbounded(schema)).toEqual([place]);
});

test("every bound has a number that is finite, and says what it is", () => {
  for (const [, name, most, why] of boundRows()) {
    expect(Number.isFinite(most), name).toBe(true);
    expect(why, name).toMatch(/\w{3}/);
  }
});
