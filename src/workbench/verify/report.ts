import type { FileProblem, Place } from "./problem.ts";
import type { Source } from "./source.ts";
import { type Fault, tell } from "./words.ts";

/** Notes a fault; `place` where no path leads to it. */
export type Report = (fault: Fault, place?: Place) => void;

/** A report that finds the places and the words; the same thing said twice of the same line is said once. */
export function createReport(sources: Map<string, Source>): { report: Report; problems: FileProblem[] } {
  const problems: FileProblem[] = [];
  const report: Report = (fault, place) => {
    const { file, path, at } = fault;
    const top = { file, line: 1, column: 1 };
    const told = tell(fault, place ?? sources.get(file)?.placeOf(path, at) ?? top);
    const isSame = (one: FileProblem) =>
      one.message === told.message && one.file === file && one.line === told.line;
    if (!problems.some(isSame)) problems.push(told);
  };
  return { report, problems };
}
