import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, test } from "./panel-test.ts";
import { builtFolder } from "./site.ts";

/** A shop's page with what the build wrote to be pasted, with the folder's own address put in. */
async function servePasted(page: Page, site: string): Promise<void> {
  const [snippet = ""] = readFileSync(`${builtFolder}/to-paste.html`, "utf8").split("<!-- en-US");
  const body = `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Shop</title>
    <main><h1>Ice</h1>${snippet.replaceAll("https://cdn.example/fridgeside/", new URL("/", site).href)}</main></html>`;
  await page.route("**/pasted.html", (route) => route.fulfill({ contentType: "text/html", body }));
}

const change = (page: Page, path: string) =>
  page.route(path, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: `window.isForeign = true;\n${await response.text()}` });
  });
const isForeign = (page: Page) => page.evaluate(() => "isForeign" in window);

test.describe("what a build writes to be pasted", () => {
  test("loads the panel, and a search goes on in it", async ({ page, panel, site }) => {
    await servePasted(page, site);
    await panel.open("pasted.html");
    await panel.says();
    await panel.answer("none");
    await panel.seesTurn();
  });

  test.describe("where a file was changed on the way", () => {
    test.use({ expectedFaults: /integrity|could not be loaded; trying again/ });

    test("the browser runs none of it: not the first file, whose page shows its own words", async ({
      page,
      site,
    }) => {
      await servePasted(page, site);
      await change(page, "**/fridgeside.en-GB.*.js");
      await page.goto("pasted.html");
      await page.waitForLoadState("networkidle");
      expect(await page.evaluate(() => Boolean(customElements.get("fridgeside-panel")))).toBe(false);
      expect(await isForeign(page)).toBe(false);
    });

    test("nor what it loads later: the opening stands, a danger is stopped for, and no changed line has run", async ({
      page,
      panel,
      site,
    }) => {
      await servePasted(page, site);
      await change(page, "**/parts/engine-*.js");
      const told = page.waitForEvent("console", (message) => /integrity/.test(message.text()));
      await page.goto("pasted.html");
      await told;
      await panel.button(panel.text("ui.danger")).tap();
      await panel.button(panel.text("checks.opening.danger.answers.gas")).first().tap();
      await expect(panel.heading).toHaveText(panel.text("dangers.gas.heading"));
      expect(await isForeign(page)).toBe(false);
    });
  });
});
