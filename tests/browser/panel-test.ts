import { test as base, expect } from "@playwright/test";
import { morning } from "./expected.ts";
import { PanelPage } from "./panel-page.ts";
import { serveSite } from "./site.ts";

export { expect };

type Fixtures = {
  /** The demo shop's page, not yet opened. */
  panel: PanelPage;
  /** What the page's console may report as an error without failing the test. */
  expectedFaults: RegExp | null;
};

/** A test on a phone whose clock stands at nine in the morning; an error in the page's console fails it. */
export const test = base.extend<Fixtures, { site: string }>({
  expectedFaults: [null, { option: true }],
  site: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures it needs from this pattern.
    async ({}, use) => {
      const { server, address } = await serveSite();
      await use(address);
      server.closeAllConnections();
      server.close();
    },
    { scope: "worker" },
  ],
  baseURL: ({ site }, use) => use(site),
  page: async ({ page, expectedFaults }, use) => {
    const faults: string[] = [];
    const note = (text: string) => expectedFaults?.test(text) || faults.push(text);
    page.on("pageerror", (error) => note(error.message));
    page.on(
      "console",
      (message) => message.type() === "error" && note(`${message.text()} ${message.location().url}`),
    );
    await page.route("**/favicon.ico", (route) => route.fulfill({ status: 204 }));
    await page.clock.install({ time: morning });
    await use(page);
    expect(faults, "errors in the page").toEqual([]);
  },
  panel: ({ page }, use) => use(new PanelPage(page)),
});
