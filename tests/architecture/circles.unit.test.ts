import { describe, expect, test } from "vitest";
import { findCircles } from "./circles.ts";
import { sourceFiles } from "./source-files.ts";

const scripts = sourceFiles("src").filter(({ path }) => /\.tsx?$/.test(path));

describe("files", () => {
  test("import each other in no circle: each can be read after those that it imports", () => {
    expect(scripts.length).toBeGreaterThan(50);
    expect(findCircles(scripts)).toEqual([]);
  });

  test.each([
    ["a value", 'import { b } from "./b.ts";'],
    ["a type", 'import type { B } from "./b.ts";'],
    ["a type in place", 'type B = import("./b.ts").B;'],
    ["what is passed on", 'export * from "./b.ts";'],
    ["what is loaded later", 'const b = await import("./b.ts");'],
  ])("that import %s round a circle are found", (_, source) => {
    const files = [
      { path: "src/a.ts", source },
      { path: "src/b.ts", source: 'import "./folder/c.ts";' },
      { path: "src/folder/c.ts", source: 'import "../a.ts";' },
      { path: "src/d.ts", source: 'import "./a.ts"; import "preact";' },
    ];
    expect(findCircles(files)).toEqual([["src/a.ts", "src/b.ts", "src/folder/c.ts"]]);
  });

  test("that import themselves are found", () => {
    expect(findCircles([{ path: "src/a.ts", source: 'import "./a.ts";' }])).toEqual([["src/a.ts"]]);
  });

  test("that two others import form no circle", () => {
    const files = [
      { path: "src/a.ts", source: 'import "./b.ts"; import "./c.ts";' },
      { path: "src/b.ts", source: 'import "./d.ts";' },
      { path: "src/c.ts", source: 'import "./d.ts"; import "./b.ts";' },
      { path: "src/d.ts", source: "" },
    ];
    expect(findCircles(files)).toEqual([]);
  });
});
