import { says } from "../greeting.ts";
import { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";
import { holdParts, parts } from "./held-back.ts";

const answer = (panel: PanelPage, id: string) =>
  panel.button(panel.text(`checks.opening.danger.answers.${id}`)).last();
const seesStop = async (panel: PanelPage, danger: string) => {
  await expect(panel.heading).toHaveText(panel.text(`dangers.${danger}.heading`));
  for (const line of panel.text(`dangers.${danger}.do`).split("\n"))
    await expect(panel.host.getByText(line.trim(), { exact: true })).toBeVisible();
};
const report = async (panel: PanelPage, danger: string) => {
  await panel.button(panel.text("ui.danger")).tap();
  await panel
    .button(panel.text(`checks.opening.danger.answers.${danger}`))
    .first()
    .tap();
};
const restart = async (panel: PanelPage) => {
  await panel.opensMenu("restart");
  await panel.button(panel.text("ui.restart-yes")).tap();
};

test.describe("a danger while the rest of the script is still on its way", () => {
  for (const danger of ["burning", "sparks", "water-near-socket", "gas", "shock"])
    test(`${danger} shows its stop at once, and still does when the rest has come`, async ({
      panel,
      page,
    }) => {
      const { release } = await holdParts(page);
      await page.goto("index.html");
      await says(panel);
      await answer(panel, danger).tap();
      await seesStop(panel, danger);
      await expect(panel.heading).toBeFocused();
      const before = await panel.heading.boundingBox();
      const last = panel.host.getByText(panel.text(`dangers.${danger}.do`).split("\n").at(-1)?.trim() ?? "");
      const below = await last.boundingBox();
      release();
      await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
      await seesStop(panel, danger);
      await expect(panel.heading).toBeFocused();
      expect(await panel.heading.boundingBox()).toEqual(before);
      expect(await last.boundingBox()).toEqual(below);
      await page.reload();
      await seesStop(panel, danger);
      await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    });

  test("one that another tab has reported since is not cleared by a 'start again' that was tapped before it", async ({
    panel,
    page,
    context,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await restart(panel);
    const elsewhere = await context.newPage();
    const other = new PanelPage(elsewhere);
    await elsewhere.goto("index.html");
    await says(other);
    await answer(other, "gas").tap();
    await seesStop(other, "gas");
    // It shows here at once, too, with nothing of the rest there.
    await seesStop(panel, "gas");
    release();
    await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    await seesStop(panel, "gas");
    await elsewhere.reload();
    await seesStop(other, "gas");
  });

  test("a danger after 'nothing dangerous' wins over it, within the same second", async ({ panel, page }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await says(panel);
    await answer(panel, "none").tap();
    await report(panel, "gas");
    await seesStop(panel, "gas");
    release();
    await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    await seesStop(panel, "gas");
    expect(await panel.storedEvents()).toEqual([{ type: "danger-reported", danger: "gas" }]);
  });

  test("'not sure' at the first question is asked once more, and then stops as well", async ({
    panel,
    page,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await says(panel);
    await panel.button(panel.text("standing.not-sure")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.danger-again.ask"));
    await panel.button(panel.text("standing.not-sure")).tap();
    await seesStop(panel, "not-sure");
    release();
    await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    await seesStop(panel, "not-sure");
  });

  test("it is reported by the way out at the top, as somebody who comes back does", async ({
    panel,
    page,
  }) => {
    await panel.open();
    await panel.goTo("opening.supply");
    const kept = await panel.storedText();
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await expect(panel.host.getByText(panel.text("ui.loading"))).toBeVisible();
    await report(panel, "shock");
    await seesStop(panel, "shock");
    await expect(panel.heading).toBeFocused();
    expect(await panel.storedText()).toBe(kept);
    release();
    await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    await seesStop(panel, "shock");
    await expect(panel.heading).toBeFocused();
  });

  test("after it nothing does anything but 'start again', which asks the first question", async ({
    panel,
    page,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await says(panel);
    await answer(panel, "gas").tap();
    await seesStop(panel, "gas");
    await expect(panel.host.getByRole("button")).toHaveText([panel.text("ui.menu")]);
    await restart(panel);
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await says(panel);
    await answer(panel, "none").tap();
    release();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    await expect.poll(() => panel.storedText()).not.toBeNull();
    await page.reload();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
  });
});

test.describe("a danger without a connection", () => {
  test.use({ expectedFaults: /ERR_INTERNET_DISCONNECTED|could not be loaded; trying again/ });

  test("is stopped for, now and after a reload, though nothing else ever comes", async ({ panel, page }) => {
    await page.route(parts, (route) => route.abort("internetdisconnected"));
    await page.goto("index.html");
    await says(panel);
    await answer(panel, "none").tap();
    await report(panel, "sparks");
    await seesStop(panel, "sparks");
    await page.reload();
    await seesStop(panel, "sparks");
    await expect(panel.host.getByText(panel.text("ui.loading"))).toHaveCount(0);
  });

  test("a mark that cannot be read stops as one that nobody was sure of", async ({ panel, page }) => {
    await page.route(parts, (route) => route.abort("internetdisconnected"));
    await page.goto("blank.html");
    await page.evaluate(() => localStorage.setItem("fridgeside:panel:stop", "{{{"));
    await page.goto("index.html");
    await seesStop(panel, "not-sure");
  });

  test("a danger of another flow stops with the general advice", async ({ panel, page }) => {
    await page.route(parts, (route) => route.abort("internetdisconnected"));
    await page.goto("blank.html");
    await page.evaluate(() =>
      localStorage.setItem(
        "fridgeside:panel:stop",
        JSON.stringify({ danger: "constructor", at: "2026-01-01T00:00:00Z" }),
      ),
    );
    await page.goto("index.html");
    await seesStop(panel, "general");
  });
});
