import type { Plugin } from "vite";
import { type Unused, unusedParts } from "./unused-parts.ts";

type Node = { type: string; start: number; end: number; [part: string]: unknown };

/** One stretch of source and what stands there instead, with the entry of the list that says so. */
type Edit = { start: number; end: number; by: string; entry: string };

/**
 * Leaves out of the libraries what this script never runs: a bundler cannot know which of a class's methods nobody
 * calls, nor which option nobody sets. An entry of the list that a library no longer has stops the build, so that
 * nothing is left out of a version that nobody has looked at.
 * @param lists by the name of the package
 */
export function trimPlugin(lists: Record<string, Unused> = unusedParts): Plugin {
  const missing = new Map(Object.entries(lists).map(([name, unused]) => [name, new Set(entriesOf(unused))]));
  return {
    name: "fridgeside-trim",
    transform(code, path) {
      for (const [name, unused] of Object.entries(lists)) {
        if (!path.includes(`/node_modules/${name}/`)) continue;
        const edits = findUnused(code, this.parse(code) as unknown as Node, unused);
        for (const { entry } of edits) missing.get(name)?.delete(entry);
        return { code: apply(code, edits), map: null };
      }
      return null;
    },
    buildEnd(problem) {
      if (problem) return;
      for (const [name, entries] of missing)
        if (entries.size > 0)
          this.error(`${name} has no ${[...entries].join(", no ")}: look through src/cli/unused-parts.ts`);
    },
  };
}

function entriesOf({ members = [], silent = [], always = {}, bodies = {} }: Unused): string[] {
  return [...members, ...silent, ...Object.keys(always), ...Object.keys(bodies)];
}

function findUnused(code: string, program: Node, unused: Unused): Edit[] {
  const { members = [], silent = [] } = unused;
  const always = new Map(Object.entries(unused.always ?? {}));
  const bodies = new Map(Object.entries(unused.bodies ?? {}));
  const textOf = (node: unknown) => code.slice((node as Node).start, (node as Node).end);
  const nameOf = (node: Node) => (node.id as { name: string } | null)?.name ?? "";

  const editOf = (node: Node, owner: string): Edit | null => {
    const replace = ({ start, end }: Node, by: string, entry: string) => ({ start, end, by, entry });
    const { type } = node;
    const text = type.endsWith("Expression") ? textOf(node) : "";
    const meaning = always.get(text);
    if (meaning !== undefined) return replace(node, `(${meaning})`, text);
    if (type === "CallExpression" || type === "AssignmentExpression") {
      const target = textOf(node.callee ?? node.left);
      return silent.includes(target) ? replace(node, "(void 0)", target) : null;
    }
    if (type === "MethodDefinition") {
      const member = `${owner}.${textOf(node.key)}`;
      return members.includes(member) ? replace(node, "", member) : null;
    }
    const body = type === "FunctionDeclaration" ? bodies.get(nameOf(node)) : undefined;
    return body === undefined ? null : replace(node.body as Node, body, nameOf(node));
  };

  const editsIn = (node: Node, owner: string): Edit[] => {
    const edit = editOf(node, owner);
    if (edit) return [edit];
    const inner = node.type === "ClassDeclaration" ? nameOf(node) : owner;
    return childrenOf(node).flatMap((child) => editsIn(child, inner));
  };
  return editsIn(program, "").sort((a, b) => a.start - b.start);
}

/** What is assigned to is no expression that has a value yet, so it is passed over. */
function childrenOf(node: Node): Node[] {
  return Object.entries(node)
    .filter(([part]) => !(part === "left" && node.type === "AssignmentExpression"))
    .flatMap(([, part]) => part as Node[])
    .filter((child) => typeof child?.type === "string");
}

function apply(code: string, edits: Edit[]): string {
  const kept = edits.map(({ end, by }, place) => by + code.slice(end, edits[place + 1]?.start));
  return code.slice(0, edits[0]?.start) + kept.join("");
}
