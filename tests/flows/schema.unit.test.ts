import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { fromJSONSchema } from "zod";
import { createSchemas, schemaFolder, schemaLine, schemaText } from "../../src/cli/schema-command.ts";
import { fileKind } from "../../src/guide/index.ts";
import { ownFlows, readFlow, readYamlFiles } from "../../src/workbench/build/flows-folder.ts";

const files = Object.entries(readYamlFiles(ownFlows));
const schemas = createSchemas();
const readData = (path: string) => parse(readFileSync(join(ownFlows, path), "utf8"));

/** A validator made from the written schema, so that it is the JSON that is tried and not what it came from. */
const validator = (kind: string) =>
  fromJSONSchema(JSON.parse(readFileSync(join(schemaFolder, `${kind}.json`), "utf8")));

describe("the JSON Schemas beside the flows", () => {
  test("are those that the code makes: else run `npx tsx src/cli/main.ts schemas`", () => {
    const written = readdirSync(schemaFolder).sort();
    expect(written).toEqual(
      Object.keys(schemas)
        .map((kind) => `${kind}.json`)
        .sort(),
    );
    for (const [kind, schema] of Object.entries(schemas))
      expect(readFileSync(join(schemaFolder, `${kind}.json`), "utf8")).toBe(schemaText(schema));
  });

  test("say nothing else than the schema they are written from", () => {
    for (const schema of Object.values(schemas)) expect(JSON.parse(schemaText(schema))).toEqual(schema);
  });

  test("declare the draft they are in", () => {
    for (const schema of Object.values(schemas))
      expect(schema).toMatchObject({ $schema: "http://json-schema.org/draft-07/schema#" });
  });

  test.each(files.map(([path]) => path))("take flows/%s as it is", (path) => {
    const kind = fileKind(path);
    expect(kind).not.toBeNull();
    expect(validator(kind ?? "").safeParse(readData(path)).error).toBeUndefined();
  });

  test.each<[slip: string, path: string, spoil: (data: Record<string, object>) => void]>([
    ["a word that no file has", "checks/reset.yaml", (data) => Object.assign(data, { colour: "red" })],
    ["a missing station", "checks/reset.yaml", (data) => delete data.station],
    ["minutes in words", "checks/reset.yaml", (data) => Object.assign(data, { minutes: "eight" })],
    ["an id with a capital", "checks/reset.yaml", (data) => Object.assign(data, { id: "Reset" })],
    [
      "an answer that leads nowhere",
      "opening.yaml",
      (data) => Object.assign(data.turns ?? {}, { changed: { answers: { x: {} } } }),
    ],
    ["an invented condition", "conditions.yaml", (data) => Object.assign(data, { odd: { eval: "1 + 1" } })],
    [
      "a limit without a source",
      "limits.yaml",
      (data) => Object.assign(data, { odd: { value: 1, unit: "s", confidence: "P" } }),
    ],
    [
      "a signal word of our own",
      "gates.yaml",
      (data) => Object.assign(data.hazards ?? {}, { odd: { signal: "beware", gate: "none" } }),
    ],
  ])("refuse %s", (_, path, spoil) => {
    const data = readData(path);
    spoil(data);
    expect(validator(fileKind(path) ?? "").safeParse(data).success).toBe(false);
  });
});

describe("a file of the flows", () => {
  test.each(files)("%s names its schema in its first line, so that an editor finds it", (path, text) => {
    const kind = fileKind(path);
    if (!kind) throw new Error(`flows/${path} is no file that a flow has`);
    const line = schemaLine(path, kind);
    expect(text.split("\n")[0]).toBe(line);
    const named = line.replace(/^.*\$schema=/, "");
    expect(join(ownFlows, path, "..", named)).toBe(join(schemaFolder, `${kind}.json`));
  });

  test("has the id that its name says", () => {
    const flow = readFlow();
    const named = Object.entries({ ...flow.checks, ...flow.scenarios });
    expect(named.map(([, { id }]) => id)).toEqual(named.map(([name]) => name));
    expect(named.length).toBeGreaterThan(60);
  });
});
