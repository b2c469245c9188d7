import { fileURLToPath } from "node:url";
import { build as viteBuild } from "vite";

/**
 * A script for a page of a bench, built as for a browser.
 * @param entry a file that puts what is to be measured into the page
 */
export async function buildScript(entry: URL): Promise<string> {
  const built = await viteBuild({
    configFile: false,
    logLevel: "warn",
    publicDir: false,
    build: {
      write: false,
      target: "es2022",
      lib: { entry: fileURLToPath(entry), name: "benchPage", formats: ["iife"] },
    },
  });
  const [bundle] = [built].flat();
  const chunk = bundle && "output" in bundle ? bundle.output[0] : undefined;
  if (chunk?.type !== "chunk") throw new Error("Nothing was built");
  return chunk.code;
}
