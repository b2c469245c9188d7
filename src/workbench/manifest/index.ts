/** A row of a table in README: its first cell's names, and what the second says. */
type Row = { name: string; text: string };

/**
 * The panel's tag for editors and catalogues of elements, in the shape of the open schema "Custom Elements Manifest",
 * version 1.0.0, of README's own tables: what a shop reads there is what its editor says.
 * @throws Error where README lacks one of the two tables
 */
export function createManifest(readme: string): object {
  const attributes = rowsUnder(readme, "attribute");
  const events = rowsUnder(readme, "event");
  const path = "dist/fridgeside.js";
  return {
    schemaVersion: "1.0.0",
    modules: [
      {
        kind: "javascript-module",
        path,
        declarations: [
          {
            kind: "class",
            customElement: true,
            name: "FridgesidePanel",
            tagName: "fridgeside-panel",
            description: "A chat that finds out why an ice maker makes no ice, or too little.",
            superclass: { name: "HTMLElement" },
            attributes: attributes.map(({ name, text }) => ({
              name,
              type: { text: "string" },
              description: text,
            })),
            events: events.map(({ name, text }) => ({
              name,
              type: { text: "CustomEvent" },
              description: text,
            })),
          },
        ],
        exports: [
          {
            kind: "custom-element-definition",
            name: "fridgeside-panel",
            declaration: { name: "FridgesidePanel", module: path },
          },
        ],
      },
    ],
  };
}

/** The rows of the table whose head begins with that word. */
function rowsUnder(readme: string, head: string): Row[] {
  const lines = readme.split("\n");
  const at = lines.findIndex((line) => line.startsWith(`| ${head}`));
  if (at < 0) throw new Error(`README has no table of each ${head}`);
  const end = lines.findIndex((line, index) => index > at && !line.startsWith("|"));
  return lines.slice(at + 2, end).flatMap((line) => {
    const [, names = "", text = ""] = line.split(/(?<!\\)\|/);
    return [...names.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => ({ name, text: text.trim() }));
  });
}
