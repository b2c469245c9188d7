import { type FileKind, fileSchemas, type Path } from "../../guide/index.ts";
import { faultsOf, type Issue, inEnglish } from "./shape-faults.ts";
import type { Source } from "./source.ts";
import { nearest } from "./suggest.ts";
import type { Fault } from "./words.ts";

/** What of a file does not fit the shape that its kind must have. */
export function findMisshapen({ file, data }: Source, kind: FileKind): Fault[] {
  const checked = fileSchemas[kind].safeParse(data, inEnglish);
  if (checked.success) return [];
  const issues = checked.error.issues.flatMap((issue) => unfold(issue));
  return withoutEchoes(issues, data).flatMap((issue) => {
    const path = issue.path as Path;
    const value = valueAt(data, path);
    const missing = value === undefined && valueAt(data, path.slice(0, -1)) !== undefined;
    return faultsOf(issue, value, missing, file, kind);
  });
}

/** Of the branches of a choice only the one that was meant is worth a word. */
function unfold(issue: Issue): Issue[] {
  if (issue.code !== "invalid_union") return [issue];
  const meant = issue.errors.filter((branch) =>
    branch.every((one) => one.path.length > 0 || one.code === "unrecognized_keys"),
  );
  const known = meant.filter((branch) => branch.every((one) => one.path.length > 0));
  const only = known.length === 1 ? known[0] : meant.length === 1 ? meant[0] : undefined;
  if (!only) return [issue];
  return only.flatMap((one) => unfold({ ...one, path: [...issue.path, ...one.path] } as Issue));
}

/** A misspelt key that must be there is one fault, not one key too many and one too few. */
function withoutEchoes(issues: Issue[], data: unknown): Issue[] {
  const echoes = new Set<Issue>();
  for (const issue of issues) {
    if (issue.code !== "unrecognized_keys") continue;
    const missing = issues.filter(
      (one) =>
        String(one.path.slice(0, -1)) === String(issue.path) && valueAt(data, one.path as Path) === undefined,
    );
    const names = missing.map((one) => String(one.path.at(-1)));
    for (const key of issue.keys) {
      const name = nearest(key, names);
      for (const one of missing) if (one.path.at(-1) === name) echoes.add(one);
    }
  }
  return issues.filter((issue) => !echoes.has(issue));
}

/** The value at a path of plain data, or undefined. */
export function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, step)
        ? (value as Record<string | number, unknown>)[step]
        : undefined,
    data,
  );
}
