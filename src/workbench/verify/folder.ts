import { type FileKind, fileKind } from "../../guide/index.ts";
import { nearest, offer } from "./nearest.ts";
import type { FileProblem } from "./problem.ts";
import { findMisshapen } from "./shape.ts";
import type { ReadSource, Source } from "./source.ts";

/** Files that every flow has; checks and scenarios come on top, one file each. */
const singles = ["causes", "conditions", "gates", "limits", "opening", "parts", "stations", "words"].map(
  (name) => `${name}.yaml`,
);

/** A folder of flow files as far as it can be read. */
export type Folder = {
  /** Every file whose YAML can be read, by path. */
  sources: Map<string, Source>;
  /** The kinds of the files that also have the right shape. */
  sound: Map<string, FileKind>;
  /** Ids of checks and scenarios, by their files' names: there even where the file cannot be read. */
  checks: string[];
  scenarios: string[];
  problems: FileProblem[];
};

/** Reads every file and says what is wrong with each by itself. */
export function readFolder(files: Record<string, string>, read: ReadSource): Folder {
  const paths = Object.keys(files);
  const folder: Folder = {
    sources: new Map(),
    sound: new Map(),
    checks: namesIn(paths, "checks/"),
    scenarios: namesIn(paths, "scenarios/"),
    problems: [],
  };
  for (const file of singles)
    if (!paths.includes(file))
      folder.problems.push(fault("missing-file", file, `There is no file "${file}".`));
  for (const [file, text] of Object.entries(files)) {
    const kind = fileKind(file);
    if (!kind) {
      const { words, field } = offer(nearest(file, singles));
      const message = `No flow has a file "${file}".${words || " Checks lie in checks/, scenarios in scenarios/."}`;
      folder.problems.push({ ...fault("unknown-file", file, message), ...field });
      continue;
    }
    const source = read(file, text);
    const misshapen = source.problems.length ? [] : findMisshapen(source, kind);
    const strayed = source.problems.length + misshapen.length ? [] : findMisnamed(source, kind);
    folder.problems.push(...source.problems, ...misshapen, ...strayed);
    if (!source.problems.length) folder.sources.set(file, source);
    // A limit is as good to reckon with before its source is written down.
    const sound = misshapen.every(({ code }) => code === "limit-without-source");
    if (!source.problems.length && sound) folder.sound.set(file, kind);
  }
  return folder;
}

/** A check or scenario is found by its id and its file by its name, so the two are the same. */
function findMisnamed(source: Source, kind: FileKind): FileProblem[] {
  if (kind !== "check" && kind !== "scenario") return [];
  const { id } = source.data as { id: string };
  const name = nameOf(source.file);
  if (id === name) return [];
  const message = `The file is named "${name}" but holds the ${kind} "${id}". Both must be the same.`;
  return [{ ...source.placeOf(["id"]), code: "id-and-file-differ", message, suggestion: name }];
}

const fault = (code: string, file: string, message: string) => ({ code, file, line: 1, column: 1, message });
/** The id that a file stands for. */
export const nameOf = (file: string) => file.replace(/^.*\//, "").replace(/\.yaml$/, "");
const namesIn = (paths: string[], prefix: string) =>
  paths.filter((path) => path.startsWith(prefix)).map(nameOf);
