import type { Page } from "@playwright/test";
import { expect, test } from "./panel-test.ts";

const keysIn = (page: Page) =>
  page.evaluate(() => [...Object.keys(localStorage), ...Object.keys(sessionStorage)].sort());
const keptIn = (page: Page, key: string) => page.evaluate((name) => localStorage.getItem(name) ?? "", key);
const record = "fridgeside:panel:machine";

test.describe("after the fix", () => {
  test.beforeEach(async ({ panel }) => {
    await panel.openWhere("ice-under-maker.look", { "opening.symptom": "no-ice" });
    await panel.answer("ice-there");
    await panel.confirmGate("at once");
    await panel.answer("removed");
    await panel.reportIce();
    await panel.seesEnding("fixed", { cause: "ice-jammed" });
    await expect(panel.host.getByText(panel.text("care.title"))).toBeVisible();
    await expect.poll(() => keptIn(panel.page, record)).toContain('"outcome":"fixed"');
  });

  test("it is asked a day later whether it still works, once; the page is told", async ({ panel, page }) => {
    const ask = panel.host.getByText(/Does it still work\?/);
    await expect(ask).toHaveCount(0);
    await page.evaluate(() => {
      const told: unknown[] = [];
      Object.assign(globalThis, { told });
      addEventListener("fridgeside-lasted", (event) => told.push((event as CustomEvent).detail));
    });
    await panel.comeBackAfter(25);
    await page.evaluate(() => {
      const told: unknown[] = [];
      Object.assign(globalThis, { told });
      addEventListener("fridgeside-lasted", (event) => told.push((event as CustomEvent).detail));
    });
    await expect(ask).toBeVisible();
    await panel.button(panel.text("care.ask.yes")).click();
    await expect(ask).toHaveCount(0);
    expect(await page.evaluate(() => (globalThis as { told?: unknown }).told)).toEqual([
      { outcome: "fixed", cause: "ice-jammed", works: true, days: 1 },
    ]);
    await panel.comeBackAfter(30);
    await panel.seesEnding("fixed", { cause: "ice-jammed" });
    await expect(panel.host.getByText(panel.text("care.title"))).toBeVisible();
    await expect(ask).toHaveCount(0);
  });

  test("a trouble that is back is gone on with", async ({ panel }) => {
    await panel.comeBackAfter(25);
    await panel.button(panel.text("care.ask.again")).click();
    await expect(panel.heading).not.toHaveText(panel.text("endings.fixed.heading"));
  });

  test("the record of the machine outlives 'Start again', and says so on a page", async ({ panel }) => {
    await panel.restart();
    await panel.button(panel.text("ui.menu")).click();
    await panel.button(panel.text("care.machine.open")).click();
    const page = panel.host.locator(".sum-up");
    await expect(page).toContainText(panel.text("care.machine.searches"));
    await expect(page).toContainText(panel.text("causes.ice-jammed.fixed"));
    await expect(panel.host.getByText(panel.text("care.machine.kept"))).toBeVisible();
  });

  test("a filter that is due is spoken of where the next search begins", async ({ panel, page }) => {
    await panel.host.getByText(panel.text("care.filter.title"), { exact: true }).click();
    await panel.button(panel.text("care.filter.changed")).click();
    await expect(panel.host.getByText(/The water filter is due on/)).toBeVisible();
    await panel.restart();
    await expect(panel.host.locator(".notices")).not.toContainText("filter");
    await page.clock.setSystemTime(Date.parse(await panel.now()) + 190 * 86_400_000);
    await page.reload();
    await expect(panel.host.locator(".notices")).toContainText(/The water filter was due on/);
  });

  test("one tap forgets everything, and one more brings it back", async ({ panel, page }) => {
    await page.evaluate(() => {
      localStorage.setItem("fridgeside:other", "{}");
      localStorage.setItem("of-the-shop", "1");
    });
    await panel.button(panel.text("ui.menu")).click();
    await panel.button(panel.text("care.forget")).click();
    await expect(panel.host.locator(".notices")).toContainText(panel.text("notices.forgotten"));
    expect((await keysIn(page)).filter((key) => !key.startsWith("fridgeside:panel"))).toEqual([
      "of-the-shop",
    ]);
    expect(await keptIn(page, record)).toBe("");
    expect(await keptIn(page, "fridgeside:panel")).toContain('"entries":[]');
    await panel.button(panel.text("resumed.undo")).click();
    await expect(panel.heading).toHaveText(panel.text("endings.fixed.heading"));
    expect(await keptIn(page, record)).toContain('"outcome":"fixed"');
    expect(await keysIn(page)).toContain("fridgeside:other");
  });
});

test("nothing is forgotten at a stop: only 'Start again' ends it", async ({ panel }) => {
  await panel.open();
  await panel.reportDanger("gas");
  await panel.button(panel.text("ui.menu")).click();
  await expect(panel.button(panel.text("care.machine.open"))).toBeVisible();
  await expect(panel.button(panel.text("care.forget"))).toHaveCount(0);
});
