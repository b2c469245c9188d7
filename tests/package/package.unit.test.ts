import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { checkPackage, createPackageFromTarballData } from "@arethetypeswrong/core";
import { publint } from "publint";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { shapes } from "../workbench/shop-feed/same-feeds.ts";
import { type Installed, installPacked } from "./installed.ts";
import { followTenMinutes } from "./ten-minutes.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const page = readFileSync(join(root, "demo/docs/package.md"), "utf8");

let shop: Installed;
// Packing builds everything.
beforeAll(() => {
  shop = installPacked();
}, 300_000);
afterAll(() => shop.remove());

const filesIn = (folder: string): string[] =>
  readdirSync(join(shop.folder, folder), { recursive: true, encoding: "utf8" }).sort();

describe("the packed package", () => {
  test("has nothing to say against it for two tools that check packages", async () => {
    expect((await publint({ pkgDir: shop.package, pack: false, strict: true })).messages).toEqual([]);
    const checked = await checkPackage(createPackageFromTarballData(new Uint8Array(shop.tarball)));
    const kinds = checked.types ? checked.problems.map(({ kind }) => kind) : [];
    // It is made of modules alone, and paths beside the main one are newer than Node 10.
    expect(kinds.filter((each) => !/^(CJSResolvesToESM|NoResolution)$/.test(each))).toEqual([]);
    expect(checked.types).toBeTruthy();
  });

  test("has no tests, no sources and nothing that only a build needs", () => {
    const names = filesIn("node_modules/fridgeside");
    expect(names.filter((name) => /\.tsx?$/.test(name) && !name.endsWith(".d.ts"))).toEqual([]);
    expect(names.filter((name) => /(^|\/)(tests|phrases)(\/|$)|unit\.test|^dist\/\./.test(name))).toEqual([]);
    for (const name of [
      "LICENSE",
      "README.md",
      "flows/limits.yaml",
      "dist/fridgeside.en-GB.js",
      "maps/fridgeside.en-GB.js.map",
    ])
      expect(names).toContain(name);
  });

  test("imports only packages that it names", () => {
    const named = Object.keys(
      JSON.parse(readFileSync(join(shop.package, "package.json"), "utf8")).dependencies,
    );
    const imported = filesIn("node_modules/fridgeside/lib")
      .filter((name) => name.endsWith(".js"))
      .flatMap((name) => {
        const source = readFileSync(join(shop.package, "lib", name), "utf8");
        return [...source.matchAll(/^(?:import|export) .*?from "([^".][^"]*)"|^import "([^".][^"]*)"/gm)];
      })
      .map(([, from, alone]) => (from ?? alone ?? "").split("/")[0] ?? "");
    const foreign = new Set(
      imported.filter((name) => !/^node:/.test(name) && !builtinModules.includes(name)),
    );
    expect([...foreign].filter((name) => !named.includes(name))).toEqual([]);
    expect(foreign.size).toBeGreaterThan(3);
  });

  test("builds what a shop serves out of what it brought, each file with its hash", () => {
    expect(shop.run(["build", "--out", "built", "--maps", "apart"])).toEqual({
      status: 0,
      said: "Built built/fridgeside.js\n",
    });
    const scripts = filesIn("built").filter(
      (name) => name.endsWith(".js") && !/\.[0-9a-f]{8}\.js$|^plate/.test(name),
    );
    expect(filesIn("apart").filter((name) => name.endsWith(".map"))).toEqual(
      scripts.map((name) => `${name}.map`),
    );
    expect(filesIn("built").filter((name) => name.endsWith(".map"))).toEqual([]);
    const hashes = JSON.parse(readFileSync(join(shop.folder, "built/integrity.json"), "utf8"));
    for (const [path, hash] of Object.entries(hashes)) {
      const bytes = readFileSync(join(shop.folder, "built", path));
      expect(hash, path).toBe(`sha384-${createHash("sha384").update(bytes).digest("base64")}`);
    }
    const snippet = readFileSync(join(shop.folder, "built/to-paste.html"), "utf8");
    const [, pinned = "", its] = /src="\S+\/(\S+?)" integrity="(\S+?)"/.exec(snippet) ?? [];
    expect(its).toBe(hashes[pinned]);
    expect(existsSync(join(shop.folder, "built", pinned))).toBe(true);
    const map = JSON.parse(/<script type="importmap">(.*)<\/script>/.exec(snippet)?.[1] ?? "null");
    expect(Object.keys(map.integrity).length).toBe(
      Object.keys(hashes).filter((path) => /^parts\/.*\.js$/.test(path)).length,
    );
  });

  test("plays a session by the command and as a library, and does nothing to a page on a server", () => {
    const { said } = shop.run(["play"], '{"answer":"gas"}\n');
    const [first, stopped] = said
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect([first.turn, stopped.ending.outcome]).toEqual(["opening.danger", "stopped"]);
    const script = `import { loadPanel } from "fridgeside"; import { openPlay } from "fridgeside/play";
      loadPanel("/fridgeside/fridgeside.en-GB.js");
      console.log(openPlay({ scenario: "too-warm" }).first.kind, typeof document);`;
    expect(shop.node(script)).toEqual({ status: 0, said: "choice undefined\n" });
    expect(
      shop.node('import { openPlay } from "fridgeside/play"; openPlay({ locale: "xx" });').said,
    ).toContain('Error: --locale: "xx" has no texts.');
  });

  test("shows every turn in a shop's own rules, with the script that it brought", () => {
    shop.write("shop.css", "fridgeside-panel { --fridgeside-radius: 4px }");
    const { said } = shop.node(`
      const { galleryCommand } = await import("${pathToFileURL(join(shop.package, "lib/cli/gallery-command.js"))}");
      let address;
      await galleryCommand(["--port", "0", "--style", "shop.css"], {
        print: (line) => { [address] = /http\\S+/.exec(line); },
        untilStopped: async () => {
          for (const path of ["", "panel.html", "panel.js", "places.json", "own.css", "../fridgeside.js", "../catalogue.json"]) {
            const { status } = await fetch(new URL(path, address));
            console.log(status);
          }
        },
      });`);
    expect(said.trim().split("\n")).toEqual(Array(7).fill("200"));
  });

  test("understands a shop's own feed and makes a catalogue of it", () => {
    shop.write("own.csv", readFileSync(join(root, "demo/feeds/shop.csv")));
    const looked = shop.run([
      "catalogue",
      "inspect",
      "own.csv",
      "--base",
      "https://larder.example",
      "--write",
      "own-mapping.json",
    ]);
    expect(looked.said).toContain("5 of 8 rows can be used");
    const built = shop.run([
      "catalogue",
      "build",
      "own.csv",
      "--mapping",
      "own-mapping.json",
      "--out",
      "catalogue",
    ]);
    expect(built.status, built.said).toBe(0);
    expect(existsSync(join(shop.folder, "catalogue/catalogue.json"))).toBe(true);
  });

  test("makes the same catalogue of a feed in each of ten shapes", () => {
    const ten = Object.entries(shapes).filter(
      ([shape]) => !/UTF-16 BE|bars|gz|lines of|JSON list$|Latin/.test(shape),
    );
    expect(ten.length).toBeGreaterThanOrEqual(10);
    for (const [at, [, bytes]] of ten.entries()) shop.write(`feeds/${at}`, bytes);
    // In one process: ten of them take longer to start than to build.
    const { status, said } = shop.node(`
      import { catalogueCommand } from "./node_modules/fridgeside/lib/cli/catalogue/index.js";
      for (const at of ${JSON.stringify(ten.map((_, at) => at))}) {
        const code = await catalogueCommand(
          ["build", "feeds/" + at, "--base", "https://x.example", "--out", "out/" + at]);
        console.log("exit " + code);
      }`);
    expect(status, said).toBe(0);
    expect(said.match(/^exit 0$/gm), said).toHaveLength(ten.length);
    expect(said.match(/ 3 parts, 6 fitments/g)).toHaveLength(ten.length);
    // A folder is named by what is in it.
    const folders = ten.map((_, at) => filesIn(`out/${at}`).find((name) => /^c-[0-9a-f]{12}$/.test(name)));
    expect(new Set(folders).size, String(folders)).toBe(1);
  });

  test("tells editors of each attribute and event that there is", () => {
    const { modules } = JSON.parse(readFileSync(join(shop.package, "lib/custom-elements.json"), "utf8"));
    const [declared] = modules[0].declarations;
    const types = readFileSync(join(root, "src/package/tag.ts"), "utf8");
    const typed = /PanelAttributes = {([^}]*)}/.exec(types)?.[1] ?? "";
    const names = [...typed.matchAll(/^ {2}"?([\w-]+)"?\?:/gm)].map(([, name]) => name);
    expect(declared.attributes.map(({ name }: { name: string }) => name).sort()).toEqual(names.sort());
    const told = readFileSync(join(root, "src/insight/events.ts"), "utf8");
    const events = [...told.matchAll(/^ {2}"(fridgeside-[\w-]+)":/gm)].map(([, name]) => name);
    expect(declared.events.map(({ name }: { name: string }) => name).sort()).toEqual(events.sort());
    expect(
      declared.attributes.concat(declared.events).every((each: { description: string }) => each.description),
    ).toBe(true);
  });

  test("leads a newcomer to a page with the shop's own parts by the very commands of the guide", async () => {
    await followTenMinutes(shop);
  }, 240_000);

  test("has types with which each recipe of its page compiles", () => {
    const recipes = [...page.matchAll(/<!-- compiled: (\S+) -->\n```\w+\n([\s\S]*?)```/g)];
    expect(recipes.map(([, name]) => name)).toEqual([
      "plain.ts",
      "react.tsx",
      "vue.ts",
      "svelte.ts",
      "play.ts",
    ]);
    for (const [, name = "", code = ""] of recipes) shop.write(`recipes/${name}`, code);
    for (const name of ["@types/react", "csstype", "vue", "@vue", "svelte", "@types/node", "undici-types"]) {
      const at = join(shop.folder, "node_modules", name);
      mkdirSync(join(at, ".."), { recursive: true });
      if (!existsSync(at)) symlinkSync(join(root, "node_modules", name), at);
    }
    writeFileSync(
      join(shop.folder, "recipes/tsconfig.json"),
      JSON.stringify({
        compilerOptions: {
          ...{
            target: "ES2022",
            module: "NodeNext",
            lib: ["ES2023", "DOM", "DOM.Iterable"],
            jsx: "react-jsx",
          },
          ...{ strict: true, noEmit: true, skipLibCheck: true, types: ["node"] },
        },
        include: ["."],
      }),
    );
    const tsc = join(root, "node_modules/typescript/bin/tsc");
    const compile = () =>
      execFileSync(process.execPath, [tsc, "-p", join(shop.folder, "recipes")], {
        encoding: "utf8",
        stdio: "pipe",
      });
    expect(compile()).toBe("");
    shop.write(
      "recipes/wrong.ts",
      'document.createElement("fridgeside-panel").addEventListener("fridgeside-ended", ({ detail }) => detail.typed);',
    );
    expect(compile).toThrow(/./);
  });
});
