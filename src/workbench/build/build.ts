import { fileURLToPath } from "node:url";
import type { InlineConfig, Plugin } from "vite";
import { type OwnFile, writeOwnFiles } from "../own-files/index.ts";
import { builtFiles, comesBuilt } from "./built-files.ts";
import { type BuiltFile, firstChunk } from "./chunks.ts";
import { compileOnce, flowPlugin } from "./flow-plugin.ts";
import { integrityFiles, pinnedName } from "./integrity.ts";
import { readLocales } from "./locales-folder.ts";
import { languagesOf } from "./panel-data.ts";
import { plateFilesOf, plateFolder } from "./plate-files.ts";
import { wordsPlugin } from "./words-plugin.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** Where the built script lies. */
export const distFolder = `${root}dist`;

/** The file that looks for the page's language and loads that language's first file. */
export const firstFile = "fridgeside.js";

/**
 * How long the files of a build stay beside those that took its place. A page that was open, or whose first file a
 * cache still had, asks for the parts of its own build: five builds cover a day of mending, thirty days a tab that
 * nobody closes (judgement).
 */
export const keptFor = { keep: 5, keepDays: 30 };

/** How any part of the script is built. Said here and not left to NODE_ENV, nor to a test runner that builds one. */
export const scriptSettings: InlineConfig = {
  configFile: false,
  root,
  logLevel: "warn",
  publicDir: false,
  resolve: { conditions: ["module", "browser", "production"] },
  // Preact's own factory: the automatic one is a second factory and nests every element's children in its properties.
  oxc: {
    jsx: { runtime: "classic", development: false, pragma: "jsxElement", pragmaFrag: "JsxGroup" },
    jsxInject: `import { h as jsxElement, Fragment as JsxGroup } from "preact"`,
  },
};

/**
 * Builds the one script tag's file and what it loads later, into `out`, and to `maps` its source maps. The files of builds
 * before stay as long as it says; nothing that the folder's marker does not list is replaced or removed.
 * @throws Refusal where something else lies there; Error where flows/ has a problem or `out` cannot be written
 */
export async function buildEmbed(
  out: string = distFolder,
  { maps, ...kept }: Partial<typeof keptFor> & { maps?: string } = {},
  now = new Date(),
  made = bundleEmbed,
): Promise<void> {
  const isNamedByContent = (path: string) =>
    path.startsWith("parts/") || path.startsWith(`${plateFolder}/`) || pinnedName.test(path);
  const how = { writer: "build" as const, isNamedByContent, ...keptFor, ...kept, now };
  const bundled = comesBuilt() ? [] : await made();
  writeOwnFiles(out, builtFiles() ?? allFilesOf(bundled), how);
  if (maps) writeOwnFiles(maps, builtFiles("maps") ?? mapsOf(bundled), { ...how, writer: "maps" });
}

/** The source maps (ECMA-426) of what was bundled: each is named as its script is, and holds the sources themselves. */
const mapsOf = (files: BuiltFile[]): OwnFile[] =>
  files.flatMap(({ path, map }) => (map ? [{ path: `${path}.map`, content: map }] : []));

/** All that a build writes, of what was bundled. */
export function allFilesOf(files: OwnFile[]): OwnFile[] {
  return [...files, ...plateFilesOf().files, ...integrityFiles(files, languagesOf(readLocales()))];
}

/** What a shop embeds, as files. @param plugins more steps of the bundler, before ours */
export async function bundleEmbed(plugins: Plugin[] = []): Promise<BuiltFile[]> {
  // It is made of libraries that only this needs: a shop that installs the package has the script built.
  const { linkFiles } = await import("./link-files.ts");
  const flow = compileOnce();
  const panel = await bundle(firstChunk, "embed/first-file.ts", [
    ...plugins,
    wordsPlugin(),
    flowPlugin(flow),
  ]);
  const chooser = await bundle("fridgeside", "embed/fridgeside.ts", [...plugins, languagesPlugin()], {
    oxc: {},
  });
  // One file: who sits at a desk has a connection, and its data is fetched from where the panel's lies.
  const desk = await bundle("fridgeside-desk", "desk/desk-file.ts", [...plugins, flowPlugin(flow)], {
    isOneFile: true,
  });
  const script = [...chooser, ...desk.filter(({ chunk }) => chunk !== undefined)];
  return [...linkFiles(panel), ...script];
}

/** The languages with texts, for the file that chooses among them. */
function languagesPlugin(): Plugin {
  const languages = `export default ${JSON.stringify(languagesOf(readLocales()))}`;
  return {
    name: "fridgeside-languages",
    resolveId: (id) => (id === "virtual:languages" ? `\0${id}` : null),
    load: (id) => (id === "\0virtual:languages" ? languages : null),
  };
}

type Kind = { oxc?: InlineConfig["oxc"]; isOneFile?: boolean };

/** Bundles one entry of src/ with all that it loads later, in files of their own or in one. */
async function bundle(
  name: string,
  file: string,
  plugins: Plugin[],
  { oxc = scriptSettings.oxc ?? {}, isOneFile = false }: Kind = {},
): Promise<BuiltFile[]> {
  // Nobody else waits for it, and the package that shops install comes without it.
  const vite = await import("vite");
  const built = await vite.build({
    ...scriptSettings,
    oxc,
    base: "./",
    plugins,
    build: {
      write: false,
      target: "es2022",
      // The style sheets say themselves what old browsers need; a colour scheme rewritten for them would weigh more.
      cssTarget: "esnext",
      // The preload helper would be a second file before the first question.
      modulePreload: false,
      lib: { entry: { [name]: `${root}src/${file}` }, formats: ["es"] },
      minify: true,
      // Apart: no script names its map, and a map is fetched by nobody who does not look for it.
      sourcemap: "hidden",
      rolldownOptions: {
        checks: { bundlerTimings: false },
        // No getter of ours or of a library does anything but give its value.
        treeshake: { propertyReadSideEffects: false },
        // The engine takes preact from the first file; a chunk shared by both would cost a whole round trip.
        preserveEntrySignatures: "allow-extension",
        output: {
          ...(isOneFile && { codeSplitting: false }),
          minify: true,
          comments: false,
          entryFileNames: "[name].js",
          chunkFileNames: "parts/[name]-[hash].js",
          assetFileNames: "parts/[name]-[hash][extname]",
          hashCharacters: "hex",
        },
      },
    },
  });
  const [output] = [built].flat();
  if (!output || !("output" in output)) throw new Error("Nothing was built");
  const files = output.output.filter(({ fileName }) => !fileName.endsWith(".map"));
  return files.map((each) =>
    each.type === "chunk"
      ? { path: each.fileName, content: each.code, chunk: each.name, map: each.map?.toString() ?? "" }
      : { path: each.fileName, content: each.source },
  );
}
