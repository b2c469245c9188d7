import { build as viteBuild } from "vite";
import { flowPlugin } from "./flow-plugin.ts";

const root = new URL("../../", import.meta.url).pathname;

/** Where the built script lies. */
export const distFolder = `${root}dist`;

/** Builds the one script tag's file and what it loads later, into dist/. */
export async function buildEmbed(out: string = distFolder): Promise<void> {
  await viteBuild({
    configFile: false,
    root,
    base: "./",
    logLevel: "warn",
    publicDir: false,
    plugins: [flowPlugin()],
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    build: {
      outDir: out,
      emptyOutDir: true,
      target: "es2022",
      // The preload helper would be a second file before the first question.
      modulePreload: false,
      lib: { entry: { fridgeside: `${root}src/embed/fridgeside.ts` }, formats: ["es"] },
      minify: true,
      rolldownOptions: {
        // The engine takes preact from the first file; a chunk shared by both would cost a whole round trip.
        preserveEntrySignatures: "allow-extension",
        output: {
          minify: true,
          entryFileNames: "[name].js",
          chunkFileNames: "parts/[name]-[hash].js",
          hashCharacters: "hex",
        },
      },
    },
  });
}
