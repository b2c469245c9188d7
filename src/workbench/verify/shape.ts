import type { Path } from "../../guide/index.ts";
import { type FileKind, fileSchemas } from "../../guide/index.ts";
import { nearest } from "./nearest.ts";
import type { FileProblem } from "./problem.ts";
import { describeIssue, type Issue } from "./shape-words.ts";
import type { Source } from "./source.ts";

/** What of a file does not fit the shape that its kind must have. */
export function findMisshapen(source: Source, kind: FileKind): FileProblem[] {
  const checked = fileSchemas[kind].safeParse(source.data);
  if (checked.success) return [];
  const issues = checked.error.issues.flatMap((issue) => unfold(issue));
  return withoutEchoes(issues, source.data).flatMap((issue) => {
    const value = valueAt(source.data, issue.path as Path);
    const missing =
      valueAt(source.data, issue.path.slice(0, -1) as Path) !== undefined && value === undefined;
    return describeIssue(issue, { value, missing, kind }).map(
      ({ at = issue.path as Path, part, ...said }) => ({
        ...source.placeOf(missing ? at.slice(0, -1) : at, missing ? "key" : (part ?? "value")),
        ...said,
      }),
    );
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
