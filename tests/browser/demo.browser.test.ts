import { readdirSync, readFileSync } from "node:fs";
import { violationsOn } from "./axe.ts";
import { expect, test } from "./panel-test.ts";
import { demoFolder } from "./site.ts";

const htmlIn = (folder: string) =>
  readdirSync(`${demoFolder}/${folder}`)
    .filter((name) => name.endsWith(".html"))
    .map((name) => folder + name);
const ways = htmlIn("ways/");
const pages = [...htmlIn(""), ...ways];

test("the list of ways names each page once, in a sentence", async ({ page }) => {
  await page.goto("ways/index.html");
  const items = await page.getByRole("listitem").evaluateAll((all) =>
    all.map((item) => ({
      path: new URL(item.querySelector("a")?.href ?? "", location.href).pathname.slice(1),
      says: item.textContent?.replace(item.querySelector("a")?.textContent ?? "", "") ?? "",
    })),
  );
  const listed = items.map(({ path }) => path).sort();
  // The shop's help page embeds nothing.
  expect(listed).toEqual(pages.filter((path) => !/^(help|ways\/index)\.html$/.test(path)).sort());
  for (const { path, says } of items) expect(says, path).toMatch(/^: .*\.$/);
});

test("no page of the demo has code or rules in its markup", () => {
  for (const name of pages)
    expect(readFileSync(`${demoFolder}/${name}`, "utf8"), name).not.toMatch(
      /<script(?![^>]* src=)|<style|\s(on\w+|style)=/,
    );
});

// What is asked for and isn't there is what that page is about.
test.use({ expectedFaults: /404.*nothing-here/ });

for (const name of pages) {
  test(`the demo page ${name} fits every width, has no fault, and its links lead somewhere`, async ({
    page,
    request,
  }) => {
    await page.goto(name);
    const panels = page.locator("fridgeside-panel:defined");
    for (const panel of await panels.all())
      await expect(panel.getByRole("heading", { level: 2 })).toBeVisible();
    for (const width of [320, 360, 768, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(tooWide, `${width} px`).toBeLessThan(1);
    }
    // The one search that is shown twice has one name.
    const isTwice = name === "ways/tag-manager.html";
    const found = await violationsOn(page, name);
    expect(found.filter((each) => !(isTwice && each.startsWith("landmark-unique")))).toEqual([]);
    const links = await page
      .getByRole("link")
      .evaluateAll((all) => all.map((each) => (each as HTMLAnchorElement).href));
    const own = links.filter((link) => new URL(link).origin === new URL(page.url()).origin);
    for (const link of new Set(own)) expect((await request.get(link)).status(), link).toBe(200);
  });
}
