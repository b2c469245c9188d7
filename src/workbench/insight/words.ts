import type { Row, ScenarioSummary, Summary } from "./summary.ts";

export const number = (count: number) => count.toLocaleString("en-GB");
export const percent = (share: number) => `${Math.round(share * 100)} %`;

/** How many there were of all, in one sentence. */
export function headOf({ started, scenarios, bad, lines }: Summary): string {
  const ended = scenarios.reduce((sum, { endings }) => sum + endings, 0);
  const spoilt = bad ? ` ${number(bad)} of ${number(lines)} lines could not be read and were left out.` : "";
  return `${number(started)} ${started === 1 ? "search" : "searches"} began and ${number(ended)} ended.${spoilt}`;
}

/** What a scenario's lists are called, those that have anything. */
export function listsOf(one: ScenarioSummary): { heading: string; rows: Row[] }[] {
  return [
    { heading: "where people gave up", rows: one.gaveUp },
    { heading: "away during a wait", rows: one.waiting },
    { heading: "which causes", rows: one.causes },
    { heading: "asked a day or more later", rows: one.lasted },
    { heading: "the same, by cause", rows: one.held },
    { heading: "sentences that were not understood", rows: one.notUnderstood },
  ].filter(({ rows }) => rows.length > 0);
}

export const missingHeading = "Model codes that were not found";

export const minutesOf = ({ medianMinutes }: ScenarioSummary) =>
  medianMinutes === null
    ? "none ended"
    : `median ${medianMinutes} ${medianMinutes === 1 ? "minute" : "minutes"}`;

/** A summary as lines for a terminal. */
export function printSummary(summary: Summary): string {
  const rowsOf = (rows: { id: string; count: number; more?: string }[], indent: string) => {
    const [wide, tall] = [
      Math.max(...rows.map(({ id }) => id.length)),
      Math.max(...rows.map(({ count }) => number(count).length)),
    ];
    return rows.map(
      ({ id, count, more = "" }) =>
        `${indent}${id.padEnd(wide)}  ${number(count).padStart(tall)}${more && `  ${more.padStart(5)}`}`,
    );
  };
  const scenarios = summary.scenarios.flatMap((one) => [
    "",
    `${one.id}: ${number(one.endings)} ended, ${minutesOf(one)}`,
    ...(one.ended.length
      ? rowsOf(
          one.ended.map((row) => ({ ...row, more: percent(row.share) })),
          "  ",
        )
      : []),
    ...listsOf(one).flatMap(({ heading, rows }) => [`  ${heading}`, ...rowsOf(rows, "    ")]),
  ]);
  const missing = summary.missing.length ? ["", missingHeading, ...rowsOf(summary.missing, "  ")] : [];
  return [headOf(summary), ...scenarios, ...missing].join("\n");
}
