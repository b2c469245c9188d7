import type { Locator } from "@playwright/test";
import { atModelOfBin } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const machines = ["top-freezer", "bottom-freezer", "side-by-side", "french-door"] as const;
const codeField = (panel: PanelPage) =>
  panel.host.getByRole("textbox", { name: panel.text("measure.code-label") });
const pickMachine = (panel: PanelPage, machine: string) =>
  panel.host.getByText(panel.text(`measure.machine-${machine}`), { exact: true }).tap();
const placesOn = (panel: PanelPage, machine: string) => panel.text(`measure.plate-${machine}`).split("\n");

/** The smallest side of what a thumb has to hit, in CSS px. */
async function smallestSide(targets: Locator): Promise<number> {
  const boxes = await targets.evaluateAll((all) => all.map((each) => each.getBoundingClientRect()));
  return Math.min(...boxes.flatMap(({ width, height }) => [width, height]));
}

test.describe("finding the plate", () => {
  test.beforeEach(({ panel }) => panel.openAt(atModelOfBin()));

  test("starts below the field and below the way on without a code", async ({ panel }) => {
    const field = await codeField(panel).boundingBox();
    const lost = await panel.button(panel.text("measure.plate-lost")).boundingBox();
    const finder = await panel.host.getByText(panel.text("measure.plate-where")).boundingBox();
    expect(field?.y).toBeLessThan(lost?.y ?? 0);
    expect(lost?.y).toBeLessThan(finder?.y ?? 0);
    await panel.seesTurn();
  });

  for (const machine of machines) {
    test(`${machine}: its places are drawn and listed, and nobody is shut out from them`, async ({
      panel,
      page,
    }) => {
      await pickMachine(panel, machine);
      const drawing = panel.host.getByRole("img", { name: panel.text(`pictures.shows.plate-${machine}`) });
      await expect(drawing).toBeVisible();
      for (const place of placesOn(panel, machine))
        await expect(panel.host.getByRole("listitem").getByText(place)).toBeVisible();
      await panel.seesTurn();
      await page.setViewportSize({ width: 320, height: 640 });
      await panel.seesTurn();
    });
  }

  test("can be done by keyboard, and its targets are large enough for a thumb", async ({ panel, page }) => {
    // 44 px: WCAG 2.2, 2.5.5.
    expect(await smallestSide(panel.host.locator(".plate label, .plate summary"))).toBeGreaterThanOrEqual(44);
    await panel.button(panel.text("measure.plate-lost")).focus();
    // The first heading that opens and shuts, then the machines as one group.
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    await page.keyboard.press("ArrowDown");
    await expect(panel.host.getByText(placesOn(panel, "bottom-freezer")[0] as string)).toBeVisible();
  });

  test("is out of the way once a code is typed, and there again after a code that nobody knows", async ({
    panel,
  }) => {
    await pickMachine(panel, "french-door");
    await panel.findModel("QQQ 999 999");
    const place = panel.host.getByText(placesOn(panel, "french-door")[0] as string);
    await expect(place).toBeHidden();
    await panel.host.getByText(panel.text("measure.plate-where")).tap();
    await expect(place).toBeVisible();
    await panel.seesTurn();
  });

  test("a serial number typed for the code is said to be rather that", async ({ panel }) => {
    await panel.findModel("9250314480");
    const words = panel.text("measure.model-digits", { typed: "9250314480" });
    await expect(panel.host.getByText(words)).toBeVisible();
  });
});
