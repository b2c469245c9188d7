import type { Page } from "@playwright/test";
import { PanelPage } from "./panel-page.ts";
import { test as base, expect } from "./panel-test.ts";
import { TwoEnds } from "./two-ends.ts";

const test = base.extend<{ ends: TwoEnds }>({
  ends: async ({ panel, page, site }, use) => {
    const context = await page
      .context()
      .browser()
      ?.newContext({ viewport: { width: 1280, height: 900 }, bypassCSP: true });
    if (!context) throw new Error("There is no other browser");
    const ends = new TwoEnds(panel, await context.newPage(), site);
    await ends.open();
    await use(ends);
    await context.close();
    await ends.close();
  },
});

// The relay has a clock of its own; a line that is cut is a fault in the page's console.
test.use({ clock: "real", expectedFaults: /WebSocket connection|ERR_CONNECTION/ });
// The pages' policy names the demo's own relay.
test.use({ bypassCSP: true });

const atBin = ["ice-bin.look", { "opening.symptom": "no-ice" }, "plain.html"] as const;
const propose = (desk: Page, answer: string) => desk.getByRole("button", { name: `Propose: ${answer}` });

test.describe("a householder and an agent, each in their own browser", () => {
  test("meet by a code; nothing is shared before, and what is proposed is one tap away", async ({
    ends,
    panel,
  }) => {
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    expect(ends.written().indexOf("opening.danger")).toBeGreaterThan(ends.written().indexOf("admit"));
    const answer = panel.turn.answers.find(({ id }) => id === "fine")?.text ?? "";
    await propose(ends.desk, answer).click();
    await ends.desk.keyboard.type("You said they're loose");
    await ends.desk.keyboard.press("Enter");
    await expect(panel.host.getByText("You said they're loose")).toBeVisible();
    const before = await panel.storedText();
    expect(await panel.storedText()).toBe(before);
    await panel.host.locator(".suggested").getByRole("button", { name: answer }).tap();
    await panel.took({ type: "answered", turn: "ice-bin.look", answer: "fine", at: await panel.now() });
    await expect(ends.desk.getByText("they said yes")).toBeVisible();
    await ends.agree();
  });

  test("stand at a gate: the agent can propose none of it, and the householder's ticks open it", async ({
    ends,
    panel,
  }) => {
    await panel.openWhere("filter-seated.look", { "opening.symptom": "no-ice" }, "plain.html");
    expect(panel.turn.kind).toBe("gate");
    await ends.meet();
    await ends.agree();
    await expect(ends.desk.getByRole("button", { name: /^(Propose|Point at it):/ })).toHaveCount(0);
    await expect(ends.desk.locator(".mirrored [type=checkbox]").first()).not.toBeChecked();
    await panel.confirmGate("at once");
    expect(panel.turn.turn).toBe("filter-seated.look");
    await ends.agree();
  });

  test("are one again after the relay was killed and started anew, with what both did meanwhile", async ({
    ends,
    panel,
  }) => {
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    const killed = ends.killRelay();
    await panel.answer("fine");
    await ends.desk.getByRole("textbox", { name: "Write to them" }).fill("Still here");
    await ends.desk.keyboard.press("Enter");
    await killed;
    await expect(ends.bar().getByText("Still here")).toBeVisible({ timeout: 20_000 });
    await ends.agree();
  });

  test("are one again after the phone's line was cut while they went on", async ({ ends, panel, page }) => {
    test.setTimeout(150_000);
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    ends.cut();
    const since = Date.now();
    await expect(ends.bar().getByText(panel.text("live.no-line"))).toBeVisible({ timeout: 20_000 });
    for (const answer of ["fine", "not-sure"]) await panel.answer(answer);
    const others = ends.received()?.entries.length ?? 0;
    expect(others).toBeLessThan((await ends.journal())?.entries.length ?? 0);
    // A whole minute in the soak: longer than a relay waits for a line that says nothing.
    const away = process.env["SOAK"] === "all" ? 60_000 : 0;
    await expect.poll(() => Date.now() - since, { timeout: 90_000 }).toBeGreaterThan(away);
    ends.mend();
    await page.evaluate(() => dispatchEvent(new Event("online")));
    await ends.agree();
  });

  test("come back after a reload on either side", async ({ ends, panel, page }) => {
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    await page.reload();
    await expect(ends.bar().getByText(panel.text("live.sees", { names: "Ash" }))).toBeVisible();
    await ends.desk.reload();
    await ends.rows.first().click();
    await ends.sees();
    await panel.answer("fine");
    await ends.agree();
  });

  test("share nothing while it is paused, and all of it after; an end is an end for both", async ({
    ends,
    panel,
  }) => {
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    const shared = ends.received()?.entries.length;
    await ends.tap("pause");
    await expect(ends.desk.getByText(/^They've paused\./)).toBeVisible();
    await panel.answer("fine");
    await ends.desk.getByRole("textbox", { name: "Write to them" }).fill("Whenever you like");
    await ends.desk.keyboard.press("Enter");
    expect(ends.received()?.entries.length).toBe(shared);
    expect(ends.written()).not.toContain("Whenever you like");
    await ends.tap("go-on");
    await expect(ends.bar().getByText("Whenever you like")).toBeVisible();
    await ends.agree();
    await ends.tap("end");
    await expect(ends.bar()).toHaveCount(0);
    await expect(ends.rows).toContainText("Ended");
  });

  test("go on on another phone: the search moves by its link, and the agent joins it there", async ({
    ends,
    panel,
    page,
  }) => {
    await panel.openWhere(...atBin);
    await ends.meet();
    await ends.agree();
    await page.evaluate(() => {
      const shared: ShareData[] = [];
      Object.assign(window, { shared });
      Object.defineProperty(navigator, "share", { value: async (data: ShareData) => void shared.push(data) });
    });
    await panel.button(panel.text("ui.menu")).tap();
    await panel.button(panel.text("carry.open")).tap();
    await panel.button(panel.text("carry.share")).tap();
    const link = await page.evaluate(() => (window as never as { shared: ShareData[] }).shared[0]?.url ?? "");
    const phone = await page
      .context()
      .browser()
      ?.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, bypassCSP: true });
    const other = new PanelPage((await phone?.newPage()) as Page);
    await ends.nameRelay(other.page);
    await other.page.goto(link);
    await other.host.getByRole("button", { name: panel.text("resumed.go-on", { date: "" }).trim() }).tap();
    await expect(other.host.getByRole("heading", { name: panel.turn.heading })).toBeFocused();
    await ends.meet(other, panel.turn.heading);
    const moved = await ends.journal(other);
    await expect.poll(() => ends.received()?.entries.length).toBe(moved?.entries.length);
    expect(ends.received()).toEqual(moved);
    await phone?.close();
  });
});
