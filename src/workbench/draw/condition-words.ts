import type { Condition } from "../../guide/index.ts";

/** A condition as a line of text, in the words of the flow files; named conditions keep their names. */
export function wordsOf(condition: Condition): string {
  if (typeof condition === "string") return condition;
  if ("answered" in condition) return `${condition.answered.turn} is ${either(condition.answered.is)}`;
  if ("verdict" in condition) return `${condition.verdict.turn} ${either(condition.verdict.is)}`;
  if ("done" in condition) return `${condition.done} done`;
  if ("found" in condition) return `found ${either(condition.found)}`;
  if ("remedied" in condition) return `put right ${either(condition.remedied)}`;
  if ("is" in condition) return condition.is;
  if ("not" in condition) return `not ${bracketed(condition.not)}`;
  return "all" in condition ? join(condition.all, " and ", "always") : join(condition.any, " or ", "never");
}

const either = (words: string[]) => words.join(" or ");

function join(list: Condition[], sign: string, none: string): string {
  if (list.length === 1 && list[0]) return wordsOf(list[0]);
  return list.map(bracketed).join(sign) || none;
}

function bracketed(condition: Condition): string {
  const words = wordsOf(condition);
  return / (and|or) /.test(words) ? `(${words})` : words;
}

/** Breaks a text into lines of at most so many letters, between words where it can. */
export function wrap(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}
