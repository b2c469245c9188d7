import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { sessionAt } from "./expected.ts";
import { differencesBetween } from "./look-of.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { demoFolder } from "./site.ts";

/** How wide the panel's column is, and what height is kept free for it, are the page's own affair. */
const column = `
  main { all: revert !important; display: block !important; width: 340px !important; }
  fridgeside-panel { min-height: 0 !important; }
`;

/** Has the demo's page take other rules than its own. */
const dress = (page: Page, rules: string) =>
  page.route("**/hostile.css", (route) => route.fulfill({ body: rules + column, contentType: "text/css" }));

const sheets: [string, string][] = [
  ["the demo's hostile page", `${demoFolder}/hostile.css`],
  ...["empty", "star", "tag", "revert", "inherited"].map((name): [string, string] => [
    `hostile-${name}`,
    `${import.meta.dirname}/pages/hostile-${name}.css`,
  ]),
];

test.describe("a host page that means no good", () => {
  for (const [name, sheet] of sheets)
    for (const turn of ["opening.symptom", "flow-test.run"])
      test(`${name} changes nothing about how ${turn} looks`, async ({ page, context }) => {
        const session = sessionAt(turn);
        const plain = new PanelPage(page, { axe: false, sessionName: "hostile" });
        await dress(page, "");
        await plain.openAt(session, "hostile.html");
        const other = new PanelPage(await context.newPage(), { axe: false, sessionName: "hostile" });
        await dress(other.page, readFileSync(sheet, "utf8"));
        await other.page.clock.install({ time: await plain.now() });
        await other.page.goto("hostile.html");
        await expect(other.heading).toHaveText(other.text(`checks.${turn}.ask`));
        // Whether it looks light or dark is what a page may decide.
        for (const { host } of [plain, other])
          await host.evaluate((tag) => tag.setAttribute("theme", "light"));
        expect(await differencesBetween(plain.host, other.host)).toEqual([]);
      });

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
