import { faults } from "./faults/index.ts";
import { type Figures, type Outcome, sumUp } from "./tally.ts";

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const number = (value: number) => value.toFixed(1);

/** The lines of the main table: what it is, how it is written, and what is aimed at. */
const lines: [string, (one: Figures) => string, string][] = [
  ["ended right", (one) => percent(one.right), "≥ 86 %"],
  ["called somebody needlessly", (one) => percent(one.needless), "≤ 9 %"],
  ["a wrong part, of homes", (one) => percent(one.wrongPartsOfHomes), "≤ 1.5 %"],
  ["a wrong part, of parts", (one) => percent(one.wrongPartsOfParts), "≤ 8 %"],
  ["said fixed and is not", (one) => percent(one.notFixed), "≤ 1 %"],
  ["wrong trade called", (one) => percent(one.wrongTrade), ""],
  ["no ending in 120 turns", (one) => percent(one.noEnding), "0"],
  ["professional endings, of homes", (one) => percent(one.calls), ""],
  ["…true cause first or second", (one) => percent(one.namesTrue), "≥ 60 %"],
  ["…false causes only", (one) => percent(one.namesFalse), "≤ 8 %"],
  ["…no cause", (one) => percent(one.namesNone), ""],
  ["missed hazards", (one) => String(one.missedHazards), "0"],
  ["hazardous steps, wrong state", (one) => String(one.hazardousSteps), "0"],
  ["something of ours left unsaid", (one) => String(one.leftBehind), "0"],
  ["attention, minutes", (one) => number(one.minutes), "≤ 32"],
  ["waits, hours", (one) => number(one.hours), "≤ 13"],
  ["turns, mean", (one) => number(one.turns), "14"],
  ["turns, 9 in 10 within", (one) => String(one.turns90), "24"],
  ["questions asked twice", (one) => one.askedTwice.toFixed(2), "≤ 0.5"],
  ["gates in full", (one) => one.fullGates.toFixed(2), "≤ 1.5"],
];

/** All that the bench prints; the first column's homes are those that the tables below it are about. */
export function reportOf(columns: Record<string, readonly Outcome[]>, everyFault: boolean): string {
  const [main = []] = Object.values(columns);
  return [
    mainTable(columns),
    `By complaint\n${worstFirst(main, byScenario)}`,
    `By true fault, worst first\n${worstFirst(main, byFault, everyFault ? 200 : 20)}`,
    `Hazardous steps in the wrong state\n${countOf(main.flatMap(({ hazards }) => hazards))}`,
    `Turns and causes without a rule here\n${countOf(main.flatMap(({ unknown }) => unknown))}`,
  ].join("\n\n");
}

/** Columns of figures side by side. */
function mainTable(columns: Record<string, readonly Outcome[]>): string {
  const figures = Object.values(columns).map(sumUp);
  const rows = lines.map(([name, say, aim]) => [name, ...figures.map(say), aim]);
  return table(["", ...Object.keys(columns), "aim"], rows);
}

type Key = (one: Outcome) => string;

/** Homes by something, the one that loses most homes first. */
function worstFirst(outcomes: readonly Outcome[], key: Key, most = 200): string {
  const groups = groupBy(outcomes, key);
  const losses = (of: readonly Outcome[]) => of.filter(({ verdict }) => verdict !== "right").length;
  const rows = [...groups]
    .sort(([, one], [, other]) => losses(other) - losses(one))
    .slice(0, most)
    .map(([name, of]) => {
      const wrong = groupBy(
        of.filter(({ verdict }) => verdict !== "right"),
        ({ verdict, ended }) => `${verdict}: ${ended}`,
      );
      const ways = [...wrong].sort(([, one], [, other]) => other.length - one.length).slice(0, 3);
      const share = percent(1 - losses(of) / of.length);
      return [
        name,
        percent(of.length / outcomes.length),
        share,
        percent(losses(of) / outcomes.length),
        ways.map(([way, homes]) => `${way} ${homes.length}`).join(", "),
      ];
    });
  return table(["", "of homes", "right", "lost", "how"], rows);
}

/** Homes with two faults stand under the first. */
const byFault: Key = ({ faults: [first = ""] }) => first;
const byScenario: Key = ({ symptom }) => symptom;

/** What occurs how often, most frequent first. */
function countOf(texts: readonly string[]): string {
  const rows = [...groupBy(texts, (id) => id)].sort(([, one], [, other]) => other.length - one.length);
  return (
    rows
      .slice(0, 30)
      .map(([id, of]) => `  ${id} (${of.length})`)
      .join("\n") || "  none"
  );
}

/** Each fault's share with its reason. */
export function shareTable(): string {
  return table(
    ["fault", "per 1,000", "why"],
    faults.map(({ id, share, reason }) => [id, String(share), reason]),
  );
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((cell, column) =>
    Math.max(cell.length, ...rows.map((row) => (row[column] ?? "").length)),
  );
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) => (column ? cell.padEnd(widths[column] ?? 0) : cell.padEnd(widths[0] ?? 0)))
      .join("  ")
      .trimEnd();
  return [line(head), ...rows.map(line)].join("\n");
}

function groupBy<Item>(items: readonly Item[], key: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
}
