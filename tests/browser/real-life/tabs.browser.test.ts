import type { BrowserContext, Page } from "@playwright/test";
import { sessionAt } from "../expected.ts";
import { keptText } from "../kept-logs.ts";
import { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";

/** Another tab of the same browser, on the same session, with its clock at the same hour. */
async function openTab(
  context: BrowserContext,
  by: PanelPage,
  prepare: (page: Page) => Promise<unknown> = async () => {},
): Promise<PanelPage> {
  const page = await context.newPage();
  await prepare(page);
  await page.clock.install({ time: await by.now() });
  const panel = new PanelPage(page);
  await panel.openAgain(by.session);
  return panel;
}

/** The panel in this tab shows the same as the one in the other. */
async function showsAs(panel: PanelPage, other: PanelPage): Promise<void> {
  panel.session = other.session;
  await panel.seesTurn();
}

/** Keeps this log as if it had been left here; the page's clock stands at `now`. */
async function leave(page: Page, log: object, now: string): Promise<void> {
  await page.goto("blank.html");
  await page.evaluate((text) => localStorage.setItem("fridgeside:panel", text), keptText(log));
  await page.clock.setSystemTime(now);
}

test.describe("two tabs of one session", () => {
  test("gas in one shows in the other at once, and no tap there leads out of it", async ({
    panel,
    context,
  }) => {
    await panel.open();
    await panel.says();
    await panel.answer("none");
    const other = await openTab(context, panel);
    // As a tap that was on its way: its screen is gone by the time it lands.
    const late = await other.button(other.text("checks.opening.supply.answers.plumbed")).elementHandle();
    await panel.reportDanger("gas");
    await late?.evaluate((button) => (button as HTMLElement).click());
    await showsAs(other, panel);
    await other.seesEnding("stopped");
    await panel.reload();
    await panel.seesEnding("stopped");
  });

  test("gas in one outlives a tab that was frozen before and writes what it has", async ({
    panel,
    context,
  }) => {
    await panel.open();
    await panel.says();
    await panel.answer("none");
    const other = await openTab(context, panel);
    const log = await panel.storedText();
    await panel.reportDanger("gas");
    await other.page.evaluate((text) => localStorage.setItem("fridgeside:panel", text ?? ""), log);
    await panel.page.reload();
    await expect(panel.heading).toHaveText(panel.text("dangers.gas.heading"));
  });

  test("a tab that was opened at two answers cuts none of the four, and says that it follows", async ({
    panel,
    context,
  }) => {
    await panel.open();
    await panel.goTo("opening.supply", { "opening.symptom": "no-ice" });
    // It hears nothing of what happens elsewhere.
    const other = await openTab(context, panel, (page) =>
      page.addInitScript(() =>
        addEventListener("storage", (event) => event.stopImmediatePropagation(), true),
      ),
    );
    await panel.follow({}, 2);
    await other.button(other.text("checks.opening.supply.answers.tank")).tap();
    await showsAs(other, panel);
    await other.seesNotice("tap-not-taken");
    expect(await panel.storedEvents()).toHaveLength(4);
    await panel.reload();
    expect(await panel.storedEvents()).toHaveLength(4);
  });

  test("an answer in one shows in the other, which says so, and either goes on", async ({
    panel,
    context,
  }) => {
    await panel.open();
    await panel.says();
    await panel.answer("none");
    const other = await openTab(context, panel);
    await panel.answer("plumbed");
    await showsAs(other, panel);
    await other.seesNotice("other-tab");
    await other.answer("nothing");
    await showsAs(panel, other);
    await panel.seesNotice("other-tab");
  });

  test("starting again in one starts again in the other, out of a stop too", async ({ panel, context }) => {
    await panel.open();
    await panel.answer("gas");
    const other = await openTab(context, panel);
    await other.restart();
    await showsAs(panel, other);
    await panel.answer("none");
    await panel.answer("no-ice");
    await showsAs(other, panel);
  });

  test("a 'start again' that was half asked for when another tab reported a danger has to be asked for anew", async ({
    panel,
    context,
  }) => {
    await panel.open();
    await panel.says();
    await panel.answer("none");
    const other = await openTab(context, panel);
    await panel.opensMenu("restart");
    await expect(panel.button(panel.text("ui.restart-yes"))).toBeVisible();
    await other.reportDanger("gas");
    await showsAs(panel, other);
    await expect(panel.button(panel.text("ui.restart-yes"))).toHaveCount(0);
  });

  test("a hazardous step that was passed in one is met behind its gate in the other", async ({
    panel,
    context,
  }) => {
    await panel.openWhere("stop-tap.gate-water-supply");
    const other = await openTab(context, panel);
    await panel.confirmGate("at once");
    await expect(other.heading).toHaveText(other.text("gates.water-supply.ask"));
  });

  test("a stop is left by starting again only: no answer before it can be changed", async ({ panel }) => {
    await panel.open();
    await panel.goTo("opening.leak", { "opening.symptom": "leaking" });
    await panel.answer("water-near-socket");
    // Asked once more, a plain look further: the power cannot be switched off.
    await panel.answer("water-near-socket");
    await panel.seesEnding("stopped");
    await expect(panel.host.getByTitle(panel.text("ui.change"))).toHaveCount(0);
    await panel.reload();
    await panel.seesEnding("stopped");
    await panel.restart();
  });
});

test.describe("a page about another machine", () => {
  const [kept, shown] = ["WXM 754Y/EK", "WXM 431AB8/1"];
  /** A session that ended at a part for one machine, come back to on the page of another. */
  async function comesBack(panel: PanelPage, code = kept) {
    await panel.openAt(sessionAt("part.model", { "opening.symptom": "no-ice" }, "bin-cracked"));
    await panel.giveModel(code);
    await panel.page.route("**/index.html", async (route) => {
      const body = await (await route.fetch()).text();
      await route.fulfill({
        body: body.replace("<fridgeside-panel", `<fridgeside-panel model="${shown}"`),
        contentType: "text/html",
      });
    });
    await panel.page.goto("index.html");
  }
  const words = (panel: PanelPage, id: string) => panel.text(`resumed.machine.${id}`, { kept, shown });

  test("asks whether it is still about the one before, and shows no part until then", async ({ panel }) => {
    await comesBack(panel);
    await expect(panel.heading).toHaveText(words(panel, "ask"));
    await expect(panel.host.getByRole("heading", { level: 3 })).toHaveCount(0);
    await panel.button(words(panel, "kept")).tap();
    await expect(panel.heading).toBeFocused();
    await expect(panel.host.getByText(kept).first()).toBeVisible();
    await panel.page.reload();
    await expect(panel.host.getByText(kept).first()).toBeVisible();
    await expect(panel.host.getByText(shown)).toHaveCount(0);
  });

  test("starts again for its own, and what was answered before can be gone on with", async ({ panel }) => {
    await comesBack(panel);
    await panel.page.keyboard.press("Tab");
    await panel.button(words(panel, "shown")).focus();
    await panel.page.keyboard.press("Enter");
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await panel.seesNotice("set-aside");
    // But for what is still changed in the home.
    expect(await panel.storedEvents()).toEqual([{ type: "prepared-left", left: { bin: "out" } }]);
    await panel.button(panel.text("resumed.go-on", { date: "2 March 2026" })).tap();
    await expect(panel.heading).toHaveText(words(panel, "ask"));
  });

  test("asks nothing where the code is only written in another way", async ({ panel }) => {
    await comesBack(panel, shown);
    await expect(panel.host.getByText(shown).first()).toBeVisible();
    await panel.seesNotice("welcome-back");
  });
});

test.describe("the clock", () => {
  const waiting = () => sessionAt("wait-for-ice.wait", { "opening.symptom": "no-ice" });

  test("a session of more than 30 days ago starts again, and can be gone on with", async ({ panel }) => {
    await panel.openWhere("ice-maker-switch.look", { "opening.symptom": "no-ice" });
    await panel.answer("on");
    const left = panel.session;
    await panel.page.goto("blank.html");
    await panel.page.clock.setSystemTime("2026-04-05T09:00:00Z");
    await panel.page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await panel.seesNotice("set-aside");
    await panel.button(panel.text("resumed.go-on", { date: "2 March 2026" })).tap();
    panel.session = left;
    await panel.seesTurn();
    await panel.page.reload();
    await panel.seesTurn();
  });

  test("that goes a year back in the middle of a wait makes it no longer", async ({ panel }) => {
    const { log } = waiting();
    await leave(panel.page, log, "2025-03-02T12:00:00Z");
    await panel.page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.text("checks.wait-for-ice.wait.ask"));
    const until = (await panel.host.locator("time").getAttribute("datetime")) ?? "";
    const left = Date.parse(until) - Date.parse(await panel.now());
    expect(left).toBeLessThanOrEqual(24 * 3_600_000);
  });

  test("that goes ahead in the middle of a wait leaves as much less of it", async ({ panel }) => {
    await panel.openAt(waiting());
    const until = panel.turn.wait?.until ?? "";
    await panel.comeBackAfter(20);
    await expect(panel.host.locator("time")).toHaveAttribute("datetime", until);
  });

  test("a wait that is said to have ended in 2099 is still waited for", async ({ panel }) => {
    const { log } = waiting();
    const forged = {
      ...log,
      events: [...log.events, { type: "wait-ended", at: "2099-01-01T00:00:00Z" }],
    };
    await leave(panel.page, forged, "2026-03-02T14:00:00Z");
    await panel.page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.text("checks.wait-for-ice.wait.ask"));
  });
});
