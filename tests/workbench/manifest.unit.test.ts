import { describe, expect, test } from "vitest";
import { createManifest } from "../../src/workbench/manifest/index.ts";

const attributes = "| attribute | meaning |\n| --- | --- |\n| `a`, `b-c` | what both mean |\n\nMore.\n";
const events = "| event | `detail` | when |\n| --- | --- | --- |\n| `x-ended` | `outcome` | at the end |\n";

describe("a manifest of the panel's tag", () => {
  test("has each name of a row with what the row says, and nothing of the text around", () => {
    expect(createManifest(attributes, events)).toMatchObject({
      schemaVersion: "1.0.0",
      modules: [
        {
          declarations: [
            {
              tagName: "fridgeside-panel",
              attributes: [
                { name: "a", description: "what both mean" },
                { name: "b-c", description: "what both mean" },
              ],
              events: [{ name: "x-ended", description: "at the end" }],
            },
          ],
        },
      ],
    });
  });

  test("is not made of pages that lack a table", () => {
    expect(() => createManifest("No table.", events)).toThrow("no table of each attribute");
  });
});
