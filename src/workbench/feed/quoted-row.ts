import { longestField } from "./row.ts";

/** A row with quoted fields: its fields, where each starts, and where the next row does. */
export type QuotedRow =
  | { kind: "row"; fields: string[]; starts: number[]; end: number; next: number }
  | { kind: "more" }
  | { kind: "unterminated" | "stray" | "too-long"; at: number };

const QUOTE = 34;
const LF = 10;
const CR = 13;

/** What a reader knows of its text: the mark between fields, the next line end from a place on, and if more may come. */
export type RowText = { text: string; mark: string; lineEndFrom(at: number): number; isLast: boolean };

/**
 * Reads one row after RFC 4180, 2.5 to 2.7: a quoted field may hold marks, line ends and doubled quotes. A quote
 * inside a field that does not start with one is a character like any other: 5/16" is a size.
 */
export function readQuotedRow({ text, mark, lineEndFrom, isLast }: RowText, start: number): QuotedRow {
  const fields: string[] = [];
  const starts: number[] = [];
  let at = start;
  for (;;) {
    starts.push(at);
    if (text.charCodeAt(at) === QUOTE) {
      const field = readQuotedField(text, at, isLast);
      if (field.kind !== "field") return field;
      fields.push(field.value);
      at = field.next;
    } else {
      const mayEnd = Math.min(indexOrLength(text, mark, at), lineEndFrom(at));
      if (mayEnd >= text.length && !isLast) return { kind: "more" };
      const end = Math.min(mayEnd, text.length);
      if (end - at > longestField) return { kind: "too-long", at };
      fields.push(text.slice(at, end));
      at = end;
    }
    const sign = text.charCodeAt(at);
    if (at >= text.length) return { kind: "row", fields, starts, end: at, next: at };
    if (text.startsWith(mark, at)) at += 1;
    else if (sign === LF) return { kind: "row", fields, starts, end: at, next: at + 1 };
    else if (sign === CR) {
      if (at + 1 >= text.length && !isLast) return { kind: "more" };
      const isPair = text.charCodeAt(at + 1) === LF;
      return { kind: "row", fields, starts, end: at, next: at + (isPair ? 2 : 1) };
    } else return { kind: "stray", at };
  }
}

function readQuotedField(text: string, at: number, isLast: boolean) {
  let close = at + 1;
  let isDoubled = false;
  for (;;) {
    close = text.indexOf('"', close);
    if ((close < 0 ? text.length : close) - at > longestField) return { kind: "unterminated", at } as const;
    if (close < 0) return isLast ? ({ kind: "unterminated", at } as const) : ({ kind: "more" } as const);
    if (close + 1 >= text.length && !isLast) return { kind: "more" } as const;
    if (text.charCodeAt(close + 1) !== QUOTE) break;
    isDoubled = true;
    close += 2;
  }
  const inner = text.slice(at + 1, close);
  return { kind: "field", value: isDoubled ? inner.replaceAll('""', '"') : inner, next: close + 1 } as const;
}

function indexOrLength(text: string, sign: string, from: number): number {
  const at = text.indexOf(sign, from);
  return at < 0 ? text.length : at;
}
