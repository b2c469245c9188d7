import { init, parse } from "es-module-lexer";
import { transformWithOxc } from "vite";
import { expect, test } from "vitest";
import { codeOf, readImports } from "./read-imports.ts";
import { sourceFiles } from "./source-files.ts";

const named = (source: string) => readImports(source).map(({ from }) => from);

test.each([
  ["a name", 'import { a } from "./a.ts";', "./a.ts"],
  ["a default", "import a from './a.ts'", "./a.ts"],
  ["everything", 'import * as a from "./a.ts";', "./a.ts"],
  ["a type", 'import type { A } from "./a.ts";', "./a.ts"],
  ["a type among values", 'import { type A, b } from "./a.ts";', "./a.ts"],
  ["over several lines", 'import { \n  a, \n  b, \n } from "./a.ts";', "./a.ts"],
  ["an effect alone", 'import "./a.css";', "./a.css"],
  ["on demand", 'const a = await import("./a.ts");', "./a.ts"],
  ["on demand, over two lines", 'import(\n  "./a.ts",\n)', "./a.ts"],
  ["a type in place", 'type A = import("./a.ts").A;', "./a.ts"],
  ["handed on", 'export { a } from "./a.ts";', "./a.ts"],
  ["handed on whole", 'export * from "./a.ts";', "./a.ts"],
  ["handed on as types", 'export type * from "./a.ts";', "./a.ts"],
  ["handed on as one type", 'export type { A } from "./a.ts";', "./a.ts"],
])("sees a module that is imported: %s", (_, source, from) => {
  expect(named(source)).toEqual([from]);
});

test.each([
  ["in a line comment", '// import { a } from "./a.ts";'],
  ["in a block comment", '/* import "./a.ts" */'],
  ["in a string", "const text = 'import { a } from \"./a.ts\"';"],
  ["in a template", 'const text = `import "./a.ts"`;'],
  ["in nothing but a word", "const important = exportFrom(a);"],
])("sees none that is only written about: %s", (_, source) => {
  expect(named(source)).toEqual([]);
});

test("is not led astray by quotes in patterns, by addresses or by apostrophes", () => {
  const source = [
    "const quotes = text.replace(/[\"'`]/g, '');",
    'const address = "https://example.test/a";',
    "const fine = <p>Don't</p>;",
    'const late = () => import("./late.ts");',
  ].join("\n");
  expect(named(source)).toEqual(["./late.ts"]);
});

test("tells what an import takes", () => {
  expect(readImports('import * as z from "zod/mini";')[0]?.clause).toBe("* as z");
  expect(readImports('import type { A } from "./a.ts";')[0]?.clause).toBe("type { A }");
});

test("leaves only what a program does, without its words and remarks", () => {
  const code = codeOf('// Date.now()\nconst a = "window"; /* fetch */ const b = `document`; run(/fetch/);');
  expect(code).not.toMatch(/Date|window|fetch|document/);
  expect(code).toContain("const a");
});

test("sees in our own sources what es-module-lexer sees, and besides only types", async () => {
  await init;
  const files = sourceFiles("src").filter(({ path }) => /\.tsx?$/.test(path));
  let seen = 0;
  for (const { path, source } of files) {
    const ours = named(source);
    const { code } = path.endsWith(".tsx") ? await transformWithOxc(source, path) : { code: source };
    const theirs = parse(code)[0].flatMap(({ specifier }) => specifier ?? []);
    const missed = theirs.filter((from) => !ours.includes(from) && !from.endsWith("/jsx-runtime"));
    expect(missed.map((from) => `${path} ${from}`)).toEqual([]);
    seen += theirs.length;
    if (path.endsWith(".tsx")) continue;
    // A lexer passes over what only a type names in place, as in `type A = import("./a.ts").A`.
    const more = ours.filter((from) => !theirs.includes(from) && !source.includes(`import("${from}")`));
    expect(more.map((from) => `${path} ${from}`)).toEqual([]);
  }
  expect(seen).toBeGreaterThan(150);
});
