import { type FileKind, fileKind, lastRegion } from "../../guide/index.ts";
import type { Report } from "./report.ts";
import { findMisshapen } from "./shape.ts";
import type { Source } from "./source.ts";
import { nearest } from "./suggest.ts";

/** Files that every flow has; checks, scenarios and other regions come on top, one file each. */
const singles = [
  ...["causes", "conditions", "gates", "limits", "opening", "parts", "stations", "words"],
  ...["machine/quantities", "machine/complaints"],
];
export const neededFiles = [...singles, `regions/${lastRegion}`].map((name) => `${name}.yaml`);

/** A folder of flow files as far as it can be read. */
export type Folder = {
  /** Every file, by path; one whose YAML cannot be read has no data. */
  sources: Map<string, Source>;
  /** The kinds of the files that have the right shape too. */
  sound: Map<string, FileKind>;
  /** Ids of checks, by their files' names: there even where the file cannot be read. */
  checks: string[];
};

/** Judges each file by itself. */
export function judgeFiles(paths: string[], sources: Map<string, Source>, report: Report): Folder {
  const checks = paths.filter((path) => path.startsWith("checks/")).map(nameOf);
  const folder: Folder = { sources, sound: new Map(), checks };
  for (const file of neededFiles) if (!paths.includes(file)) report({ code: "missing-file", file, path: [] });
  for (const file of paths) {
    const kind = fileKind(file);
    const source = sources.get(file);
    if (!kind) report({ code: "unknown-file", file, path: [], suggestion: nearest(file, neededFiles) });
    else if (source?.problems.length) for (const one of source.problems) report({ ...one, path: [] }, one);
    else if (source) {
      const faults = findMisshapen(source, kind);
      for (const fault of faults) report(fault);
      if (!faults.length) judgeName(source, kind, report);
      // A limit is as good to reckon with before its source is written down.
      if (faults.every(({ code }) => code === "limit-without-source")) folder.sound.set(file, kind);
    }
  }
  return folder;
}

/** A check or scenario is found by its id and its file by its name, so the two are the same. */
function judgeName({ file, data }: Source, kind: FileKind, report: Report): void {
  if (kind !== "check" && kind !== "scenario") return;
  const { id } = data as { id: string };
  const name = nameOf(file);
  if (id !== name)
    report({ code: "id-and-file-differ", file, path: ["id"], id, name, kind, suggestion: name });
}

/** The id that a file stands for. */
export const nameOf = (file: string) => file.replace(/^.*\//, "").replace(/\.yaml$/, "");
