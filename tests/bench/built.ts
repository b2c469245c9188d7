import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { init, parse } from "es-module-lexer";
import { build as viteBuild } from "vite";
import { bundleEmbed } from "../../src/workbench/build/build.ts";

/** Built files by address, as they would lie on a shop's server. */
export type Files = Map<string, Buffer>;

/** How many bytes one file is, as it lies and as it travels. */
export type Size = { raw: number; gzip: number; brotli: number };

/** Builds what a shop embeds, in memory. */
export async function buildOurs(): Promise<Files> {
  return new Map((await bundleEmbed()).map(({ path, content }) => [path, Buffer.from(content)]));
}

/** Builds the floor page's script in the same manner. */
export function buildFloor(): Promise<Files> {
  return buildInto((out) =>
    viteBuild({
      configFile: false,
      root: fileURLToPath(new URL("floor/", import.meta.url)),
      logLevel: "warn",
      publicDir: false,
      oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
      build: {
        outDir: out,
        emptyOutDir: true,
        target: "es2022",
        lib: {
          entry: { floor: fileURLToPath(new URL("floor/floor.tsx", import.meta.url)) },
          formats: ["es"],
        },
        rolldownOptions: { output: { minify: true, entryFileNames: "[name].js" } },
      },
    }),
  );
}

async function buildInto(build: (out: string) => Promise<unknown>): Promise<Files> {
  const out = mkdtempSync(join(tmpdir(), "fridgeside-"));
  try {
    await build(out);
    const names = readdirSync(out, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
    return new Map(
      names.map(({ parentPath, name }) => {
        const path = join(parentPath, name);
        return [path.slice(out.length + 1), readFileSync(path)];
      }),
    );
  } finally {
    rmSync(out, { recursive: true });
  }
}

/** One file's bytes; gzip and brotli at their best, as a shop's server has them ready. */
export function sizeOf(content: Buffer): Size {
  return {
    raw: content.length,
    gzip: gzipSync(content, { level: 9 }).length,
    brotli: brotliCompressSync(content).length,
  };
}

export const isScript = (name: string) => name.endsWith(".js");

/** What a script imports: `now` before it can run, `later` when it chooses to. */
export async function importsOf(script: Buffer): Promise<{ now: string[]; later: string[] }> {
  await init;
  const [found] = parse(script.toString());
  const imports: { now: string[]; later: string[] } = { now: [], later: [] };
  for (const { type, specifier } of found) {
    if (type === "dynamic") imports.later.push(specifier ?? "");
    else if (type !== "import-meta") imports.now.push(specifier);
  }
  return imports;
}
