import { posix } from "node:path";
import { describe, expect, test } from "vitest";
import { arrows, pure } from "./architecture/arrows.ts";
import { findForbiddenImports, findImpurities } from "./architecture/find-forbidden.ts";
import { codeOf, readImports } from "./architecture/read-imports.ts";
import { pathsBelow, readSource, sourceFiles, topEntries } from "./architecture/source-files.ts";

/** Tests of an instrument lie beside it, and may use whatever a test may. */
const isScript = ({ path }: { path: string }) => /(?<!\.unit\.test)\.tsx?$/.test(path);
const src = sourceFiles("src").filter(isScript);
const forbidden = (path: string, source: string) => findForbiddenImports({ path, source });

describe("imports", () => {
  test("follow the arrows of the design and enter a folder by its door", () => {
    expect(src.flatMap(findForbiddenImports)).toEqual([]);
  });

  test("have arrows that form no circle: each part can be read before those that use it", () => {
    const above = (part: string): string[] => (arrows[part]?.to ?? []).flatMap((one) => [one, ...above(one)]);
    for (const part of Object.keys(arrows)) expect(above(part)).not.toContain(part);
  });

  test("never reach the embed or the command line: those are ends", () => {
    const reached = Object.values(arrows).flatMap(({ to }) => to);
    expect(reached).not.toContain("embed");
    expect(reached).not.toContain("cli");
  });

  test.each([
    ["measuring", "src/measuring/flow.ts", 'import { a } from "../chart/index.ts";'],
    [
      "the types of a session, from the flow",
      "src/chart/memory.ts",
      'import type { Log } from "../session/index.ts";',
    ],
    [
      "a chart, from a screen",
      "src/panel/frame/panel.tsx",
      'import { createChart } from "../../chart/index.ts";',
    ],
    [
      "the catalogue, from a screen",
      "src/panel/screens/x.tsx",
      'type A = import("../../catalogue/index.ts").Part;',
    ],
    [
      "a screen, from the command line",
      "src/cli/play.ts",
      'import { Panel } from "../panel/frame/index.ts";',
    ],
    [
      "what composes flows, from the embed: that is done by the build",
      "src/embed/engine.ts",
      'import { compileFlow } from "../compile/index.ts";',
    ],
    ["the command line, from the embed", "src/embed/engine.ts", 'const a = await import("../cli/play.ts");'],
    [
      "a session, from the relay",
      "src/cobrowse/relay/relay.ts",
      'import { a } from "../../session/index.ts";',
    ],
    [
      "what the relay decides, from a phone",
      "src/cobrowse/client/client.ts",
      'import { judge } from "../protocol/room/index.ts";',
    ],
    ["xstate, from a screen", "src/panel/frame/panel.tsx", 'import { createActor } from "xstate";'],
    ["xstate's tools, from the diagnosis", "src/diagnosis/belief.ts", 'import { a } from "xstate/graph";'],
    ["preact, from a turn", "src/turn/view.ts", 'import type { VNode } from "preact";'],
    ["hooks, from the flow", "src/chart/memory.ts", 'import { useState } from "preact/hooks";'],
    ["the file system, from the flow", "src/guide/schema.ts", 'import { readFileSync } from "node:fs";'],
    ["the file system, from the embed", "src/embed/engine.ts", 'import "node:fs";'],
    ["all of zod", "src/session/log.ts", 'import * as z from "zod";'],
    ["zod by its names", "src/session/log.ts", 'import { z } from "zod/mini";'],
    ["a package that nobody decided on", "src/session/log.ts", 'import { format } from "date-fns";'],
    ["past a door", "src/session/log.ts", 'import { holds } from "../chart/guards.ts";'],
    ["past an inner door", "src/cli/main.ts", 'import { findUngated } from "../workbench/verify/gates.ts";'],
    [
      "past a sibling's door",
      "src/panel/screens/gate/gate.tsx",
      'export { Panel } from "../../frame/panel.tsx";',
    ],
    ["a flow file, from a pure part", "src/chart/memory.ts", 'import limits from "../../flows/limits.yaml";'],
    ["the demo, from the command line", "src/cli/main.ts", 'import("../../demo/generate/shards.ts");'],
    ["no ending", "src/chart/memory.ts", 'import { composeChart } from "./compose";'],
    ["a folder that the design does not have", "src/helpers/index.ts", ""],
  ])("that are planted are found: %s", (_, path, source) => {
    const [found = "", ...others] = forbidden(path, source);
    expect(found.startsWith(path)).toBe(true);
    expect(others).toEqual([]);
    // Each rule says why, so that nobody has to ask.
    expect(found.split(": ").at(-1)?.length).toBeGreaterThan(20);
  });

  test.each([
    ["src/workbench/verify/gates.ts", 'import { composeChart } from "../../compile/index.ts";'],
    ["src/cli/main.ts", 'import { verifyChart } from "../workbench/verify/index.ts";'],
    ["src/turn/turn.ts", 'export type Need = import("../measuring/index.ts").Band;'],
    ["src/session/log.ts", 'import * as z from "zod/mini";'],
    ["src/workbench/verify/shape.ts", 'import type * as z from "zod/mini";'],
    ["src/panel/screens/gate/gate.tsx", 'import sheet from "./gate.css?inline";'],
    ["src/workbench/build/build.ts", 'import { readFileSync } from "node:fs";'],
  ])("that are allowed are left alone: %s", (path, source) => {
    expect(forbidden(path, source)).toEqual([]);
  });
});

describe("the shape of a reading", () => {
  const shapes = /^src\/instruments\/(readings|shape-parts|[\w-]+\/reading)\.ts$/;
  const loads = ({ path, source }: { path: string; source: string }) =>
    readImports(source)
      .filter(({ clause }) => !clause.startsWith("type "))
      .some(({ from }) => shapes.test(posix.join(posix.dirname(path), from)));

  test("is loaded where a log comes in, and else known as a type alone, so that no chart brings zod along", () => {
    const loading = src.filter((file) => !shapes.test(file.path) && loads(file)).map(({ path }) => path);
    expect(loading).toEqual(["src/session/shapes.ts"]);
    const parsing = src.filter(
      ({ path, source }) => path.startsWith("src/instruments/") && source.includes('"zod'),
    );
    expect(parsing.map(({ path }) => path).filter((path) => !shapes.test(path))).toEqual([]);
  });
});

describe("a pure part", () => {
  test("touches no clock, chance, timer, page, network or storage", () => {
    expect(src.flatMap(findImpurities)).toEqual([]);
    expect(pure).toEqual(
      expect.arrayContaining(["measuring", "diagnosis", "catalogue", "chart", "session", "turn"]),
    );
  });

  test.each([
    "const at = Date.now();",
    "const at = new Date();",
    "const at = new Date( );",
    "const at = new Date;",
    "const hour = new Date(from).getHours();",
    "const luck = Math.random();",
    "setTimeout(tick, 1000);",
    "const wide = window.innerWidth;",
    "document.title = a;",
    "await fetch(address);",
    "localStorage.clear();",
    "console.log(a);",
  ])("that does is found: %s", (source) => {
    expect(findImpurities({ path: "src/session/log.ts", source })).toHaveLength(1);
    expect(findImpurities({ path: "src/embed/clock.ts", source })).toEqual([]);
  });

  test.each([
    "const until = new Date(Date.parse(from) + lasts).toISOString();",
    "// the document of a window, fetched with Math.random()",
    'const text = "open a window";',
  ])("that does not is left alone: %s", (source) => {
    expect(findImpurities({ path: "src/session/log.ts", source })).toEqual([]);
  });
});

describe("Node", () => {
  test("is known to the command line, the package, the relay, the tests, the tools and the demo's generators, and to nobody else", () => {
    const users = ["src", "demo"].flatMap(sourceFiles).filter(isScript);
    const named = users.filter(({ source }) =>
      readImports(source).some(({ from }) => from.startsWith("node:")),
    );
    expect(
      named
        .map(({ path }) => path)
        .filter(
          (path) => !/^(src\/(cli|package|workbench|cobrowse\/relay)|demo\/(generate|serve))\//.test(path),
        ),
    ).toEqual([]);
  });
});

const folders = ["src", "tests", "flows", "locales", "demo"];
const paths = folders.flatMap(pathsBelow);
const languageTag = /^[a-z]{2,3}(-[A-Z][a-z]{3})?(-[A-Z]{2})?$/;

const linesOf = (source: string) => source.replace(/\n$/, "").split("\n").length;

describe("a file", () => {
  const kebab = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$/;

  test("has a name in kebab case, whichever letters a machine tells apart", () => {
    const odd = paths.filter((path) => {
      const names = path.split("/");
      const tag = names.indexOf("locales") + 1;
      if (/^flows\/regions\/[A-Z]{2}\.yaml$/.test(path)) names.pop();
      if (tag && languageTag.test(names[tag] ?? "")) names.splice(tag, 1);
      return !names.every((name) => kebab.test(name) || name === "PROTOCOL.md");
    });
    expect(odd).toEqual([]);
  });

  const isTest = (path: string) => /\.test\.tsx?$/.test(path);

  test("has 250 lines at most in src, and 400 elsewhere and in tests: a longer one holds two ideas", () => {
    const files = [...folders, ".config"].flatMap(sourceFiles);
    const mostOf = (path: string) => (path.startsWith("src/") && !isTest(path) ? 250 : 400);
    expect(files.some(({ path }) => mostOf(path) === 250)).toBe(true);
    // A list of sentences, a line each, is one idea however long.
    const isOfSentences = (path: string) =>
      /^(locales\/[\w-]+\/phrases|tests\/understanding\/unseen)\//.test(path);
    const long = files.filter(({ path, source }) => !isOfSentences(path) && linesOf(source) > mostOf(path));
    expect(long.map(({ path }) => path)).toEqual([]);
  });

  test("of src has 70 lines at most in the median", () => {
    const lengths = src
      .filter(({ path }) => !isTest(path))
      .map(({ source }) => linesOf(source))
      .sort((a, b) => a - b);
    expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThanOrEqual(70);
  });

  test("and its folder are named after an idea, and not after there being no better place", () => {
    const drawers = /^(core|utils?|common|helpers?|types|misc|shared|lib)$/;
    const named = paths.filter((path) =>
      path.split("/").some((name) => drawers.test(name.replace(/\..*$/, ""))),
    );
    expect(named).toEqual([]);
  });
});

describe("a path of this repository", () => {
  const asPath = /new URL\([^()]*\bimport\.meta\.url\s*,?\s*\)\s*\.pathname/;

  test("is made from an address by fileURLToPath: in a pathname a space or an umlaut is not itself", () => {
    const found = ["src", "tests", "demo", ".config"].flatMap(sourceFiles);
    expect(found.filter(({ source }) => asPath.test(source)).map(({ path }) => path)).toEqual([]);
    expect(found.some(({ source }) => source.includes("fileURLToPath(new URL("))).toBe(true);
  });

  test.each([
    'const root = new URL("../", import.meta.url)%;',
    "const root = new URL(\n  name,\n  import.meta.url,\n)%;",
    "const own = (name) => new URL(`a/$` + name, import.meta.url)%;",
  ])("that is not is found: %s", (source) => {
    expect(asPath.test(source.replace("%", ".pathname"))).toBe(true);
  });
});

describe("the top of the repository", () => {
  test("holds what everybody looks for, and nothing else", () => {
    const files = [
      "package.json",
      "package-lock.json",
      "tsconfig.json",
      "README.md",
      "DEVELOPERS.md",
      "LICENSE",
    ];
    const strange = topEntries().filter((name) => ![...files, ...folders].includes(name));
    expect(strange).toEqual([]);
  });

  test("has a lockfile without download addresses, which differ from place to place", () => {
    expect(readSource("package-lock.json")).not.toMatch(/"resolved":\s*"https?:/);
  });

  test("has a package file that asks for what the sources import, and for nothing they do not", () => {
    const { dependencies } = JSON.parse(readSource("package.json"));
    const used = src
      .flatMap(({ source }) => readImports(source))
      .map(({ from }) => from.replace(/\/.*$/, ""));
    const packages = new Set(used.filter((from) => from && !from.startsWith(".") && !from.includes(":")));
    // The package has the built script with it: who installs it never bundles, and tests nothing.
    for (const name of ["vite", "vitest", "magic-string", "@jridgewell"]) packages.delete(name);
    expect([...packages].sort()).toEqual(Object.keys(dependencies).sort());
  });
});

test("the sources are read at all: these rules would pass over an empty folder", () => {
  expect(src.length).toBeGreaterThan(50);
  expect(src.every(({ source }) => codeOf(source).trim() || source.includes("import"))).toBe(true);
});
