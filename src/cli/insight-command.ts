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
    },
  });
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
