import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const said = "It leaks, and I don’t get any ICE";

const field = (panel: PanelPage) =>
  panel.host.getByRole("textbox", { name: panel.text("ui.own-words"), exact: true });
const suggested = (panel: PanelPage) => panel.host.locator(".own-words").getByRole("button");
const status = (panel: PanelPage) => panel.host.locator(".own-words").getByRole("status");
const answerText = (panel: PanelPage, id: string) => panel.text(`checks.opening.symptom.answers.${id}`);

test.describe("own words for what is going wrong", () => {
  test.beforeEach(({ panel }) => panel.openWhere("opening.symptom", { "opening.danger": "none" }));

  test("bring answers nearer, choose none of them, and are sent nowhere, nor kept with the answers", async ({
    panel,
    page,
  }) => {
    const kept = await panel.storedText();
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await field(panel).tap();
    await field(panel).pressSequentially(said);
    await expect(suggested(panel)).toHaveText([answerText(panel, "leaking"), answerText(panel, "no-ice")]);
    await expect(status(panel)).toHaveText(panel.text("ui.own-words-found", { count: 2 }));
    await expect(field(panel)).toHaveValue(said);
    await expect(field(panel)).toBeFocused();
    await panel.seesTurn();
    expect(await panel.storedText()).toBe(kept);
    expect(asked.filter((url) => !/\/axe\.min\.js$|\/parts\/[\w-]+\.(?:js|json)$/.test(url))).toEqual([]);
    await suggested(panel).first().tap();
    await panel.took({ type: "answered", turn: "opening.symptom", answer: "leaking", at: await panel.now() });
    expect(panel.turn.turn).toBe("opening.leak");
    expect(await panel.storedText()).not.toContain("leaks");
  });

  test("can be typed and their suggestion given by keyboard alone", async ({ panel, page }) => {
    await field(panel).focus();
    await page.keyboard.type("the cubes taste odd");
    await page.keyboard.press("Tab");
    await expect(suggested(panel)).toBeFocused();
    await page.keyboard.press("Enter");
    await panel.took({ type: "answered", turn: "opening.symptom", answer: "odd-ice", at: await panel.now() });
  });

  test("that nothing fits lead back to the list; those of danger to the way to report it", async ({
    panel,
  }) => {
    await field(panel).fill("My neighbour's dog barks at it");
    const notSure = answerText(panel, "not-sure");
    await expect(status(panel)).toHaveText(panel.text("ui.own-words-none", { notSure }));
    await expect(suggested(panel)).toHaveCount(0);
    await panel.seesTurn();
    await field(panel).fill("There are sparks at the plug");
    const danger = panel.text("ui.danger");
    await expect(status(panel)).toHaveText(panel.text("ui.own-words-danger", { danger }));
    await expect(suggested(panel)).toHaveCount(0);
    await panel.seesTurn();
    await panel.reportDanger("sparks");
  });

  test("are typed into a field that no phone enlarges, above buttons for a thumb, none of them clipped", async ({
    panel,
    page,
  }) => {
    // The browser's own spelling check may send words away.
    expect(await field(panel).evaluate((input: HTMLInputElement) => input.spellcheck)).toBe(false);
    for (const width of [320, 360]) {
      await page.setViewportSize({ width, height: 640 });
      await field(panel).fill("We moved, no ice comes out and the cubes taste odd");
      await expect(suggested(panel)).toHaveCount(3);
      const targets = [field(panel), ...(await suggested(panel).all())];
      for (const target of targets) {
        const found = await target.evaluate((element) => ({
          size: Number.parseFloat(getComputedStyle(element).fontSize),
          height: element.getBoundingClientRect().height,
          hidden: element.localName === "button" ? element.scrollWidth - element.clientWidth : 0,
          right: innerWidth - element.getBoundingClientRect().right,
        }));
        // iPhones enlarge a page for a field under 16 px; 44 px: WCAG 2.2, 2.5.5 Target Size (Enhanced).
        expect(found.size).toBeGreaterThanOrEqual(16);
        expect(found.height).toBeGreaterThanOrEqual(44);
        expect(found.hidden).toBe(0);
        expect(found.right).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test("stay in the field when the connection goes and the panel is drawn again", async ({ panel, page }) => {
    await field(panel).fill(said);
    await panel.hasEverything();
    await page.context().setOffline(true);
    await panel.seesNotice("offline");
    await expect(field(panel)).toHaveValue(said);
    await page.context().setOffline(false);
    await expect(suggested(panel)).toHaveCount(2);
  });
});

test("no other question of the opening has the field", async ({ panel }) => {
  await panel.open();
  await expect(field(panel)).toHaveCount(0);
  await panel.answer("none");
  await expect(field(panel)).toBeVisible();
  await panel.answer("not-sure");
  await expect(field(panel)).toHaveCount(0);
});
