import { describe, expect, test } from "vitest";
import { fileKind, fileSchemas } from "../../src/guide/index.ts";
import { ownFlow } from "../own-flow.ts";

describe("a file in flows/", () => {
  test.each([
    ["limits.yaml", "limits"],
    ["opening.yaml", "opening"],
    ["checks/reset.yaml", "check"],
    ["scenarios/no-ice-plumbed.yaml", "scenario"],
    ["regions/GB.yaml", "region"],
  ])("%s is of the kind %s", (path, kind) => {
    expect(fileKind(path)).toBe(kind);
  });

  test.each([
    "check.yaml",
    "scenario.yaml",
    "region.yaml",
    "regions/gb.yaml",
    "checks/water/flow-test.yaml",
    "notes.yaml",
    "constructor.yaml",
    "checks/reset.json",
    "",
  ])("%j is none that a flow has", (path) => {
    expect(fileKind(path)).toBeNull();
  });

  test("is refused with a word that nobody reads: a misspelt 'gates' would guard nothing", () => {
    const check = ownFlow.checks["fill-tube"];
    expect(fileSchemas.check.safeParse(check).success).toBe(true);
    expect(fileSchemas.check.safeParse({ ...check, gate: ["back-panel"] }).success).toBe(false);
  });

  test("may nest its conditions as deep as it likes, with words of the vocabulary alone", () => {
    const { conditions } = fileSchemas;
    const deep = { any: [{ not: { all: ["unwaited", { found: ["bin-full"] }] } }, { is: "flow-low" }] };
    expect(conditions.safeParse({ odd: deep }).success).toBe(true);
    expect(conditions.safeParse({ odd: { any: [{ not: { or: [] } }] } }).success).toBe(false);
    expect(conditions.safeParse({ odd: "flow-low" }).success).toBe(false);
  });
});
