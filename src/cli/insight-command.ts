import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import {
  countLine,
  createTally,
  drawSummary,
  printSummary,
  type Summary,
  summarise,
  summaryPage,
} from "../workbench/insight/index.ts";
import { readOutcomes } from "./read-outcomes.ts";

const help = `fridgeside insight <files…> [--html file] [--svg file] [--json]

Reads what panels have sent to the address of their attribute "insight", one JSON object a line, and says where people
give up, how searches end, how long they take, which model codes were not found and how many sentences were not
understood. Lines that no panel has written are counted and left out; "-" is the standard input.

  --html report.html    the same as a page of its own, without script
  --svg report.svg      the drawing alone
  --json                instead of the text`;

/**
 * `fridgeside insight`: what outcomes come to. Files are streamed: one of any size takes the same memory.
 * @returns exit code 0, 1 where a file cannot be read or written, 2 for unusable options
 */
export async function insightCommand(
  args: string[],
  print: (text: string) => void = console.log,
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      html: { type: "string" },
      svg: { type: "string" },
      json: { type: "boolean" },
      help: { type: "boolean" },
    },
  });
  if (values.help) {
    print(help);
    return 0;
  }
  if (!positionals.length) {
    console.error("Name one or more files with outcomes, a JSON object a line");
    return 2;
  }
  const tally = createTally();
  try {
    await readOutcomes(positionals, (line) => countLine(tally, line));
  } catch (problem) {
    console.error((problem as Error).message);
    return 1;
  }
  const summary = summarise(tally);
  const drawings: [path: string | undefined, draw: (summary: Summary) => string][] = [
    [values.html, summaryPage],
    [values.svg, drawSummary],
  ];
  for (const [path, draw] of drawings)
    try {
      if (path) writeFileSync(path, draw(summary));
    } catch (problem) {
      console.error(`${path} cannot be written: ${(problem as Error).message}`);
      return 1;
    }
  print(values.json ? JSON.stringify(summary, null, 2) : printSummary(summary));
  return 0;
}
