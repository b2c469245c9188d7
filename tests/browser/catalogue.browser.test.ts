import { at } from "../session/drive.ts";
import { atModelOfBin, feed } from "./expected.ts";
import { keptText } from "./kept-logs.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const code = "TBY-744-K4.W";
const mine = (panel: PanelPage, model = code) => panel.button(`${panel.text("measure.mine")}: ${model}`);

test.describe("a catalogue that does not come", () => {
  test.use({ expectedFaults: /404|ERR_FAILED|ERR_INTERNET_DISCONNECTED/ });

  for (const [what, answer] of [
    ["missing", { status: 404, body: "Not found" }],
    ["no JSON", { status: 200, body: "{oops", contentType: "application/json" }],
    ["without models", { status: 200, body: '{"models":[],"parts":[]}', contentType: "application/json" }],
    ["something else altogether", { status: 200, body: '"<b>hi</b>"', contentType: "application/json" }],
  ] as const) {
    test(`${what}, it is said, the code stays typed, and the next try finds it`, async ({ panel, page }) => {
      let isBack = false;
      await page.route("**/catalogue.json", (route) => (isBack ? route.continue() : route.fulfill(answer)));
      await panel.openAt(atModelOfBin());
      const kept = await panel.storedText();
      await panel.findModel(code);
      await expect(panel.host.getByText(panel.text("measure.model-broken"))).toBeVisible();
      await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue(code);
      await panel.seesTurn();
      expect(await panel.storedText()).toBe(kept);
      isBack = true;
      await panel.button(panel.text("measure.try-again")).tap();
      await expect(mine(panel)).toBeVisible();
    });
  }

  test("gone when the part is looked up, the kind of part is named and can be asked for again", async ({
    panel,
    page,
  }) => {
    let isBack = false;
    await page.route("**/catalogue.json", (route) => (isBack ? route.continue() : route.abort()));
    const given = { type: "model-given", turn: "part.model", code, typed: code, at: at(60) } as const;
    const session = atModelOfBin();
    await page.goto("blank.html");
    const log = { ...session.log, events: [...session.log.events, given] };
    await page.evaluate((text) => localStorage.setItem("fridgeside:panel", text), keptText(log));
    await page.goto("index.html");
    await expect(panel.host.getByText(panel.text("part.broken"))).toBeVisible();
    await expect(panel.host.getByText(panel.text("parts.ice-bin.name")).first()).toBeVisible();
    isBack = true;
    await panel.button(panel.text("part.retry")).tap();
    await expect(panel.host.getByRole("heading", { level: 4 }).first()).toBeVisible();
  });
});

test.describe("a slow catalogue", () => {
  test("says that it looks, and shows what it finds when it comes", async ({ panel, page }) => {
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/catalogue.json", async (route) => {
      await held;
      await route.continue();
    });
    await panel.openAt(atModelOfBin());
    await panel.findModel(code);
    await expect(panel.host.getByText(panel.text("measure.finding"))).toBeVisible();
    await panel.seesTurn();
    release();
    await expect(mine(panel)).toBeVisible();
    await expect(panel.host.getByText(panel.text("measure.finding"))).toHaveCount(0);
  });

  test("is given up after a while, by the page's clock, and loses nothing", async ({ panel, page }) => {
    // The browser's own time-out does not follow a clock that a test has set; this one does the same by that clock.
    await page.addInitScript(() => {
      AbortSignal.timeout = (ms) => {
        const control = new AbortController();
        setTimeout(() => control.abort(new DOMException("too slow", "TimeoutError")), ms);
        return control.signal;
      };
    });
    await page.route("**/catalogue.json", () => new Promise(() => {}));
    await panel.openAt(atModelOfBin());
    await panel.findModel(code);
    await page.clock.runFor(16_000);
    await expect(panel.host.getByText(panel.text("measure.model-broken"))).toBeVisible();
    await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue(code);
  });
});

test.describe("a hostile catalogue", () => {
  const markup = '<img src=x onerror="window.hacked=1"><b>Bin</b>';
  const part = {
    number: "<i>1</i>",
    kind: "ice-bin",
    name: markup,
    price: { minor: 100, currency: "GBP" },
    stock: "in-stock",
    fits: [code],
  };
  const models = [{ code, brand: markup, machine: "side-by-side" }];

  for (const link of [
    "javascript:window.hacked=1",
    "data:text/html,<script>1</script>",
    "//evil.example",
    "https://a@b.example/",
  ]) {
    test(`its names stay text and its link ${link.slice(0, 20)} is no link`, async ({ panel, page }) => {
      const body = JSON.stringify({ shop: markup, models, parts: [{ ...part, link }] });
      await page.route("**/catalogue.json", (route) =>
        route.fulfill({ body, contentType: "application/json" }),
      );
      await panel.openAt(atModelOfBin());
      await panel.giveModel(code);
      await expect(panel.host.getByRole("heading", { level: 4 })).toHaveText(markup);
      await expect(panel.host.getByText("<i>1</i>")).toBeVisible();
      await expect(panel.host.locator("img, b b, h4 a")).toHaveCount(0);
      expect(await page.evaluate(() => "hacked" in window)).toBe(false);
      await panel.seesTurn();
    });
  }

  test("rows that cannot be used are left out and named in the console, the rest is kept", async ({
    panel,
    page,
  }) => {
    const warnings: string[] = [];
    page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
    const parts = [
      { ...part, price: { minor: -5, currency: "pounds" } },
      { ...part, number: "2", name: "Ice bin" },
      7,
    ];
    await page.route("**/catalogue.json", (route) =>
      route.fulfill({
        body: JSON.stringify({ models: [...models, { code: "" }], parts }),
        contentType: "application/json",
      }),
    );
    await panel.openAt(atModelOfBin());
    await panel.giveModel(code);
    await expect(panel.host.getByRole("heading", { level: 4 })).toHaveText("Ice bin");
    expect(warnings.join("\n")).toMatch(/parts\.0\.price\.minor/);
  });

  test("a name without a blank that is 200 characters long stays within the panel", async ({
    panel,
    page,
  }) => {
    const name = "W".repeat(200);
    const body = JSON.stringify({
      models: [{ ...models[0], brand: "W".repeat(80) }],
      parts: [{ ...part, name, number: "9".repeat(80) }],
    });
    await page.route("**/catalogue.json", (route) =>
      route.fulfill({ body, contentType: "application/json" }),
    );
    await panel.openAt(atModelOfBin());
    await panel.findModel(code);
    await expect(mine(panel)).toBeVisible();
    await panel.seesTurn();
    await panel.giveModel(code);
    await expect(panel.host.getByRole("heading", { level: 4 })).toHaveText(name);
    await panel.seesTurn();
  });

  test("a catalogue that names no part of this kind for the model says so, and names the shop's people", async ({
    panel,
    page,
  }) => {
    await page.route("**/catalogue.json", (route) =>
      route.fulfill({ body: JSON.stringify({ ...feed, parts: [] }), contentType: "application/json" }),
    );
    await panel.openAt(atModelOfBin());
    await panel.giveModel(code);
    const words = panel.text("part.no-part", { part: panel.text("parts.ice-bin.name"), model: code });
    await expect(panel.host.getByText(words)).toBeVisible();
    await expect(panel.host.getByRole("link", { name: /Larder Lane Spares/ })).toBeVisible();
  });
});
