import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { OwnFile } from "../own-files/index.ts";

/** Where the files that read photos of plates lie in a build: a folder of their own, which a shop may leave out. */
export const plateFolder = "plate";

const ours = createRequire(import.meta.url);

/** A core that cannot be used fails in a promise that nobody awaits; so it is made an error of the worker's. */
const beforeAll = `addEventListener("unhandledrejection",(event)=>{throw event.reason});`;

/**
 * What reads print on the phone: tesseract.js with its core in one script, so that the worker asks for no other; the
 * core's WebAssembly; the English data. In a folder that is named by their content.
 */
export function plateFilesOf(): { version: string; bytes: number; files: OwnFile[] } {
  // The core is the reader's own dependency, in the version that it was made for.
  const readers = createRequire(ours.resolve("tesseract.js/package.json"));
  const core = (file: string) => readFileSync(readers.resolve(`tesseract.js-core/${file}`));
  const wasm = "tesseract-core-simd-lstm.wasm";
  const script = readFileSync(ours.resolve("tesseract.js/dist/worker.min.js"));
  const worker = [beforeAll, core("tesseract-core-simd-lstm.js"), script]
    .join("\n;")
    .replace(/\/\/# sourceMappingURL=\S+/g, "");
  const data = "eng.traineddata.gz";
  const contents: [name: string, content: Buffer][] = [
    ["worker.js", Buffer.from(worker)],
    [wasm, core(wasm)],
    [data, readFileSync(ours.resolve(`@tesseract.js-data/eng/4.0.0_best_int/${data}`))],
    ["LICENSE", core("LICENSE")],
  ];
  const hash = createHash("sha256");
  for (const [name, content] of contents) hash.update(name).update(content);
  const version = hash.digest("hex").slice(0, 8);
  return {
    version,
    bytes: contents.reduce((sum, [, content]) => sum + content.length, 0),
    files: contents.map(([name, content]) => ({ path: `${plateFolder}/${version}/${name}`, content })),
  };
}
