import { atModelOfBin } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Puts a panel into a page that has none. */
const mount = (panel: PanelPage) =>
  panel.page.evaluate(() => {
    document.querySelector("#place")?.append(document.createElement("fridgeside-panel"));
  });

test.describe("the script on a page", () => {
  test("with a query in its address the panel works on to its readings and gates", async ({
    panel,
    page,
  }) => {
    await page.route("**/plain.html", async (route) => {
      const response = await route.fetch();
      const body = (await response.text()).replace("fridgeside.js", "fridgeside.js?v=2");
      await route.fulfill({ response, body });
    });
    await panel.open("plain.html");
    await panel.goTo("opening.changed");
    await panel.openWhere("flow-test.run", { "opening.symptom": "no-ice" }, "plain.html");
    await panel.goTo("stop-tap.open");
  });

  test("a panel that is created before the script arrives is drawn when it does", async ({ panel, page }) => {
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/fridgeside.*js", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("no-panel.html", { waitUntil: "commit" });
    await page.locator("h1").waitFor();
    await mount(panel);
    release();
    await panel.seesTurn();
    await panel.says();
    await panel.answer("none");
  });

  test("a panel that is created after the script is drawn at once", async ({ panel, page }) => {
    await page.goto("no-panel.html");
    await mount(panel);
    await panel.seesTurn();
    await panel.says();
    await panel.answer("none");
  });
});

test.describe("the tag in a page that changes", () => {
  test("taken out and put in again within one task it keeps even what is being typed", async ({ panel }) => {
    await panel.openAt(atModelOfBin(), "with-catalogue.html");
    await panel.host.locator(".turn").getByRole("textbox").fill("WXC 3");
    await panel.host.evaluate((host) => document.querySelector("main")?.append(host));
    await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue("WXC 3");
    await panel.goOnWithoutModel("measure.plate-lost", "WXC 3");
  });

  test("taken out for a while it comes back to the same turn, and leaves nothing running", async ({
    panel,
    page,
  }) => {
    await panel.open("plain.html");
    await panel.goTo("opening.supply");
    await page.evaluate(() => {
      const host = document.querySelector("fridgeside-panel");
      host?.remove();
      Object.assign(window, { kept: host });
    });
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve)));
    expect(
      await page.evaluate(() => (window as never as { kept: Element }).kept.shadowRoot?.childElementCount),
    ).toBe(0);
    await page.evaluate(() =>
      document.querySelector("#place")?.append((window as never as { kept: Element }).kept),
    );
    await panel.seesTurn();
    await panel.seesNotice("welcome-back");
    await panel.answer("plumbed");
  });

  test("moved about before the rest of the script has come, it still runs one session only", async ({
    panel,
    page,
  }) => {
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/parts/**", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("no-panel.html");
    await mount(panel);
    await panel.host.evaluate((host) => document.querySelector("main")?.append(host));
    await panel.host.evaluate((host) => document.querySelector("#place")?.append(host));
    release();
    await panel.seesTurn();
    await panel.says();
    await panel.answer("none");
    // Were there a second session, it would show itself at the next change of the connection.
    await panel.hasEverything();
    await page.context().setOffline(true);
    await panel.seesNotice("offline");
    await panel.seesTurn();
    await page.context().setOffline(false);
    await panel.answer("plumbed");
  });

  test("a change of colours for the night takes away nothing that is being typed", async ({ panel }) => {
    await panel.openAt(atModelOfBin(), "with-catalogue.html");
    await panel.host.locator(".turn").getByRole("textbox").fill("WXC 3");
    await panel.host.evaluate((host) => host.setAttribute("theme", "dark"));
    await expect(panel.host).toHaveCSS("color-scheme", "dark");
    await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue("WXC 3");
  });

  test("a change of the language shows the same turn in it", async ({ panel, page }) => {
    await panel.openWhere("freezer-temperature.read", {}, "plain.html");
    await panel.host.evaluate((host) => host.setAttribute("language", "en-US"));
    await expect(panel.host.getByRole("radio").and(page.getByLabel("°F"))).toBeChecked();
    await expect(panel.host.getByRole("region")).toHaveAttribute("lang", "en-US");
  });
});
