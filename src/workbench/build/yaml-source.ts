import { type Document, isMap, isNode, isScalar, isSeq, LineCounter, type Pair, parseDocument } from "yaml";
import type { Path } from "../../condition/index.ts";
import type { Place, Source, Unreadable } from "../verify/index.ts";

/** Reads one file. Bad YAML gives problems, never an error. */
export function readSource(file: string, text: string): Source {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const [first, ...others] = document.errors;
  // One slip of indentation makes several errors further down; a doubled key stands by itself.
  const told = first ? [first, ...others.filter(({ code }) => code === "DUPLICATE_KEY")] : [];
  const problems = told.map(
    ({ code, message, pos }): Unreadable =>
      code === "DUPLICATE_KEY"
        ? { ...place(pos[0]), code: "doubled-key" }
        : { ...place(pos[0]), code: "yaml-syntax", why: message },
  );
  return {
    file,
    data: problems.length ? null : read(document, problems, place),
    problems,
    placeOf: (path, part = "value") => place(offsetOf(document, path, part)),
  };
}

function read(document: Document, problems: Unreadable[], place: (offset: number) => Place): unknown {
  try {
    return document.toJS();
  } catch (fault) {
    // An alias without its anchor, or aliases that multiply beyond reason.
    const why = fault instanceof Error ? fault.message : String(fault);
    problems.push({ ...place(0), code: "yaml-syntax", why });
    return null;
  }
}

function offsetOf(document: Document, path: Path, part: "key" | "value"): number {
  let node: unknown = document.contents;
  let here = startOf(node) ?? 0;
  for (const [depth, step] of path.entries()) {
    const last = depth === path.length - 1;
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => (isScalar(key) ? String(key.value) : "") === String(step));
      if (!pair) break;
      node = pair.value;
      const key = startOf(pair.key) ?? here;
      // A set of keys is found by its own key: where it starts says something of its first entry only.
      const below = isMap(node);
      here = (last && part === "key") || below || !hasText(pair) ? key : (startOf(node) ?? key);
    } else if (isSeq(node)) {
      node = node.items[Number(step)];
      if (node === undefined) break;
      here = startOf(node) ?? here;
    } else break;
  }
  return here;
}

const startOf = (node: unknown) => (isNode(node) ? node.range?.[0] : undefined);
const hasText = ({ value }: Pair) => isNode(value) && value.range?.[0] !== value.range?.[1];
