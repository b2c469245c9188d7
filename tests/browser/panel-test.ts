import { test as base, expect, type Page } from "@playwright/test";
import { morning } from "./expected.ts";
import { PanelPage } from "./panel-page.ts";
import { serveSite } from "./site.ts";

export { expect };

type Fixtures = {
  /** Whether a person takes their time before each tap, or taps as fast as the test does. */
  hand: "deliberate" | "fast";
  /** Whether the page's clock starts at nine in the morning of a test's own day; else it is the computer's. */
  clock: "set" | "real";
  /** The demo shop's page, not yet opened. */
  panel: PanelPage;
  /** What the page's console may report as an error without failing the test. */
  expectedFaults: RegExp | null;
};

/** Runs in the page: stamps every tap and every key half a second later than it came, as a person would be. */
function takeTime(): void {
  let acts = 0;
  const count = (event: Event) => {
    if (!(event as KeyboardEvent).repeat) acts++;
  };
  addEventListener("pointerdown", count, true);
  addEventListener("keydown", count, true);
  addEventListener(
    "click",
    (event) => Object.defineProperty(event, "timeStamp", { value: event.timeStamp + acts * 500 }),
    true,
  );
}

/** What a context that the next test is run in would keep otherwise. */
async function putBack(page: Page): Promise<void> {
  await page.context().setOffline(false);
  await page.evaluate(() => sessionStorage.clear()).catch(() => {});
}

/** A test on a phone whose clock stands at nine in the morning; an error in the page's console fails it. */
export const test = base.extend<Fixtures, { site: string }>({
  expectedFaults: [null, { option: true }],
  hand: ["deliberate", { option: true }],
  clock: ["set", { option: true }],
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
  page: async ({ page, expectedFaults, hand, clock }, use) => {
    const faults: string[] = [];
    // The test runner's own clock, where a page begins before that is in place; nothing of ours reads such a name.
    const ofClock = "Cannot read properties of undefined (reading 'controller')";
    const note = (text: string) => text === ofClock || expectedFaults?.test(text) || faults.push(text);
    page.on("pageerror", (error) => note(error.message));
    page.on(
      "console",
      (message) => message.type() === "error" && note(`${message.text()} ${message.location().url}`),
    );
    if (clock === "set") await page.clock.install({ time: morning });
    // In every tab of the test.
    if (hand === "deliberate") await page.context().addInitScript(takeTime);
    await use(page);
    await putBack(page);
    expect(faults, "errors in the page").toEqual([]);
  },
  panel: ({ page }, use) => use(new PanelPage(page)),
});
