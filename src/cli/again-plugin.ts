import { createHash } from "node:crypto";
import type { Plugin } from "vite";

/** Stands in the first file where the address of the second engine belongs, until that is known. */
export const againPlace = "parts/engine-again";

/**
 * Writes the engine a second time, tied to a copy of the first file that is named by its content. The engine takes
 * its libraries from `../fridgeside.js`, and a page that has an older one of that name would give it the wrong ones;
 * the second engine is what an older first file goes on with after a deploy, and what is asked for where the first
 * could not be read.
 */
export function againPlugin(): Plugin {
  return {
    name: "fridgeside-again",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const chunks = Object.values(bundle).filter((each) => each.type === "chunk");
        const first = chunks.find(({ fileName }) => fileName === "fridgeside.js");
        const engine = chunks.find(({ imports }) => imports.includes("fridgeside.js"));
        if (!first || !engine) throw new Error("The build has no first file or no engine");
        const emit = (name: string, source: string) => {
          const digest = createHash("sha256").update(source).digest("hex").slice(0, 8);
          const fileName = `parts/${name}-${digest}.js`;
          this.emitFile({ type: "asset", fileName, source });
          return fileName;
        };
        // The copy lies in parts/ itself.
        const copy = emit("first-again", first.code.replace(/(["'`])(?:\.\/)?parts\//g, "$1./"));
        const again = engine.code.replaceAll("../fridgeside.js", copy.replace("parts/", "./"));
        first.code = first.code.replace(againPlace, emit("engine-again", again));
      },
    },
  };
}
