import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Switched on at nine: the 24 hours of flows/limits.yaml end at nine next day. */
async function startsToWait(panel: PanelPage): Promise<void> {
  await panel.openWhere("ice-maker-switch.switch-on", { "opening.symptom": "no-ice" });
  await panel.answer("switched-on");
  await panel.goTo("wait-for-ice.wait");
}

/** What a wait says of the time that is left. */
function leftOf(panel: PanelPage, hours: number, minutes: number): string {
  if (!hours) return panel.text("measure.wait-minutes", { count: minutes });
  if (!minutes) return panel.text("measure.wait-hours", { count: hours });
  return panel.text("measure.wait-left", { hours, minutes });
}

async function seesLeft(panel: PanelPage, hours: number, minutes: number): Promise<void> {
  await expect(panel.host.getByText(leftOf(panel, hours, minutes), { exact: true })).toBeVisible();
}

test.describe("waiting", () => {
  test("the time that is left is shown and goes down, and the next question comes when it is over", async ({
    panel,
  }) => {
    await startsToWait(panel);
    await seesLeft(panel, 24, 0);
    await panel.reload();
    await panel.sleep(5);
    await seesLeft(panel, 19, 0);
    await panel.sleep(18.5);
    await seesLeft(panel, 0, 30);
    await panel.sleep(1);
    expect(panel.turn.turn).toBe("wait-for-ice.came");
    await panel.answer("no-ice");
    expect(["choice", "reading", "gate"], "the search goes on").toContain(panel.turn.kind);
  });

  test("somebody who comes back too early is still waiting, and is welcomed", async ({ panel }) => {
    await startsToWait(panel);
    await panel.comeBackAfter(23);
    await panel.seesNotice("welcome-back");
    expect(panel.turn.turn).toBe("wait-for-ice.wait");
    await seesLeft(panel, 1, 0);
  });

  test("a tap at a wait that ran out while the phone slept is not taken for an answer to it", async ({
    panel,
  }) => {
    await startsToWait(panel);
    const early = panel.button(panel.text("checks.wait-for-ice.wait.answers.keep-checking"));
    await expect(early).toBeVisible();
    // The clock alone goes on: no timer has told the panel yet.
    await panel.page.clock.setSystemTime("2026-03-03T10:00:00Z");
    await early.tap();
    await expect(panel.heading).toHaveText(panel.text("checks.wait-for-ice.came.ask"));
    expect(await panel.storedEvents()).toContainEqual({ type: "wait-ended" });
  });

  test("one that ends while the panel is open says so once, and leads to its question as a tap does", async ({
    panel,
  }) => {
    await startsToWait(panel);
    await panel.sleep(24.1);
    expect(panel.turn.turn).toBe("wait-for-ice.came");
    await expect(panel.heading).toBeFocused();
    const said = panel.host.getByRole("status").filter({ hasText: panel.text("notices.wait-ended") });
    await expect(said).toHaveCount(1);
    await panel.seesTurn();
    await panel.answer("no-ice");
    await expect(said).toHaveCount(0);
  });

  test("one that ends while somebody types elsewhere on the page leaves them the focus", async ({
    panel,
    page,
  }) => {
    await startsToWait(panel);
    await page.evaluate(() => document.body.prepend(document.createElement("input")));
    const search = page.locator("body > input");
    await search.focus();
    await panel.sleep(24.1);
    await panel.seesNotice("wait-ended");
    await expect(search).toBeFocused();
  });

  test("the hours of a day's ice are filled in as they were waited, and can be typed over", async ({
    panel,
  }) => {
    await panel.openWhere("ice-count.wait");
    const from = panel.turn.wait?.from ?? "";
    await panel.sleep(30);
    expect(panel.turn.turn).toBe("ice-count.count");
    const hours = panel.host.getByRole("textbox", { name: panel.text("measure.ice-hours-pieces") });
    const waited = (Date.parse(await panel.now()) - Date.parse(from)) / 3_600_000;
    expect(waited).toBeGreaterThan(29);
    await expect(hours).toHaveValue(`${Math.round(10 * waited) / 10}`);
    await expect(panel.host.getByText(panel.text("measure.ice-hours-timed"))).toBeVisible();
    await panel.seesTurn();
    await panel.measure({ kind: "ice", by: "pieces", amount: 40, hours: 20, wanted: null });
  });

  for (const [zone, hour] of [
    ["America/Los_Angeles", /1:00/],
    ["Asia/Kathmandu", /14:45|2:45/],
  ] as const) {
    test(`in ${zone} the wait ends at the same instant, told by that place's clock`, async ({
      panel,
      browser,
      site,
    }) => {
      await startsToWait(panel);
      const until = (await panel.host.locator("time").getAttribute("datetime")) ?? "";
      const context = await browser.newContext({
        storageState: await panel.page.context().storageState(),
        timezoneId: zone,
        locale: "en-GB",
        viewport: { width: 360, height: 740 },
        hasTouch: true,
        baseURL: site,
      });
      const page = await context.newPage();
      await page.clock.install({ time: Date.parse(until) - 18 * 3_600_000 });
      const elsewhere = new PanelPage(page);
      await elsewhere.openAgain(panel.session);
      await seesLeft(elsewhere, 18, 0);
      const end = elsewhere.host.locator("time");
      await expect(end).toHaveAttribute("datetime", until);
      await expect(end).toHaveText(hour);
      await elsewhere.sleep(18.5);
      expect(elsewhere.turn.turn).toBe("wait-for-ice.came");
      await context.close();
    });
  }

  test("a night in which the clocks go forward is no hour shorter", async ({ panel }) => {
    // Summer time began in the United Kingdom at 01:00 UTC on Sunday 29 March 2026 (last Sunday in March).
    await panel.page.clock.setSystemTime("2026-03-28T20:00:00Z");
    await startsToWait(panel);
    await panel.sleep(23.75);
    await seesLeft(panel, 0, 15);
    await expect(panel.host.locator("time")).toHaveText(/21:00/);
  });
});
