/** The middle of some numbers; of an even count the upper of the two, which flatters nobody. */
export function medianOf(numbers: number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Rows of cells as a table of plain text: the first column to the left, the others to the right. */
export function tableOf(rows: string[][]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
        )
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

/** Bytes as kB of a thousand, to a tenth. */
export const inKilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`;

/** Milliseconds, whole. */
export const inMilliseconds = (ms: number) => (Number.isFinite(ms) ? `${Math.round(ms)} ms` : "–");
