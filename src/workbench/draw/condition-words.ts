import { type Condition, fold, type Statement } from "../../condition/index.ts";

/** A condition as a line of text, in the words of the flow files; named conditions keep their names. */
export function wordsOf(condition: Condition): string {
  return fold<string>(condition, {
    statement: statementWords,
    named: (name) => name,
    all: (parts) => join(parts, " and ", "always"),
    any: (parts) => join(parts, " or ", "never"),
    not: (part) => `not ${bracketed(part)}`,
  });
}

function statementWords({ type, params }: Statement): string {
  switch (type) {
    case "answered":
      return `${params.turn} is ${either(params.is)}`;
    case "verdict":
      return `${params.turn} ${either(params.is)}`;
    case "done":
      return `${params.check} done`;
    case "found":
      return `found ${either(params.causes)}`;
    case "remedied":
      return `put right ${either(params.causes)}`;
    default:
      return type;
  }
}

const either = (words: string[]) => words.join(" or ");
const bracketed = (words: string) => (/ (and|or) /.test(words) ? `(${words})` : words);

function join(parts: string[], sign: string, none: string): string {
  return parts.length === 1 ? (parts[0] ?? "") : parts.map(bracketed).join(sign) || none;
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
