import { type InlineConfig, build as viteBuild } from "vite";
import { againPlugin } from "./again-plugin.ts";
import { flowPlugin } from "./flow-plugin.ts";

const root = new URL("../../", import.meta.url).pathname;

/** Where the built script lies. */
export const distFolder = `${root}dist`;

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

/** Builds the one script tag's file and what it loads later, into dist/. */
export async function buildEmbed(out: string = distFolder): Promise<void> {
  await viteBuild({
    ...scriptSettings,
    base: "./",
    plugins: [flowPlugin(), againPlugin()],
    build: {
      outDir: out,
      emptyOutDir: true,
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
}
