import { readdirSync } from "node:fs";
import { violationsOn } from "./axe.ts";
import { expect, test } from "./panel-test.ts";
import { demoFolder } from "./site.ts";

// The guide as `npm start` serves it: pages to be read, not files to be saved.

test("every page of the guide is one to read: it fits a phone and a desk, has no fault, and its links lead somewhere", async ({
  page,
  request,
}) => {
  for (const name of readdirSync(`${demoFolder}/docs`)) {
    await page.goto(`docs/${name}`);
    await expect(page.getByRole("heading", { level: 1 }), name).toHaveCount(1);
    for (const width of [320, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(tooWide, `${name} at ${width} px`).toBeLessThan(1);
    }
    // Each table is a region of its own that scrolls; that they share a name is no fault of a text's.
    const found = await violationsOn(page, name);
    expect(found.filter((each) => !each.startsWith("landmark-unique"))).toEqual([]);
    const links = await page
      .getByRole("link")
      .evaluateAll((all) => all.map((each) => (each as HTMLAnchorElement).href));
    for (const link of new Set(links.filter((each) => each.startsWith(new URL(page.url()).origin))))
      expect((await request.get(link)).status(), `${name}: ${link}`).toBe(200);
  }
});
