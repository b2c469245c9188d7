import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { ownFlows, readFlow } from "../workbench/build/index.ts";
import {
  countSearch,
  createSearches,
  type Estimate,
  type Learnt,
  learnFrom,
} from "../workbench/learn/index.ts";
import { readOutcomes } from "./read-outcomes.ts";

/** The least and the most that a judgement can be worth, in searches. */
const [leastWorth, mostWorth] = [1, 1_000_000];

/**
 * `fridgeside learn`: shares of causes and rates of error by what was found.
 * @returns exit code 0, 1 where nothing could be learnt or a file cannot be read or written, 2 for unusable options
 */
export async function learnCommand(
  args: string[],
  print: (text: string) => void = console.log,
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      out: { type: "string" },
      flows: { type: "string", default: ownFlows },
      worth: { type: "string", default: "300" },
      errors: { type: "boolean", default: false },
      json: { type: "boolean" },
    },
  });
  const worth = Number(values.worth);
  if (!positionals.length || !(worth >= leastWorth && worth <= mostWorth)) {
    console.error(
      positionals.length ? "--worth is a number of searches, 1 or more" : "Name files of outcomes",
    );
    return 2;
  }
  const flow = readFlow(values.flows);
  const searches = createSearches();
  const seen = { used: 0, other: 0, bad: 0 };
  try {
    await readOutcomes(positionals, (line) => {
      if (!line) seen.bad++;
      else if (countSearch(searches, flow, line)) seen.used++;
      else seen.other++;
    });
  } catch (problem) {
    console.error((problem as Error).message);
    return 1;
  }
  if (!seen.used) {
    console.error("No line says what was found: there is nothing to learn from");
    return 1;
  }
  const { causes, errors } = learnFrom(flow, searches, worth);
  const learnt = { causes: causes.sort(mostFirst), errors: errors.sort(mostFirst) };
  try {
    if (values.out) writeFileSync(values.out, overlayOf(learnt, seen.used, values.errors));
  } catch (problem) {
    console.error(`${values.out} cannot be written: ${(problem as Error).message}`);
    return 1;
  }
  print(values.json ? JSON.stringify({ ...seen, ...learnt }, null, 2) : tableOf(learnt, seen));
  return 0;
}

/** What has moved most comes first. */
const mostFirst = (one: Estimate, other: Estimate) =>
  Math.abs(Math.log(other.is / other.was)) - Math.abs(Math.log(one.is / one.was));

/**
 * A file of shares, as 'verify --shares' and 'pack --shares' take it. Each goes half the way (on a scale of ratios) from the
 * judgement to what was learnt (judgement): where flows/ has it wrong what a cause makes of a machine, all the way is too far. In a
 * world that nobody has tuned all of it, and the rates of error, made needless calls commoner; half did not (demo/docs/figures.md).
 * @param withErrors whether the rates of error are in it, whole
 */
export function overlayOf({ causes, errors }: Learnt, used: number, withErrors = false): string {
  const rates = withErrors ? errors : [];
  const lines = [
    ...causes.map(
      ({ cause, share }) => `${cause}: ${Number(Math.sqrt(share.was * share.is).toPrecision(3))}`,
    ),
    ...rates.map(({ error, is }) => `${error}: ${Number(is.toPrecision(3))}`),
  ];
  return `# Homes in 1,000, half the way to what ${used} searches say; see 'fridgeside learn --help'.\n${lines.sort().join("\n")}\n`;
}

function tableOf({ causes, errors }: Learnt, { used, bad }: { used: number; bad: number }): string {
  const rows = [
    ...causes.map((one) => ({ ...one, id: one.cause })),
    ...errors.map((one) => ({ ...one, id: one.error, count: one.reports })),
  ];
  const wide = Math.max(...rows.map(({ id }) => id.length));
  const percent = (share: number) => `${(share * 100).toFixed(1)} %`.padStart(7);
  const line = ({ id, count, was, is, low, high }: (typeof rows)[number]) =>
    `  ${id.padEnd(wide)} ${percent(was)} -> ${percent(is)}  (${percent(low).trim()} to ${percent(high).trim()}, ${count})`;
  const [moved, stayed] = [rows.filter((one) => one.hasMoved), rows.filter((one) => !one.hasMoved)];
  return [
    `${used} searches that say what was found.${bad ? ` ${bad} lines could not be read.` : ""}`,
    ...(moved.length ? ["", "Moved:", ...moved.map(line)] : []),
    ...(stayed.length
      ? ["", "Still as the trade judges, as far as these can tell:", ...stayed.map(line)]
      : []),
  ].join("\n");
}
