import { startSession } from "../../src/session/index.ts";
import { tokenFor } from "../cobrowse/relay/agents.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at, follow, healthy } from "../session/drive.ts";
import { DeskPhone, startRelayFor } from "./desk-phone.ts";
import { expect, test } from "./panel-test.ts";

test.use({
  hand: "fast",
  clock: "real",
  isMobile: false,
  hasTouch: false,
  deviceScaleFactor: 1,
  viewport: { width: 1280, height: 900 },
});

for (const scheme of ["light", "dark"] as const)
  test(`shot ${scheme}`, async ({ page, site }) => {
    const origin = new URL(site).origin;
    const { relay, port } = await startRelayFor(origin);
    await page.emulateMedia({ colorScheme: scheme });
    await page.route("**/demo-agent-token", (route) => route.fulfill({ body: tokenFor() }));
    await page.goto("/desk.html");
    await page.evaluate(
      (port) => document.querySelector("fridgeside-desk")?.setAttribute("relay", `ws://127.0.0.1:${port}`),
      port,
    );
    const phone = new DeskPhone(port, origin);
    const second = new DeskPhone(port, origin);
    for (const one of [second, phone]) {
      const code = await one.until(({ code }) => code);
      await page.getByRole("textbox", { name: "Code" }).fill(code.toLowerCase());
      await page.getByRole("button", { name: "Join", exact: true }).click();
      if (one === second) {
        await expect(page.locator(".conv")).toHaveCount(1);
        await page.screenshot({ path: `/tmp/w/desk/asking-${scheme}.png` });
      }
    }
    await phone.admit();
    await page.screenshot({ path: `/tmp/w/desk/joined-${scheme}.png` });
    const guide = guideFor(ownFlow);
    let session = startSession(guide, at(0));
    phone.share(session);
    await page.getByText("What's going wrong").first().waitFor();
    session = follow(session, healthy, "flow-test.run");
    phone.share(session);
    await page.waitForTimeout(1500);
    await page.screenshot({ path: `/tmp/w/desk/flow-${scheme}.png` });
    for (const tab of ["Chart", "Journal", "Parts"]) {
      await page.getByRole("tab", { name: tab }).click();
      await page.waitForTimeout(300);
      await page.screenshot({ path: `/tmp/w/desk/${tab}-${scheme}.png` });
    }
    await page.getByRole("tab", { name: "Causes" }).click();
    session = follow(startSession(guide, at(0)), healthy, "ice-bin.look");
    phone.share(session);
    await page
      .getByRole("button", { name: /^Point at it/ })
      .first()
      .click();
    await page.waitForTimeout(800);
    await page.screenshot({ path: `/tmp/w/desk/pointed-${scheme}.png` });
    await page.setViewportSize({ width: 360, height: 740 });
    await page.locator("fridgeside-desk").scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    await page.screenshot({ path: `/tmp/w/desk/n-phone-${scheme}.png` });
    await page.getByRole("button", { name: "What we know" }).click();
    await page.waitForTimeout(300);
    await page.screenshot({ path: `/tmp/w/desk/n-known-${scheme}.png` });
    await page.getByRole("button", { name: "Back", exact: true }).click();
    await page.waitForTimeout(300);
    await page.screenshot({ path: `/tmp/w/desk/n-list-${scheme}.png` });
    phone.close();
    second.close();
    await relay.close();
  });
