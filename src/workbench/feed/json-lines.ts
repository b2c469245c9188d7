import { plainText } from "../../catalogue/index.ts";
import { type ColumnName, columnNames } from "./columns.ts";
import { findDoubledKey } from "./doubled-key.ts";
import { type FeedFault, shorten } from "./problem.ts";
import { type FeedReader, longestField, longestRow, type RowSink } from "./row.ts";

/**
 * Reads a feed with one JSON object on each line, and hands each over as a row in the order of `columnNames`. Numbers
 * count as they are written in JSON, true, false, lists and objects do not, but for a list of texts in `replaces`.
 * @param columnOf which column a key means
 * @param ignore is told each key that means none, once
 */
export function createJsonReader(
  sink: RowSink,
  columnOf: (key: string) => ColumnName | undefined,
  ignore: (key: string) => void,
): FeedReader {
  let text = "";
  let line = 0;
  let source = "";
  let isSkipping = false;
  const keys = new Map<string, number>();
  const keyOf: string[] = [];
  const fields = columnNames.map(() => "");
  const placeOf = (field: number) => ({
    line,
    column: source.indexOf(JSON.stringify(keyOf[field] ?? columnNames[field])) + 1 || 1,
  });
  const at = {
    get line() {
      return line;
    },
    placeOf,
  };

  const report = (code: FeedFault, column: number, message: string) =>
    sink.problem({ code, line, column, message });

  return {
    push(piece) {
      text = line === 0 && text === "" ? piece.replace(/^\uFEFF/, "") : text + piece;
      let from = 0;
      for (let end = text.indexOf("\n"); end >= 0; end = text.indexOf("\n", from)) {
        take(text.slice(from, end), false);
        from = end + 1;
      }
      text = text.slice(from);
      if (text.length <= longestRow) return;
      if (!isSkipping) {
        line++;
        tooLong();
        line--;
      }
      isSkipping = true;
      text = "";
    },
    end() {
      take(text, true);
      text = "";
    },
  };

  function tooLong(): void {
    report("row-too-long", 1, `This line is longer than ${longestRow} characters, so it is left out.`);
  }

  function take(written: string, isLast: boolean): void {
    line++;
    source = written;
    if (isSkipping) {
      isSkipping = false;
      return;
    }
    if (written.length > longestRow) tooLong();
    else if (/^\s*$/.test(written)) return;
    else {
      const row = parse(written, isLast);
      if (row && layOutRow(row)) sink.row(fields, at);
    }
  }

  function parse(written: string, isLast: boolean): Record<string, unknown> | null {
    let row: unknown;
    try {
      row = JSON.parse(written);
    } catch {
      if (isLast && written.trimStart().startsWith("{") && !written.trimEnd().endsWith("}"))
        report("cut-off", written.length, "The feed ends inside this row: it seems to be cut off.");
      else report("not-json", 1, "This line is no JSON. Write one object on each line.");
      return null;
    }
    if (typeof row === "object" && row !== null && !Array.isArray(row)) return row as Record<string, unknown>;
    report("not-an-object", 1, 'This line is no JSON object, such as {"model": "…", "number": "…"}.');
    return null;
  }

  function layOutRow(row: Record<string, unknown>): boolean {
    fields.fill("");
    const own = Object.keys(row);
    const doubled = findDoubledKey(source, own.length);
    if (doubled !== null) {
      const column = source.lastIndexOf(JSON.stringify(doubled)) + 1 || 1;
      report(
        "doubled-key",
        column,
        `"${shorten(plainText(doubled))}" stands twice in this row: it is unknown which one is meant.`,
      );
      return false;
    }
    for (const key of own) {
      const field = fieldOf(key);
      if (field < 0) continue;
      keyOf[field] = key;
      const value = textOf(row[key], columnNames[field] === "replaces");
      const { column } = placeOf(field);
      if (value === null) {
        report("not-text", column, `"${key}" must be a text or a number.`);
        return false;
      }
      if (value.length > longestField) {
        report("field-too-long", column, `"${key}" is longer than ${longestField} characters.`);
        return false;
      }
      fields[field] = value;
    }
    return true;
  }

  function fieldOf(key: string): number {
    const known = keys.get(key);
    if (known !== undefined) return known;
    const name = columnOf(key);
    const field = name ? columnNames.indexOf(name) : -1;
    // A feed whose keys are all different must not fill the memory.
    if (keys.size < 1000) {
      keys.set(key, field);
      if (field < 0) ignore(plainText(key));
    }
    return field;
  }
}

function textOf(value: unknown, mayBeList: boolean): string | null {
  if (typeof value === "string") return value;
  // A longer number has lost its last digits already.
  if (typeof value === "number")
    return Number.isInteger(value) && !Number.isSafeInteger(value) ? null : String(value);
  if (value === null || value === undefined) return "";
  if (mayBeList && Array.isArray(value) && value.every((one) => typeof one === "string"))
    return value.join("|");
  return null;
}
