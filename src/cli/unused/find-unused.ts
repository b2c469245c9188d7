import type { Unused } from "./unused.ts";

/** A piece of source as the parser gives it (ESTree). */
export type Node = { type: string; start: number; end: number; [part: string]: unknown };

/** One stretch of source and what stands there instead, with the entry of the list that says so. */
export type Edit = { start: number; end: number; by: string; entry: string };

/** Where a piece stands: the class, function or constant around it, the kind of piece, the call it is handed to. */
type Place = { owner: string; within: string; call: string };

/** What of a file a list leaves out, in the order of the source; no stretch lies within another. */
export function findUnused(code: string, program: Node, unused: Unused): Edit[] {
  const { members = [], silent = [] } = unused;
  const always = new Map(Object.entries(unused.always ?? {}));
  const bodies = new Map(Object.entries(unused.bodies ?? {}));
  const unread = new Map(Object.entries(unused.unread ?? {}));
  const beginnings = [...always.keys()].filter((entry) => entry.endsWith("…"));
  const textOf = (node: unknown) => (node ? code.slice((node as Node).start, (node as Node).end) : "");
  const replace = ({ start, end }: Node, by: string, entry: string): Edit => ({ start, end, by, entry });

  const meaningOf = (text: string, { type }: Node): string | undefined => {
    if (always.has(text)) return text;
    // A sequence begins as its first part does, and says more than that.
    if (type === "SequenceExpression") return undefined;
    return beginnings.find((entry) => text.startsWith(entry.slice(0, -1)));
  };

  const expressionEdit = (node: Node): Edit | null => {
    const entry = meaningOf(textOf(node), node);
    if (entry !== undefined) return replace(node, `(${always.get(entry)})`, entry);
    if (node.type !== "CallExpression" && node.type !== "AssignmentExpression") return null;
    const target = textOf(node.callee ?? node.left);
    return silent.includes(target) ? replace(node, "(void 0)", target) : null;
  };

  const propertyEdit = (node: Node, { owner, call }: Place): Edit | null => {
    const key = textOf(node.key);
    const isUnread = unread.get(call)?.includes(key);
    const entry = `${isUnread ? call : owner}.${key}`;
    if (!isUnread && !members.includes(entry)) return null;
    const [comma] = /^\s*,|/.exec(code.slice(node.end)) ?? [""];
    return replace({ ...node, end: node.end + comma.length }, "", entry);
  };

  const bodyEdit = (name: string, held: unknown): Edit | null => {
    const body = (held as Node | null)?.type.includes("Function") ? bodies.get(name) : undefined;
    return body === undefined ? null : replace((held as Node).body as Node, body, name);
  };

  const editOf = (node: Node, place: Place): Edit | null => {
    if (node.type.endsWith("Expression")) return expressionEdit(node);
    if (node.type === "Property")
      return place.within === "ObjectExpression" ? propertyEdit(node, place) : null;
    if (node.type === "MethodDefinition") {
      const name = `${place.owner}.${textOf(node.key)}`;
      return members.includes(name) ? replace(node, "", name) : bodyEdit(name, node.value);
    }
    if (node.type === "ForOfStatement") {
      const list = textOf(node.right);
      return always.get(list) === "[]" ? replace(node, ";", list) : null;
    }
    if (node.type === "FunctionDeclaration") return bodyEdit(textOf(node.id), node);
    return node.type === "VariableDeclarator" ? bodyEdit(textOf(node.id), node.init) : null;
  };

  const editsIn = (node: Node, place: Place): Edit[] => {
    const edit = editOf(node, place);
    if (edit) return [edit];
    const inner = {
      owner: isNamed(node) ? textOf(node.id) : place.owner,
      within: node.type,
      call: node.type === "CallExpression" ? textOf(node.callee) : isListing(node) ? place.call : "",
    };
    return childrenOf(node).flatMap((child) => editsIn(child, inner));
  };
  return editsIn(program, { owner: "", within: "", call: "" }).sort((a, b) => a.start - b.start);
}

const isNamed = ({ type }: Node) => /^(Class|Function|Variable)Declarat/.test(type);
const isListing = ({ type }: Node) => type === "ObjectExpression";

/** What is assigned to is no expression that has a value yet, so it is passed over. */
function childrenOf(node: Node): Node[] {
  return Object.entries(node)
    .filter(([part]) => !(part === "left" && node.type === "AssignmentExpression"))
    .flatMap(([, part]) => part as Node[])
    .filter((child) => typeof child?.type === "string");
}

/** The source without what was found. */
export function applyEdits(code: string, edits: Edit[]): string {
  const kept = edits.map(({ end, by }, place) => by + code.slice(end, edits[place + 1]?.start));
  return code.slice(0, edits[0]?.start) + kept.join("");
}
