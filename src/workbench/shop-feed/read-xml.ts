import { decodeHTMLStrict } from "entities";
import { SaxesParser } from "saxes";
import { UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";
import { layOut } from "./read-json.ts";
import type { Table } from "./table.ts";

type Node = { name: string; line: number; text: string; children: Node[]; attributes: [string, string][] };

/**
 * Reads an XML feed of any vocabulary: rows are the elements that come again and again and have elements inside, the
 * outermost of these (RSS 2.0 and Atom keep their entries so, as do plain lists of products). An element inside another
 * is named by its way, `shipping price`; of several with one name each is a line of the cell. Entities of the file's
 * own are not read.
 * @throws UnusableFeed where it is not well-formed, or has no such elements
 */
export function readXmlTable(text: string): Table {
  const root = parse(text);
  const items = findItems(root);
  if (items.length === 0) throw new UnusableFeed("This XML has no elements that look like a list of parts");
  if (items.length > shopFeedBounds.rows)
    throw new UnusableFeed(`This feed has more than ${shopFeedBounds.rows} rows`);
  const rows = items.map((item) => {
    const cells = new Map<string, string>();
    put(cells, item, "");
    return { line: item.line, cells };
  });
  return { format: "xml", ...layOut(rows), bad: [] };
}

function parse(text: string): Node {
  const root: Node = { name: "", line: 1, text: "", children: [], attributes: [] };
  const open = [root];
  const parser = new SaxesParser({ fragment: false });
  parser.on("error", (fault) => {
    throw new UnusableFeed(`This XML cannot be read. ${fault.message.slice(0, 200)}`);
  });
  parser.on("opentag", ({ name, attributes }) => {
    const node: Node = {
      name,
      line: parser.line,
      text: "",
      children: [],
      attributes: Object.entries(attributes as Record<string, string>),
    };
    open.at(-1)?.children.push(node);
    open.push(node);
    if (open.length > shopFeedBounds.depth)
      throw new UnusableFeed(`This XML has more than ${shopFeedBounds.depth} elements inside each other`);
  });
  const add = (piece: string) => {
    const top = open.at(-1);
    if (top) top.text += piece;
  };
  parser.on("text", add);
  parser.on("cdata", add);
  parser.on("closetag", () => open.pop());
  // The prolog names an encoding that the text is no longer in.
  parser.write(text.replace(/^\uFEFF/, "")).close();
  return root;
}

/** Level by level: the most frequent name of elements that have elements inside and come more than once. */
function findItems(root: Node): Node[] {
  let level = root.children;
  let single: Node[] = [];
  while (level.length > 0) {
    const byName = new Map<string, Node[]>();
    for (const node of level) {
      if (node.children.length === 0) continue;
      const same = byName.get(node.name);
      if (same) same.push(node);
      else byName.set(node.name, [node]);
    }
    const [most] = [...byName.values()].sort((a, b) => b.length - a.length);
    if (most && most.length > 1) return most;
    if (most && leaves(most) > leaves(single)) single = most;
    level = level.flatMap(({ children }) => children);
  }
  // A feed of one part.
  return single;
}

const leaves = ([node]: readonly Node[]) =>
  node?.children.filter(({ children }) => children.length === 0).length ?? 0;

function put(cells: Map<string, string>, node: Node, way: string): void {
  for (const child of node.children) {
    const name = way ? `${way} ${child.name}` : child.name;
    const text = decodeHTMLStrict(child.text.trim());
    if (text) {
      const before = cells.get(name);
      cells.set(name, before ? `${before}\n${text}` : text);
    }
    for (const [key, value] of child.attributes) {
      const own = child.children.length === 0 && !text ? name : `${name} ${key}`;
      if (!cells.has(own) && value) cells.set(own, value);
    }
    put(cells, child, name);
  }
}
