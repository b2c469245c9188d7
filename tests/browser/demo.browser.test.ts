import { readdirSync } from "node:fs";
import { violationsOn } from "./axe.ts";
import { expect, test } from "./panel-test.ts";
import { demoFolder } from "./site.ts";

const pages = readdirSync(demoFolder).filter((name) => name.endsWith(".html"));

for (const name of pages) {
  test(`the demo page ${name} fits every width, has no fault, and its links lead somewhere`, async ({
    page,
    request,
  }) => {
    await page.goto(name);
    const panels = page.locator("fridgeside-panel");
    for (const panel of await panels.all())
      await expect(panel.getByRole("heading", { level: 2 })).toBeVisible();
    for (const width of [320, 360, 768, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(tooWide, `${width} px`).toBeLessThan(1);
    }
    expect(await violationsOn(page, name)).toEqual([]);
    const links = await page
      .getByRole("link")
      .evaluateAll((all) => all.map((each) => (each as HTMLAnchorElement).href));
    const own = links.filter((link) => new URL(link).origin === new URL(page.url()).origin);
    for (const link of new Set(own)) expect((await request.get(link)).status(), link).toBe(200);
  });
}
