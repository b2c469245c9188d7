import type { Readable } from "node:stream";
import { StringDecoder } from "node:string_decoder";

/** Characters of a line at most: an answer with every item of a gate has some hundred (judgement). */
export const longestLine = 65_536;

/** The lines of an input, without their ends; null in place of one that is too long, of which nothing is kept. */
export async function* readLines(input: Readable): AsyncGenerator<string | null> {
  const decoder = new StringDecoder("utf8");
  let held = "";
  let isTooLong = false;
  const finish = (rest: string) => {
    const line = held + rest;
    const tooLong = isTooLong || line.length > longestLine;
    held = "";
    isTooLong = false;
    return tooLong ? null : line.replace(/\r$/, "");
  };
  for await (const chunk of input) {
    const [rest = "", ...more] = (typeof chunk === "string" ? chunk : decoder.write(chunk)).split("\n");
    let last = rest;
    for (const next of more) {
      yield finish(last);
      last = next;
    }
    held += last;
    if (held.length > longestLine) {
      isTooLong = true;
      held = "";
    }
  }
  if (held || isTooLong) yield finish("");
}
