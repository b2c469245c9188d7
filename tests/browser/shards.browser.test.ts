import { createDemoFeed, readMinutes } from "../../demo/generate/feed/index.ts";
import { demoShards } from "../../demo/generate/shards.ts";
import { atModelOfBin } from "./expected.ts";
import { expect, test } from "./panel-test.ts";

/** Rows of the feed that hold an ice bin for every machine of a model, as text and read by nothing of ours. */
const bins = [...createDemoFeed({ ...demoShards, minutes: readMinutes() })]
  .join("")
  .split("\r\n")
  .map((line) => line.split(","))
  .filter(
    ([, , , variant, from, to, kind, , , , , stock]) =>
      kind === "ice-bin" && !variant && !from && !to && stock === "in-stock",
  );
/** A long code: no other is near it. */
const bin = bins.find(([, code = ""]) => code.length > 13) ?? [];
const [, code = "", , , , , , number = "", name = ""] = bin;

test.describe("a catalogue of many files", () => {
  test.beforeEach(({ panel }) => panel.openAt(atModelOfBin(), "large.html"));

  test("takes one small file for a listed code, and none for its part", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await panel.findModel(code.toLowerCase());
    await panel.button(`${panel.text("measure.mine")}: ${code}`).tap();
    await expect(panel.host.getByRole("heading", { level: 4, name })).toBeVisible();
    await expect(panel.host.getByText(number, { exact: true })).toBeVisible();
    expect(
      asked.map((url) => new URL(url).pathname).filter((path) => path.startsWith("/shards/")),
    ).toHaveLength(1);
  });

  test("offers what one slip makes of a code, never silently, and takes it when it is tapped", async ({
    panel,
    page,
  }) => {
    let requests = 0;
    page.on("request", (request) => {
      if (new URL(request.url()).pathname.startsWith("/shards/")) requests++;
    });
    await panel.findModel(code.replace(/(\d)(\d)/, "$2$1"));
    const mine = panel.button(`${panel.text("measure.mine")}: ${code}`);
    await expect(mine).toBeVisible();
    await panel.seesTurn();
    expect(requests).toBeLessThanOrEqual(1 + 8 + 3);
    await mine.tap();
    await expect(panel.host.getByRole("heading", { level: 4, name })).toBeVisible();
  });

  test("does not know what is nothing like a code of it", async ({ panel }) => {
    await panel.findModel("QQQQ 999 QQQQ");
    await expect(panel.host.getByText("QQQQ 999 QQQQ")).toBeVisible();
    await panel.seesTurn();
  });
});

test.describe("a catalogue of many files behind a poor signal", () => {
  test.use({ expectedFaults: /ERR_FAILED/ });

  test("says that it did not load, keeps the code, and finds it at the next try", async ({ panel, page }) => {
    let isBack = false;
    await page.route("**/shards/c-*/**", (route) => (isBack ? route.continue() : route.abort()));
    await panel.openAt(atModelOfBin(), "large.html");
    await panel.findModel(code);
    await expect(panel.host.getByText(panel.text("measure.model-broken"))).toBeVisible();
    await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue(code);
    isBack = true;
    await panel.button(panel.text("measure.try-again")).tap();
    await expect(panel.button(`${panel.text("measure.mine")}: ${code}`)).toBeVisible();
  });
});
