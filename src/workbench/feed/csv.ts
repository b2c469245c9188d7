import type { FeedFault, Place } from "./problem.ts";
import { type QuotedRow, readQuotedRow } from "./quoted-row.ts";
import { type FeedReader, longestField, longestRow, type RowPlace, type RowSink } from "./row.ts";

/** Further than any string is long: nothing more of the kind in this text. */
const NONE = 2 ** 30;

/**
 * Reads CSV after RFC 4180, with line ends of any kind, and commas, semicolons or tabs between the fields, told from
 * the first line. Every row must have as many fields as the first one; blank lines are passed over. A row that cannot
 * be read is told as a problem and reading goes on with the next *line*, so that a quote that nobody closed costs
 * that one row and not the rest of the file. Memory is bounded by one piece and the longest row.
 * @param given what stands between fields, where somebody has said it
 */
export function createCsvReader(sink: RowSink, given = ""): FeedReader {
  let text = "";
  let at = 0;
  let line = 1;
  let width = 0;
  let mark = given;
  let isFirst = true;
  let isSkipping = false;
  // The next of each sign from where reading stands. Searching once for each, and not once for each field, is what
  // makes this fast.
  let lf = -1;
  let cr = -1;
  let quote = -1;
  let divide = -1;

  const nextOf = (sign: string, from: number) => {
    const found = text.indexOf(sign, from);
    return found < 0 ? NONE : found;
  };
  const lineEndFrom = (from: number) => {
    if (lf < from) lf = nextOf("\n", from);
    if (cr < from) cr = nextOf("\r", from);
    return Math.min(lf, cr);
  };
  const forget = () => {
    lf = cr = quote = divide = -1;
  };

  let plain: string[] = [];
  let fields: string[] = plain;
  let starts: readonly number[] | null = null;
  const place: RowPlace = {
    get line() {
      return line;
    },
    placeOf: (field) => placeAt(starts ? (starts[field] ?? at) : plainStart(field)),
  };

  return {
    push(piece) {
      text = isFirst ? piece.replace(/^\uFEFF/, "") : text.slice(at) + piece;
      if (piece !== "") isFirst = false;
      at = 0;
      forget();
      read(false);
    },
    end() {
      forget();
      read(true);
      text = "";
    },
  };

  function read(isLast: boolean): void {
    while (at < text.length) {
      const found = lineEndFrom(at);
      if (found === NONE && !isLast && !isSkipping && text.length - at > longestRow)
        giveUp("row-too-long", at, `This row is longer than ${longestRow} characters, so it is left out.`);
      if (found === NONE && !isLast && isSkipping) at = text.length;
      // A return at the very end may be the first half of a line end.
      if (!isLast && (found === NONE || (found === cr && found + 1 === text.length))) return;
      const end = Math.min(found, text.length);
      const next = end + (found === cr && text.charCodeAt(end + 1) === 10 ? 2 : 1);
      if (mark === "" && end > at) mark = markOf(text.slice(at, end));
      if (quote < at) quote = nextOf('"', at);
      if (isSkipping || end === at) {
        isSkipping = false;
        line++;
      } else if (quote > end) {
        readPlain(end, isLast && found === NONE);
        line++;
      } else {
        const quoted = readQuotedRow({ text, mark, lineEndFrom, isLast }, at);
        if (quoted.kind === "more") return;
        if (!takeQuoted(quoted, end)) continue;
        at = quoted.kind === "row" ? quoted.next : next;
        continue;
      }
      at = next;
    }
  }

  function readPlain(end: number, isCutOff: boolean): void {
    // Locals, and a list that keeps its length: this loop runs once for each field of the feed.
    const [source, sign, row] = [text, mark, plain];
    let from = at;
    let count = 0;
    let found = divide;
    for (;;) {
      if (found < from) {
        found = source.indexOf(sign, from);
        if (found < 0) found = NONE;
      }
      if (found >= end) break;
      row[count++] = source.slice(from, found);
      from = found + 1;
    }
    row[count++] = source.slice(from, end);
    divide = found;
    starts = null;
    fields = count === row.length ? row : row.slice(0, count);
    const long = end - at > longestField ? fields.findIndex(({ length }) => length > longestField) : -1;
    if (long >= 0) tooLong(plainStart(long));
    else if (hasWidth(end, isCutOff)) sink.row(fields, place);
    if (row.length !== width) plain = new Array<string>(width).fill("");
  }

  /** @returns false where reading goes on with the line after the one in which the row starts */
  function takeQuoted(quoted: Exclude<QuotedRow, { kind: "more" }>, firstEnd: number): boolean {
    if (quoted.kind === "row") {
      const { end, next } = quoted;
      ({ fields, starts } = quoted);
      // More or fewer fields in a row of several lines: the quote was closed by one that belongs to another row.
      if (fields.length !== width && width > 0 && end > firstEnd)
        return giveUp(
          "unterminated-quote",
          starts.find((start) => text[start] === '"') ?? at,
          "This row has a quoted field that runs over several lines, and then another number of fields than the heading. Close the quote. Reading went on with the next line.",
        );
      if (hasWidth(end, next === end)) sink.row(fields, place);
      line += end > firstEnd ? lineEnds(at, next) : 1;
      return true;
    }
    if (quoted.kind === "too-long") {
      tooLong(quoted.at);
      return skipLine();
    }
    if (quoted.kind === "stray")
      return giveUp(
        "stray-quote",
        quoted.at,
        'Behind the closing quote stands more text. Write a quote inside a quoted field twice (""). Reading went on with the next line.',
      );
    const isEnd = text.length - quoted.at <= longestField;
    return isEnd && lineEndFrom(quoted.at) >= text.length
      ? giveUp("cut-off", quoted.at, "The feed ends inside this quoted field: it seems to be cut off.")
      : giveUp(
          "unterminated-quote",
          quoted.at,
          `The quote that opens here is not closed ${isEnd ? "before the feed ends" : `within ${longestField} characters`}. Reading went on with the next line.`,
        );
  }

  function hasWidth(end: number, isCutOff: boolean): boolean {
    if (width === 0) width = fields.length;
    if (fields.length === width) return true;
    const counted = `This row has ${fields.length} fields; the heading has ${width}.`;
    if (fields.length > width)
      report(
        "too-many-fields",
        place.placeOf(width),
        `${counted} Put a field that holds "${mark}" in quotes.`,
      );
    else if (isCutOff)
      report("cut-off", placeAt(end), `${counted} It is the last: the feed seems to be cut off.`);
    else report("too-few-fields", placeAt(end), counted);
    return false;
  }

  function tooLong(start: number): void {
    report("field-too-long", placeAt(start), `This field is longer than ${longestField} characters.`);
  }

  function giveUp(code: FeedFault, start: number, message: string): false {
    report(code, placeAt(start), message);
    return skipLine();
  }

  function skipLine(): false {
    isSkipping = true;
    forget();
    return false;
  }

  function report(code: FeedFault, place: Place, message: string): void {
    sink.problem({ code, ...place, message });
  }

  function plainStart(field: number): number {
    let from = at;
    for (let passed = 0; passed < field; passed++) from = text.indexOf(mark, from) + 1;
    return from;
  }

  function placeAt(position: number): Place {
    const before = text.slice(at, position).split(/\r\n|\r|\n/);
    return { line: line + before.length - 1, column: (before.at(-1)?.length ?? 0) + 1 };
  }

  function lineEnds(from: number, to: number): number {
    return text.slice(from, to).match(/\r\n|\r|\n/g)?.length ?? 0;
  }
}

/** Which of the usual marks stands most often in a heading line, outside of quotes. */
function markOf(heading: string): string {
  const outside = heading
    .split('"')
    .filter((_, index) => index % 2 === 0)
    .join("");
  const [best = ","] = [",", ";", "\t"].sort((a, b) => outside.split(b).length - outside.split(a).length);
  return best;
}
