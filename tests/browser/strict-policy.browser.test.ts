import { codeWith } from "./expected.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

declare global {
  interface Window {
    breaches: string[];
  }
}

test.use({ expectedFaults: /TrustedHTML/ });

test.describe("a page with a strict policy and Trusted Types", () => {
  test.beforeEach(({ page }) =>
    page.addInitScript(() => {
      window.breaches = [];
      document.addEventListener("securitypolicyviolation", (event) => {
        window.breaches.push(`${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
      });
    }),
  );

  test("has it from its own markup, so it holds on any server, and the panel breaks none of it", async ({
    page,
  }) => {
    await page.route("**/ways/strict.html", async (route) => {
      const response = await route.fetch();
      const { "content-security-policy": sent, ...headers } = response.headers();
      expect(sent).toContain("default-src 'none'");
      await route.fulfill({ response, headers });
    });
    const panel = new PanelPage(page, { axe: false });
    await panel.openWhere("ice-bin.reseat", { "opening.symptom": "no-ice" }, "ways/strict.html");
    await panel.goTo("part.model", {}, "bin-cracked");
    await panel.giveModel(codeWith("ice-bin"));
    await expect(panel.button(panel.text("part.add")).first()).toBeVisible();
    expect(await page.evaluate(() => window.breaches)).toEqual([]);
    await page.evaluate(() => {
      try {
        document.createElement("div").innerHTML = "<b>markup</b>";
      } catch {}
    });
    await expect.poll(() => page.evaluate(() => window.breaches.join())).toContain("trusted-types");
  });

  test("a whole search, to a part in the basket and a summary, breaks none of it", async ({ page }) => {
    const responded = page.waitForResponse("**/index.html");
    // No axe: it is no part of the panel, and it is not written for such a page.
    const panel = new PanelPage(page, { axe: false });
    await panel.open();
    expect((await responded).headers()["content-security-policy"]).toMatch(
      /default-src 'none'.*require-trusted-types-for/,
    );
    await panel.goTo(
      "part.model",
      {
        "opening.symptom": "little-ice",
        "fresh-ice.look": "small",
        "flow-test.run": { kind: "flow", runs: [{ volume: 60, unit: "ml", seconds: 10 }] },
        "flow-without-filter.prepare": "plug-fitted",
        "flow-without-filter.run": { kind: "flow", runs: [{ volume: 250, unit: "ml", seconds: 10 }] },
      },
      "filter-clogged",
    );
    await panel.giveModel(codeWith("water-filter"));
    await panel.button(panel.text("part.copy")).tap();
    await panel.button(panel.text("part.add")).first().tap();
    expect(await page.evaluate(() => window.breaches)).toEqual([]);
  });
});

test.describe("the policy of the demo shop", () => {
  test("the policy is in force: what it forbids is told", async ({ page }) => {
    await page.addInitScript(() => {
      window.breaches = [];
      document.addEventListener("securitypolicyviolation", (event) =>
        window.breaches.push(event.violatedDirective),
      );
    });
    await page.goto("index.html");
    await page.evaluate(() => {
      try {
        document.createElement("div").innerHTML = "<b>markup</b>";
      } catch {}
    });
    await expect.poll(() => page.evaluate(() => window.breaches)).not.toEqual([]);
  });
});
