import { sessionAt } from "./expected.ts";
import { differencesBetween } from "./look-of.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

test.describe("a host page that means no good", () => {
  for (const hostile of [
    "hostile-empty",
    "hostile-star",
    "hostile-tag",
    "hostile-revert",
    "hostile-inherited",
  ]) {
    for (const turn of ["opening.symptom", "flow-test.run"]) {
      test(`${hostile} changes nothing about how ${turn} looks`, async ({ page, context }) => {
        const session = sessionAt(turn);
        const plain = new PanelPage(page, { axe: false });
        await plain.openAt(session, "plain.html");
        const other = new PanelPage(await context.newPage(), { axe: false });
        await other.page.clock.install({ time: await plain.now() });
        await other.page.goto(`${hostile}.html`);
        await expect(other.heading).toHaveText(other.text(`checks.${turn}.ask`));
        // Whether it looks light or dark is what a page may decide.
        for (const { host } of [plain, other])
          await host.evaluate((tag) => tag.setAttribute("theme", "light"));
        expect(await differencesBetween(plain.host, other.host)).toEqual([]);
      });
    }
  }

  for (const width of [320, 360, 1280]) {
    test(`in a centred column of a page ${width} px wide the panel takes the room that there is`, async ({
      panel,
      page,
    }) => {
      await page.setViewportSize({ width, height: 740 });
      await panel.open("flex.html");
      const box = await panel.host.boundingBox();
      expect(box?.width).toBeGreaterThanOrEqual(Math.min(width, 640));
      expect(box?.width).toBeLessThanOrEqual(width);
    });
  }
});
