import { readFileSync } from "node:fs";
import type { Download } from "@playwright/test";
import ICAL from "ical.js";
import { violationsOn } from "./axe.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Switched on now; its three stages and the end of the wait come from flows/. */
async function startsToWait(panel: PanelPage): Promise<void> {
  await panel.openWhere("ice-maker-switch.switch-on", { "opening.symptom": "no-ice" });
  await panel.answer("switched-on");
  await panel.goTo("wait-for-ice.wait");
}

const stageAt = (panel: PanelPage, index: number) =>
  panel.host
    .getByRole("listitem")
    .filter({ hasText: panel.turn.wait?.inside[index]?.text ?? "no such stage" });
const stagesOf = (panel: PanelPage) => panel.turn.wait?.inside.map((_, index) => stageAt(panel, index)) ?? [];

/** Which stage is marked as the present one, and which are said to be done. */
async function seesStage(panel: PanelPage, present: number): Promise<void> {
  const stages = stagesOf(panel);
  expect(stages).toHaveLength(3);
  for (const [index, stage] of stages.entries()) {
    if (index === present) await expect(stage).toHaveAttribute("aria-current", "step");
    else await expect(stage).not.toHaveAttribute("aria-current", /./);
    const now = panel.text("measure.wait-now");
    await expect(stage.getByText(now, { exact: true })).toHaveCount(index === present ? 1 : 0);
    await expect(stage.getByText(panel.text("measure.wait-done"))).toHaveCount(index < present ? 1 : 0);
  }
}

const seesLeft = (panel: PanelPage, hours: number, minutes: number) =>
  expect(
    panel.host.getByText(
      hours
        ? panel.text(minutes ? "measure.wait-left" : "measure.wait-hours", { hours, minutes, count: hours })
        : panel.text("measure.wait-minutes", { count: minutes }),
      { exact: true },
    ),
  ).toBeVisible();

test.describe("what goes on inside during a wait", () => {
  test("moves on with the hours, and nothing on the screen jumps", async ({ panel }) => {
    await startsToWait(panel);
    const boxes = async () => Promise.all(stagesOf(panel).map((stage) => stage.boundingBox()));
    await seesStage(panel, 0);
    const before = await boxes();
    // Grown cold after four hours, first ice after six: flows/limits.yaml.
    await panel.sleep(4.1);
    await seesStage(panel, 1);
    expect(await boxes()).toEqual(before);
    await panel.sleep(2);
    await seesStage(panel, 2);
    expect(await boxes()).toEqual(before);
    await seesLeft(panel, 17, 54);
    await panel.comeBackAfter(17.5);
    await seesStage(panel, 2);
    await seesLeft(panel, 0, 24);
  });

  test("can be read by everybody, in light and in dark colours", async ({ panel, page }) => {
    await startsToWait(panel);
    await panel.sleep(5);
    await seesStage(panel, 1);
    for (const scheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      expect(await violationsOn(page, scheme), scheme).toEqual([]);
    }
  });

  test("on a phone that was taken to another time zone it is the same stage, told by that place's clock", async ({
    panel,
    browser,
    site,
  }) => {
    await startsToWait(panel);
    const context = await browser.newContext({
      storageState: await panel.page.context().storageState(),
      timezoneId: "Asia/Kathmandu",
      locale: "en-GB",
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      baseURL: site,
    });
    const page = await context.newPage();
    await page.clock.install({ time: Date.parse(panel.turn.wait?.from ?? "") + 5 * 3_600_000 });
    const elsewhere = new PanelPage(page);
    await elsewhere.openAgain(panel.session);
    await seesStage(elsewhere, 1);
    await seesLeft(elsewhere, 19, 0);
    // Switched on at 09:00 UTC on Monday 2 March 2026, six hours on, and 5:45 ahead: 20:45.
    await expect(stageAt(elsewhere, 2)).toContainText("Monday 20:45");
    await context.close();
  });

  test("in a night in which the clocks go forward each stage still takes its hours", async ({ panel }) => {
    // Summer time began in the United Kingdom at 01:00 UTC on Sunday 29 March 2026 (last Sunday in March).
    await panel.page.clock.setSystemTime("2026-03-28T20:00:00Z");
    await startsToWait(panel);
    // Six hours after 20:00 it is 02:00 in winter time, 03:00 by then.
    await expect(stageAt(panel, 1)).toContainText("Sunday 00:00");
    await expect(stageAt(panel, 2)).toContainText("Sunday 03:00");
    await panel.sleep(5.5);
    await seesStage(panel, 1);
    await panel.sleep(0.75);
    await seesStage(panel, 2);
    await seesLeft(panel, 17, 45);
  });
});

test.describe("a reminder of the end of a wait", () => {
  test("is a calendar file that another program reads, and breaks no policy of the page", async ({
    panel,
    page,
  }) => {
    await startsToWait(panel);
    const downloading = page.waitForEvent("download");
    await panel.button(panel.text("measure.reminder-offer")).tap();
    const file = await downloading;
    await expect(panel.host.getByText(panel.text("measure.reminder-made"))).toBeVisible();
    expect(file.suggestedFilename()).toBe("wait.ics");
    const entry = await entryIn(file);
    // RFC 5545 section 3.3.12: a time has whole seconds. The page's own end of the wait: its clock runs on while we look.
    const ends = await panel.host.locator("time").getAttribute("datetime");
    const until = Math.floor(Date.parse(ends ?? "") / 1000);
    expect(entry.startDate.toUnixTime()).toBe(until);
    expect(entry.startDate.zone).toBe(ICAL.Timezone.utcTimezone);
    expect(entry.summary).toBe(panel.turn.heading);
    expect(entry.description).toBe(panel.text("measure.wait-notes"));
    expect(entry.component.getFirstPropertyValue("url")).toBe(page.url());
    await expect(panel.host.locator("a[download]")).toHaveCount(0);
    await panel.seesTurn();
  });

  test("is the same entry when it is asked for again hours later", async ({ panel, page }) => {
    await startsToWait(panel);
    const uids: string[] = [];
    for (let time = 0; time < 2; time++) {
      const downloading = page.waitForEvent("download");
      await panel.button(panel.text("measure.reminder-offer")).tap();
      uids.push((await entryIn(await downloading)).uid);
      await panel.sleep(3);
    }
    // RFC 5545 section 3.8.4.7: the same UID is the same entry, so a calendar keeps one.
    expect(uids[1]).toBe(uids[0]);
  });

  test("says so where the browser makes no files", async ({ panel, page }) => {
    await page.addInitScript(() => {
      URL.createObjectURL = () => {
        throw new TypeError("denied");
      };
    });
    await startsToWait(panel);
    await panel.button(panel.text("measure.reminder-offer")).tap();
    await expect(panel.host.getByText(panel.text("measure.reminder-failed"))).toBeVisible();
    await panel.seesTurn();
  });
});

async function entryIn(file: Download) {
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(await file.path(), "utf8")));
  return new ICAL.Event(calendar.getFirstSubcomponent("vevent") ?? undefined);
}
