import { createPacks } from "../../src/cli/pack-command.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const pack = createPacks(readFlow(), readLocales())["en-GB"];

/** Opens a panel whose shop has flows of its own, answers the first question, and gives what the console warned of. */
async function openWithFlows(panel: PanelPage, body: string): Promise<string[]> {
  const { page } = panel;
  const warnings: string[] = [];
  page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
  await page.route("**/flows/en-GB.json", (route) => route.fulfill({ body }));
  await page.goto("no-panel.html");
  await page.evaluate(() => {
    const host = document.createElement("fridgeside-panel");
    host.setAttribute("flows", "/flows/");
    document.querySelector("#place")?.append(host);
  });
  await panel.seesTurn();
  await panel.says();
  await panel.answer("none");
  await panel.seesTurn();
  return warnings;
}

test.describe("a shop's own flows", () => {
  test("are used where nothing is wrong with them", async ({ panel }) => {
    expect(await openWithFlows(panel, JSON.stringify(pack))).toEqual([]);
  });

  for (const [what, body] of [
    ["are a page in place of a file", "<!doctype html><title>Not found</title>"],
    ["have no opening", JSON.stringify({ ...pack, start: { ...pack?.start, chart: undefined } })],
    ["have no texts", JSON.stringify({ ...pack, resources: undefined })],
  ] as const)
    test(`that ${what} leave the built-in ones, and one sentence`, async ({ panel }) => {
      expect(await openWithFlows(panel, body)).toEqual([
        expect.stringMatching(
          /^<fridgeside-panel>: attribute "flows": the built-in flows are used, because [^\n]*\.$/,
        ),
      ]);
    });
});
