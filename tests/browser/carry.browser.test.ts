import type { Page } from "@playwright/test";
import { violationsOn } from "./axe.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Opens what moves the search, and reads the link off what the share sheet is handed. */
async function linkFrom(panel: PanelPage): Promise<string> {
  await panel.button(panel.text("ui.menu")).tap();
  await panel.button(panel.text("carry.open")).tap();
  await expect(panel.host.getByRole("img", { name: panel.text("carry.code") })).toBeVisible();
  await panel.button(panel.text("carry.share")).tap();
  return panel.page.evaluate(() => (window as never as { shared: ShareData[] }).shared[0]?.url ?? "");
}

const keepsShared = (page: Page) =>
  page.addInitScript(() => {
    const shared: ShareData[] = [];
    Object.assign(window, { shared });
    Object.defineProperty(navigator, "share", { value: async (data: ShareData) => void shared.push(data) });
  });

/** A phone of its own, with nothing kept on it. */
async function otherPhone(page: Page, address: string): Promise<PanelPage> {
  const context = await page
    .context()
    .browser()
    ?.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true });
  const other = await (context as NonNullable<typeof context>).newPage();
  await other.goto(address);
  return new PanelPage(other);
}

/** Taps what goes on with the answers that were brought. */
const goOn = (panel: PanelPage) =>
  panel.host.getByRole("button", { name: panel.text("resumed.go-on", { date: "" }).trim() }).tap();

/** What was said on a phone, without the interruptions. */
const actsOn = async (panel: PanelPage) =>
  (await panel.storedEvents()).filter((event) => "turn" in event && event.turn);

test.describe("a search that moves to another phone", () => {
  test("goes on there where it was here, and the link is gone from the address", async ({ panel, page }) => {
    await keepsShared(page);
    await panel.openWhere("flow-test.run");
    const other = await otherPhone(page, await linkFrom(panel));
    await other.seesNotice("carried");
    await expect(other.page).not.toHaveURL(/#/);
    await goOn(other);
    await expect(other.host.getByRole("heading", { name: panel.turn.heading })).toBeFocused();
    await other.seesNotice("welcome-back");
    expect(await actsOn(other)).toEqual(await actsOn(panel));
    await other.page.context().close();
  });

  test("is behind its gates again there, though they were confirmed here a moment ago", async ({
    panel,
    page,
  }) => {
    await keepsShared(page);
    await panel.openWhere("filter-seated.look", { "opening.symptom": "no-ice" });
    const { heading } = panel.turn;
    await panel.confirmGate();
    expect(panel.turn.turn).toBe("filter-seated.look");
    const other = await otherPhone(page, await linkFrom(panel));
    await goOn(other);
    await expect(other.host.getByRole("heading", { name: heading })).toBeFocused();
    await expect(other.host.getByRole("checkbox").first()).not.toBeChecked();
    await other.page.context().close();
  });

  test("takes no place of a search that was begun there: either can be gone on with", async ({
    panel,
    page,
  }) => {
    await keepsShared(page);
    await panel.openWhere("flow-test.run");
    const link = await linkFrom(panel);
    const { heading } = panel.turn;
    await panel.openWhere("opening.supply");
    await page.goto("blank.html");
    await page.goto(link);
    await panel.seesNotice("carried");
    await expect(panel.host.getByRole("heading", { name: panel.turn.heading })).toBeVisible();
    await goOn(panel);
    await expect(panel.host.getByRole("heading", { name: heading })).toBeFocused();
    await expect(panel.host.getByText(panel.text("notices.carried"))).toHaveCount(0);
  });

  test("says that nobody has it yet, passes axe, and is shut again", async ({ panel, page }) => {
    await keepsShared(page);
    await panel.openWhere("flow-test.run");
    await linkFrom(panel);
    await expect(panel.host.getByText(panel.text("carry.private"))).toBeVisible();
    expect(await violationsOn(page), "axe").toEqual([]);
    await panel.button(panel.text("carry.close")).tap();
    await expect(panel.host.getByRole("img", { name: panel.text("carry.code") })).toHaveCount(0);
    await panel.seesTurn();
  });

  test("is read there on a page and nothing of it is gone on with, kept or changed", async ({
    panel,
    page,
  }) => {
    await keepsShared(page);
    await panel.openWhere("flow-test.run");
    const { heading } = panel.turn;
    const other = await otherPhone(page, await linkFrom(panel));
    await other.button(panel.text("ui.menu")).tap();
    await other.button(panel.text("carry.brought")).tap();
    const summary = other.host.locator(".sum-up");
    await expect(summary.getByText(panel.text("carry.part.open"))).toBeVisible();
    await expect(summary.getByText(heading)).toBeVisible();
    expect(await violationsOn(other.page), "axe").toEqual([]);
    expect(await actsOn(other)).toEqual([]);
    await other.button(panel.text("carry.close")).tap();
    await expect(summary).toHaveCount(0);
    // It is still there to be gone on with.
    await goOn(other);
    await expect(other.host.getByRole("heading", { name: heading })).toBeFocused();
    await other.page.context().close();
  });

  test("is summed up at any turn, for the share sheet and for one sheet of paper", async ({
    panel,
    page,
  }) => {
    await keepsShared(page);
    await panel.openWhere("flow-test.run");
    await panel.button(panel.text("ui.menu")).tap();
    await panel.button(panel.text("carry.sum-up")).tap();
    const summary = panel.host.locator(".sum-up");
    await expect(summary.getByText(panel.text("carry.part.likely"))).toBeVisible();
    expect(await violationsOn(page), "axe").toEqual([]);
    await panel.button(panel.text("carry.share-summary")).tap();
    const shared = await page.evaluate(() => (window as never as { shared: ShareData[] }).shared[0]?.text);
    expect(shared).toContain(panel.text("carry.part.found"));
    expect(shared).toContain(panel.turn.heading);
  });

  test("is not there to be moved before anything was answered", async ({ panel }) => {
    await panel.open();
    await panel.button(panel.text("ui.menu")).tap();
    await expect(panel.button(panel.text("ui.restart"))).toBeVisible();
    await expect(panel.button(panel.text("carry.open"))).toHaveCount(0);
  });

  for (const [name, text] of [
    ["was cut short", "7VPLTsMwELzzFdae"],
    ["holds something else", "eyJmb3JtYXQiOjJ9"],
    ["holds nothing", ""],
  ])
    test(`a link that ${name} is said to be broken, and all else is as ever`, async ({ panel, page }) => {
      await page.goto(`index.html#fridgeside=${text}`);
      await panel.seesNotice("link-broken");
      await expect(page).not.toHaveURL(/#/);
      await panel.says();
    });

  test("is brought by a link too that is opened in a tab with the page on it", async ({ panel, page }) => {
    await panel.open();
    await page.evaluate(() => {
      location.hash = "fridgeside=abc";
    });
    await panel.seesNotice("link-broken");
    await expect(page).not.toHaveURL(/#/);
  });

  test("a fragment of the page's own is left to the page", async ({ panel, page }) => {
    await panel.open("index.html#parts");
    await expect(page).toHaveURL(/#parts$/);
    await panel.seesTurn();
  });
});
