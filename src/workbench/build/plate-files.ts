import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname } from "node:path";
import type { OwnFile } from "../own-files/index.ts";

/** Where the files that read photos of plates lie in a build: a folder of their own, which a shop may leave out. */
export const plateFolder = "plate";

const read = (file: string) => readFileSync(createRequire(import.meta.url).resolve(file));

/** A core or a picture that cannot be used fails in a promise that nobody awaits; so it is an error of the worker's. */
const beforeAll = `addEventListener("unhandledrejection",(event)=>{throw event.reason});`;

/**
 * What reads print on the phone: tesseract.js with its core in one script, so that the worker asks for no other; the
 * core's WebAssembly; the English data. In a folder that is named by their content.
 */
export function plateFilesOf(): { version: string; bytes: number; files: OwnFile[] } {
  const core = "tesseract-core-simd-lstm";
  const worker = [
    beforeAll,
    read(`tesseract.js-core/${core}.js`).toString(),
    read("tesseract.js/dist/worker.min.js").toString(),
  ].join("\n;");
  const licence = (name: string) =>
    `${dirname(createRequire(import.meta.url).resolve(`${name}/package.json`))}`;
  const contents: [name: string, content: Buffer][] = [
    ["worker.js", Buffer.from(worker.replace(/\/\/# sourceMappingURL=\S+/g, ""))],
    [`${core}.wasm`, read(`tesseract.js-core/${core}.wasm`)],
    ["eng.traineddata.gz", read("@tesseract.js-data/eng/4.0.0_best_int/eng.traineddata.gz")],
    ["LICENSE", readFileSync(`${licence("tesseract.js-core")}/LICENSE`)],
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
