import type { Page } from "@playwright/test";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

// The demo's app, which draws its pages itself: the tag leaves with its page and comes back with it.

const help = (page: Page) => page.locator("header").getByRole("link", { name: "Ice maker help" });
const parts = (page: Page) => page.locator("header").getByRole("link", { name: "Parts" });

/** Opens the app at its own first page and goes on to the panel, as a visitor does. */
async function open(panel: PanelPage): Promise<void> {
  await panel.page.goto("blank.html");
  await panel.page.goto("ways/app.html");
  await help(panel.page).tap();
  await panel.seesTurn();
  await expect(panel.host.locator(".notices")).toBeAttached();
}

/** Listeners, nodes and documents that the browser has once nothing more can be cleared away. */
async function countersOf(page: Page): Promise<{ listeners: number; nodes: number; panels: number }> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("HeapProfiler.collectGarbage");
  const { nodes, jsEventListeners: listeners } = await cdp.send("Memory.getDOMCounters");
  const { result } = await cdp.send("Runtime.evaluate", {
    expression: "customElements.get('fridgeside-panel').prototype",
  });
  const { objects } = await cdp.send("Runtime.queryObjects", {
    prototypeObjectId: result.objectId ?? "",
  });
  const { result: own } = await cdp.send("Runtime.getProperties", {
    objectId: objects.objectId ?? "",
    ownProperties: true,
  });
  await cdp.detach();
  return { listeners, nodes, panels: own.filter(({ name }) => /^\d+$/.test(name)).length };
}

test("the tag comes back at the question where it was, and Back and Forward are the app's own", async ({
  panel,
  page,
}) => {
  await open(panel);
  await panel.says();
  await panel.answer("none");
  await parts(page).tap();
  await expect(panel.host).toHaveCount(0);
  await page.goBack();
  await panel.seesTurn();
  await panel.seesNotice("welcome-back");
  await panel.answer("plumbed");
  await page.goForward();
  await expect(panel.host).toHaveCount(0);
  await page.goBack();
  await panel.seesTurn();
  await page.goBack();
  await expect(page.getByRole("heading", { name: "Parts for ice makers" })).toBeVisible();
  await page.goBack();
  await expect(page).toHaveURL(/blank\.html$/);
});

test("full screen in it leaves the app's entries as they are", async ({ panel, page }) => {
  await open(panel);
  await panel.says();
  await panel.answer("none");
  await panel.button(panel.text("ui.menu")).tap();
  await panel.button(panel.text("thread.full")).tap();
  const dialog = panel.host.getByRole("dialog");
  await expect(dialog).toBeVisible();
  // The question before, in the same panel: the app has nothing to draw for it.
  await page.goBack();
  await expect(dialog).toBeVisible();
  await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
  // A script of the app leads elsewhere while it is open.
  await page.evaluate(() => document.querySelector<HTMLAnchorElement>("header [data-route]")?.click());
  await expect(page.getByRole("heading", { name: "Parts for ice makers" })).toBeVisible();
  await expect(panel.host).toHaveCount(0);
  await page.goBack();
  await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
  await expect(dialog).toHaveCount(0);
});

test("coming and going thirty times leaves no listener, no element and no panel behind", async ({
  panel,
  page,
}) => {
  await open(panel);
  await panel.says();
  await panel.hasEverything();
  const goAndCome = async () => {
    await parts(page).tap();
    await expect(panel.host).toHaveCount(0);
    await help(page).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
    await expect(panel.host.locator(".notices")).toBeAttached();
  };
  // What is made once and kept is made by now.
  for (let time = 0; time < 3; time++) await goAndCome();
  const before = await countersOf(page);
  expect(before.panels).toBe(1);
  for (let time = 0; time < 30; time++) await goAndCome();
  const after = await countersOf(page);
  expect(after.panels).toBe(1);
  expect(after.listeners).toBeLessThanOrEqual(before.listeners);
  expect(after.nodes).toBeLessThanOrEqual(before.nodes + 10);
});
