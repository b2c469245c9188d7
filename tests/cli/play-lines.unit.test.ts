import { Readable } from "node:stream";
import { expect, test } from "vitest";
import { longestLine, readLines } from "../../src/cli/play-lines.ts";

async function linesOf(...chunks: (string | Buffer)[]): Promise<(string | null)[]> {
  const lines: (string | null)[] = [];
  for await (const line of readLines(Readable.from(chunks))) lines.push(line);
  return lines;
}

test("lines come whole, wherever the pieces of the input end", async () => {
  expect(await linesOf('{"a":', '1}\r\n{"b"', ":2}\n\n", "{}")).toEqual(['{"a":1}', '{"b":2}', "", "{}"]);
  const bytes = Buffer.from("°C\n");
  expect(await linesOf(bytes.subarray(0, 1), bytes.subarray(1))).toEqual(["°C"]);
});

test("a line that is too long is told as one, and the next is read", async () => {
  expect(await linesOf(`${"x".repeat(longestLine)}\n`)).toEqual(["x".repeat(longestLine)]);
  const piece = "x".repeat(longestLine);
  expect(await linesOf(piece, piece, piece, "\n{}\n")).toEqual([null, "{}"]);
  expect(await linesOf(`${piece}x\n{}`)).toEqual([null, "{}"]);
  expect(await linesOf(piece, "xx")).toEqual([null]);
});
