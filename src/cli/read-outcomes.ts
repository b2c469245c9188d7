import { createReadStream } from "node:fs";
import { type InsightLine, insightBounds, readLine } from "../insight/index.ts";

/**
 * Reads files of outcomes as they come; of a line that is too long no more than its beginning is held. `-` is the
 * standard input.
 * @param take gets each line that is not blank; null for one that no panel has written
 * @throws Error that names the file that cannot be read
 */
export async function readOutcomes(
  files: readonly string[],
  take: (line: InsightLine | null) => void,
): Promise<void> {
  for (const file of files)
    try {
      await readFile(file === "-" ? process.stdin : createReadStream(file), take);
    } catch (problem) {
      throw new Error(`${file} cannot be read: ${(problem as Error).message}`);
    }
}

async function readFile(
  chunks: AsyncIterable<Buffer | string>,
  take: (line: InsightLine | null) => void,
): Promise<void> {
  const decoder = new TextDecoder();
  let open = "";
  const add = (text: string, isLast: boolean) => {
    const lines = (open + text).split("\n");
    open = isLast ? "" : (lines.pop() ?? "").slice(0, insightBounds.line + 1);
    for (const line of lines) if (line.trim()) take(readLine(line));
  };
  for await (const chunk of chunks)
    add(typeof chunk === "string" ? chunk : decoder.decode(chunk, { stream: true }), false);
  add(decoder.decode(), true);
}
