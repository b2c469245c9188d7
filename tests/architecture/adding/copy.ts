import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { readYamlFiles } from "../../../src/workbench/build/index.ts";
import { type FileProblem, verifyFolder } from "../../../src/workbench/verify/index.ts";
import { readOnce } from "../../read-once.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** A copy of some folders of the project, in which something may be added. */
export type Copy = ReturnType<typeof createCopy>;

/** Copies some folders; below `.cache`, where packages are found as from the project itself. */
export function createCopy(...folders: string[]) {
  mkdirSync(join(root, ".cache"), { recursive: true });
  const path = mkdtempSync(join(root, ".cache/adding-"));
  for (const folder of folders)
    cpSync(join(root, folder), join(path, folder), {
      recursive: true,
      filter: (file) => !file.includes(".unit.test."),
    });
  const touched = new Set<string>();
  const at = (file: string) => {
    touched.add(file);
    mkdirSync(dirname(join(path, file)), { recursive: true });
    return join(path, file);
  };
  return {
    path,
    /** The files that were added or edited, in order. */
    touched: () => [...touched].sort(),
    write: (file: string, text: string) => writeFileSync(at(file), text),
    /** Puts one text in the place of another. @throws Error where the file does not hold it. */
    replace(file: string, find: string, put: string) {
      const text = readFileSync(join(path, file), "utf8");
      if (!text.includes(find)) throw new Error(`${file} does not hold "${find}"`);
      writeFileSync(at(file), text.replace(find, put));
    },
    append: (file: string, text: string) => appendFileSync(at(file), text),
    /** Adds a line after the first that says `after`. @throws Error where no line does. */
    addLine(file: string, after: string, line: string) {
      const lines = readFileSync(join(path, file), "utf8").split("\n");
      const place = lines.findIndex((one) => one.includes(after));
      if (place < 0) throw new Error(`${file} has no line with "${after}"`);
      writeFileSync(at(file), lines.toSpliced(place + 1, 0, line).join("\n"));
    },
    /** All that `fridgeside verify` says of the copy. */
    verify: (): FileProblem[] =>
      verifyFolder({
        flows: readYamlFiles(join(path, "flows")),
        locales: readYamlFiles(join(path, "locales")),
        read: readOnce,
      }),
    remove: () => rmSync(path, { recursive: true, force: true }),
  };
}
