import { findUndecided, findUnproved, findUnusedCauses } from "./causes.ts";
import { findChartFaults } from "./chart.ts";
import { findUnneeded } from "./checks.ts";
import { judgeFiles } from "./folder.ts";
import { findUntold, judgeTexts } from "./languages.ts";
import type { FileProblem } from "./problem.ts";
import { findLost } from "./references.ts";
import { findUnplaced } from "./regions.ts";
import { assembleRepaired } from "./repaired-flow.ts";
import { findEndlessRepeats } from "./repeats.ts";
import { createReport } from "./report.ts";
import type { ReadSource } from "./source.ts";
import { findLackingLimits, findUnfitWords, findUnstocked } from "./stock.ts";
import { findNeverAsked, findUnrouted } from "./unreached.ts";

export type FolderToVerify = {
  /** The files of a flows folder by path inside it, such as `checks/reset.yaml`, as text. */
  flows: Record<string, string>;
  /** The text files of every language by path inside locales/, such as `en-GB/checks/reset.yaml`. */
  locales: Record<string, string>;
  /** The kinds of parts that the shop's catalogue has; left out, no kind is missed. */
  partKinds?: string[];
  read: ReadSource;
};

/**
 * Everything wrong with a folder of flow files, all at once, in the order of files and lines; an empty list means
 * that the flow can be built and that its chart keeps its promises. What cannot be read is left out of the judging
 * of the rest, so that one slip does not echo.
 */
export function verifyFolder({ flows, locales, partKinds, read }: FolderToVerify): FileProblem[] {
  const files = Object.entries({ ...flows, ...locales });
  const sources = new Map(files.map(([file, text]) => [file, read(file, text)]));
  const { report, problems } = createReport(sources);
  const folder = judgeFiles(Object.keys(flows), sources, report);
  const languages = judgeTexts(Object.keys(locales), sources, report);
  const flow = assembleRepaired(folder, findLost(folder, report));
  if (flow) {
    findChartFaults(flow, report);
    findEndlessRepeats(flow, report);
    findUnfitWords(flow, report);
    findLackingLimits(flow, report);
    findUnplaced(flow, languages.tags, report);
    if (partKinds) findUnstocked(flow, partKinds, report);
    // What is of no use to anything can only be told where everything can be read.
    if (folder.sound.size === Object.keys(flows).length)
      for (const find of [
        findUnrouted,
        findNeverAsked,
        findUnproved,
        findUnusedCauses,
        findUndecided,
        findUnneeded,
      ])
        find(flow, report);
  }
  findUntold(flow, languages, report);
  return problems.sort(byPlace);
}

function byPlace(a: FileProblem, b: FileProblem): number {
  return a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line || a.column - b.column;
}
