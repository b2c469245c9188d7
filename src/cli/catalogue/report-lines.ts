import { type BuildReport, counted } from "./build-catalogue.ts";
import { understoodLines } from "./loss-lines.ts";

/** A build's report as lines, problems first, each as an editor can jump to it. */
export function reportLines(feed: string, report: BuildReport): string[] {
  const { problems, figures, switched, stopped } = report;
  return [
    ...problems.first.map(({ line, column, message }) => `${feed}:${line}:${column} ${message}`),
    ...(problems.total > problems.first.length
      ? [`… and ${counted(problems.total - problems.first.length, "more problem")}`]
      : []),
    ...Object.entries(problems.counts).map(([code, count]) => `${counted(count, "problem")} of ${code}`),
    ...(report.understood ? understoodLines(report.understood) : []),
    ...(report.ignored.length > 0 ? [`Columns that mean nothing here: ${ignoredOf(report)}`] : []),
    ...(figures ? figureLines(report, figures) : []),
    ...(stopped ? [stopped] : []),
    ...(stopped && report.hint ? [report.hint] : []),
    ...(switched ? [`Switched to ${switched.folder}: ${fileLine(switched)}`] : []),
  ];
}

const mostIgnored = 20;

function ignoredOf({ ignored }: BuildReport): string {
  const shown = ignored.slice(0, mostIgnored).map((heading) => heading.slice(0, 80));
  return [...shown, ...(ignored.length > mostIgnored ? ["…"] : [])].join(", ");
}

function figureLines(report: BuildReport, figures: NonNullable<BuildReport["figures"]>): string[] {
  const { chains } = figures;
  const kinds = Object.entries(report.missingKinds).filter(([, count]) => count > 0);
  return [
    `${counted(figures.rowsRead, "row")} read, ${figures.rowsUsed} used, ${counted(figures.duplicates, "duplicate")}, ${counted(figures.conflicts, "conflict")}`,
    `${counted(figures.models, "model")}, ${counted(figures.parts, "part")}, ${counted(figures.fitments, "fitment")}, ${figures.conditions} on a condition`,
    ...(chains.count + chains.loops > 0
      ? [
          `${counted(chains.count, "chain")} of replaced parts, the longest of ${counted(chains.longest, "step")}; ${counted(chains.loops, "loop")}`,
        ]
      : []),
    ...kinds.map(([kind, count]) => `No ${kind} for ${counted(count, "model")}`),
    `${report.seconds.toFixed(1)} s (reading ${report.readSeconds.toFixed(1)} s), ${megabytes(report.peakBytes)} MB of memory at most`,
  ];
}

function fileLine({ files, bytes }: NonNullable<BuildReport["switched"]>): string {
  return `${counted(files, "file")}, ${megabytes(bytes)} MB`;
}

export function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);
}
