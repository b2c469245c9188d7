import type { Loss, RowShare, Understood } from "../../workbench/shop-feed/index.ts";

/** How many rows of a shop's feed could be used, and why the others could not: each reason once, with three places. */
export function understoodLines({ parts, fitments }: Understood): string[] {
  if (!fitments) return shareLines(parts, "rows");
  return [...shareLines(parts, "rows of parts"), ...shareLines(fitments, "rows of fitments")];
}

function shareLines({ read, used, losses }: RowShare, what: string): string[] {
  const of = (kind: Loss["of"]) =>
    [...losses].filter((loss) => loss.of === kind).sort((a, b) => b.count - a.count);
  const [rows, models, notes] = [of("row"), of("model"), of("note")];
  return [
    `${used} of ${read} ${what} can be used (${shareOf(used, read)} %)`,
    ...(rows.length > 0 ? ["Rows that are left out:", ...rows.map(lossLine)] : []),
    ...(models.length > 0 ? ["Models that are left out of a row:", ...models.map(lossLine)] : []),
    ...(notes.length > 0 ? ["Worth a look; these rows are kept:", ...notes.map(lossLine)] : []),
  ];
}

/** Rounded down: 100 % is all of them. */
function shareOf(used: number, read: number): string {
  return read === 0 ? "0" : (Math.floor((used / read) * 1000) / 10).toString();
}

function lossLine({ count, message, places }: Loss): string {
  const shown = places.map(({ line, found }) => `${line}${found ? ` "${found}"` : ""}`).join(", ");
  return `  ${count} × ${message} Line ${shown}${count > places.length ? ", …" : ""}`;
}
