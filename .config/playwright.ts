import { defineConfig } from "@playwright/test";

const chromium = process.env.CHROMIUM_PATH;

/** The browser tests, on a phone in one hand: 360 px wide, touch, British. `npm run browser` builds what they load. */
export default defineConfig({
  testDir: "../tests/browser",
  testMatch: "**/*.browser.test.ts",
  outputDir: "../.cache/browser-results",
  workers: 2,
  fullyParallel: true,
  forbidOnly: Boolean(process.env.CI),
  timeout: 90_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: "../.cache/browser-report.json" }]],
  use: {
    // A window of its own for each test costs more than most tests. Between two of them Playwright empties the context:
    // storage, cache, routes, scripts and other tabs; panel-test.ts puts back what it does not. A failed test gets a new one.
    reuseContext: process.env["REUSE"] !== "no",
    actionTimeout: 10_000,
    navigationTimeout: 15_000,
    locale: "en-GB",
    timezoneId: "Europe/London",
    serviceWorkers: "block",
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  projects: [
    {
      name: "phone",
      use: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
});
