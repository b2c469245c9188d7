import type { Path } from "../../guide/index.ts";
import type { FileProblem } from "./problem.ts";
import type { Source } from "./source.ts";

/** Notes a problem at a value of a file, or at its key. */
export type Report = (
  code: string,
  file: string,
  path: Path,
  message: string,
  part?: "key",
  suggestion?: string,
) => void;

/** A report that finds the places; the same thing said twice of the same place is said once. */
export function createReport(sources: Map<string, Source>): { report: Report; problems: FileProblem[] } {
  const problems: FileProblem[] = [];
  const report: Report = (code, file, path, message, part, suggestion) => {
    const place = sources.get(file)?.placeOf(path, part) ?? { file, line: 1, column: 1 };
    if (problems.some((one) => one.message === message && one.file === file && one.line === place.line))
      return;
    problems.push({ ...place, code, message, ...(suggestion ? { suggestion } : {}) });
  };
  return { report, problems };
}
