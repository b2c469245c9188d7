import { fileURLToPath } from "node:url";
import { type InlineConfig, type Plugin, build as viteBuild } from "vite";
import { type OwnFile, writeOwnFiles } from "../own-files/index.ts";
import { againPlugin } from "./again-plugin.ts";
import { flowPlugin } from "./flow-plugin.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** Where the built script lies. */
export const distFolder = `${root}dist`;

/** The first file, the one whose name stays; all others are named by their content. */
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
 * Builds the one script tag's file and what it loads later, into `out`. The files of builds before stay as long as
 * `kept` says; nothing that the folder's marker does not list is replaced or removed.
 * @throws Refusal where something else lies there; Error where flows/ has a problem or `out` cannot be written
 */
export async function buildEmbed(
  out: string = distFolder,
  kept = keptFor,
  now = new Date(),
  bundle = bundleEmbed,
): Promise<void> {
  const isNamedByContent = (path: string) => path !== firstFile;
  writeOwnFiles(out, await bundle(), { writer: "build", isNamedByContent, ...kept, now });
}

/** What a shop embeds, as files. @param plugins more steps of the bundler, before ours */
export async function bundleEmbed(plugins: Plugin[] = []): Promise<OwnFile[]> {
  const built = await viteBuild({
    ...scriptSettings,
    base: "./",
    plugins: [...plugins, flowPlugin(), againPlugin()],
    build: {
      write: false,
      target: "es2022",
      // The style sheets say themselves what old browsers need; a colour scheme rewritten for them would weigh more.
      cssTarget: "esnext",
      // The preload helper would be a second file before the first question.
      modulePreload: false,
      lib: { entry: { fridgeside: `${root}src/embed/fridgeside.ts` }, formats: ["es"] },
      minify: true,
      rolldownOptions: {
        checks: { bundlerTimings: false },
        // No getter of ours or of a library does anything but give its value.
        treeshake: { propertyReadSideEffects: false },
        // The engine takes preact from the first file; a chunk shared by both would cost a whole round trip.
        preserveEntrySignatures: "allow-extension",
        output: {
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
  const [bundle] = [built].flat();
  if (!bundle || !("output" in bundle)) throw new Error("Nothing was built");
  return bundle.output.map((file) => ({
    path: file.fileName,
    content: file.type === "chunk" ? file.code : file.source,
  }));
}
