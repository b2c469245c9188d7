/** A row of a table: its first cell's names, and what the last one says. */
type Row = { name: string; text: string };

/**
 * The panel's tag for editors and catalogues of elements, in the shape of the open schema "Custom Elements Manifest",
 * version 1.0.0, of the tables that shops read: what stands there is what their editors say.
 * @param readme with the table of attributes
 * @param told with the table of events
 * @throws Error where a table is missing
 */
export function createManifest(readme: string, told: string): object {
  const attributes = rowsUnder(readme, "attribute");
  const events = rowsUnder(told, "event");
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
function rowsUnder(page: string, head: string): Row[] {
  const lines = page.split("\n");
  const at = lines.findIndex((line) => line.startsWith(`| ${head}`));
  if (at < 0) throw new Error(`There is no table of each ${head}`);
  const end = lines.findIndex((line, index) => index > at && !line.startsWith("|"));
  return lines.slice(at + 2, end).flatMap((line) => {
    const [, names = "", ...says] = line.split("|").slice(0, -1);
    return [...names.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => ({
      name,
      text: says.at(-1)?.trim() ?? "",
    }));
  });
}
