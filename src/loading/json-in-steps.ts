/**
 * Characters that are read in one step. `JSON.parse` reads 100 to 200 of them in a microsecond (measured on two slow
 * cores), a phone a quarter of that: a step takes it a few milliseconds.
 */
export const STEP_CHARACTERS = 64 * 1024;

/**
 * `JSON.parse` with a pause offered after every stretch of the text: a catalogue of many megabytes in one go would
 * hold up the page. Divides an object at its members, and their lists at their rows; each piece is then parsed by
 * `JSON.parse`, so that nothing is taken that it would refuse.
 * @throws SyntaxError
 */
export function* parseJsonInSteps(text: string): Generator<void, unknown> {
  let at = skipBlanks(text, 0);
  if (text.length <= STEP_CHARACTERS || text[at] !== "{") return JSON.parse(text);
  const members: [string, unknown][] = [];
  at = skipBlanks(text, at + 1);
  while (text[at] !== "}" || members.length > 0) {
    const colon = yield* endOf(text, at);
    if (text[colon] !== ":") throw faultAt(text, colon);
    const key: unknown = JSON.parse(text.slice(at, colon));
    if (typeof key !== "string") throw faultAt(text, at);
    const start = skipBlanks(text, colon + 1);
    const isList = text[start] === "[";
    const [value, end] = isList ? yield* readList(text, start) : yield* readValue(text, start);
    members.push([key, value]);
    at = skipBlanks(text, end);
    if (text[at] === "}") break;
    if (text[at] !== ",") throw faultAt(text, at);
    at = skipBlanks(text, at + 1);
  }
  if (skipBlanks(text, at + 1) < text.length) throw faultAt(text, at + 1);
  return Object.fromEntries(members);
}

type Read = [value: unknown, end: number];

function* readValue(text: string, start: number): Generator<void, Read> {
  const end = yield* endOf(text, start);
  return [JSON.parse(text.slice(start, end)), end];
}

/** The rows of a list, as many at once as fill a step. */
function* readList(text: string, open: number): Generator<void, Read> {
  const rows: unknown[] = [];
  let start = open + 1;
  let end = start;
  for (;;) {
    end = yield* endOf(text, end);
    const isLast = text[end] === "]";
    if (!isLast && text[end] !== ",") throw faultAt(text, end);
    if (isLast || end - start >= STEP_CHARACTERS) {
      const piece = text.slice(start, end);
      const isEmpty = rows.length === 0 && isLast && piece.trim() === "";
      if (!isEmpty) {
        if (piece.trim() === "") throw faultAt(text, end);
        for (const row of JSON.parse(`[${piece}]`)) rows.push(row);
      }
      yield;
      start = end + 1;
    }
    if (isLast) return [rows, end + 1];
    end += 1;
  }
}

/** Where a value ends: at the comma, colon or bracket after it that is not within it, or at the text's end. */
function* endOf(text: string, start: number): Generator<void, number> {
  let depth = 0;
  let isQuoted = false;
  for (let at = start; at < text.length; at++) {
    if (at % STEP_CHARACTERS === STEP_CHARACTERS - 1) yield;
    const character = text[at];
    if (isQuoted) {
      if (character === "\\") at++;
      else if (character === '"') isQuoted = false;
    } else if (character === '"') isQuoted = true;
    else if (character === "{" || character === "[") depth++;
    else if (character === "}" || character === "]") {
      if (depth === 0) return at;
      depth--;
    } else if (depth === 0 && (character === "," || character === ":")) return at;
  }
  return text.length;
}

function skipBlanks(text: string, from: number): number {
  let at = from;
  while (at < text.length && " \t\n\r".includes(text[at] as string)) at++;
  return at;
}

const faultAt = (text: string, at: number) =>
  new SyntaxError(`Unexpected ${at < text.length ? `"${text[at]}"` : "end"} in JSON at ${at}`);
