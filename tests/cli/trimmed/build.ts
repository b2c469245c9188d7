import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { scriptSettings } from "../../../src/cli/build.ts";
import { trimPlugin } from "../../../src/cli/trim-plugin.ts";

/** The parts as a browser gets them: with what the script never runs left out of the libraries. */
export async function buildTrimmed(): Promise<typeof import("./parts.ts")> {
  const out = mkdtempSync(join(tmpdir(), "fridgeside-"));
  try {
    await build({
      ...scriptSettings,
      plugins: [trimPlugin()],
      build: {
        outDir: out,
        emptyOutDir: true,
        target: "es2022",
        lib: {
          entry: new URL("parts.ts", import.meta.url).pathname,
          formats: ["es"],
          fileName: () => "parts.mjs",
        },
        rolldownOptions: { treeshake: { propertyReadSideEffects: false } },
      },
    });
    return await import(/* @vite-ignore */ pathToFileURL(join(out, "parts.mjs")).href);
  } finally {
    rmSync(out, { recursive: true });
  }
}
