import { readdirSync, readFileSync } from "node:fs";
import { record } from "../../../src/session/index.ts";
import { says } from "../greeting.ts";
import { expect, test } from "../panel-test.ts";
import { builtFolder } from "../site.ts";

const own = readFileSync(`${builtFolder}/fridgeside.en-GB.js`, "utf8");

/** The first file as it was before a deploy: its parts have other names and are gone, its insides are called otherwise. */
const older = own
  .replace(/-[\da-f]{8}\.(json|js|css)/g, "-00000000.$1")
  .replace(/(fridgeside)-[\da-f]{8}/g, "$1-00000000");

test.describe("after a deploy", () => {
  test.use({ expectedFaults: /Failed to load|could not be loaded|ERR_ABORTED/ });

  test("an old first file whose parts are gone goes on with what lies there now, and keeps the tap", async ({
    panel,
    page,
  }) => {
    let reloads = 0;
    await page.route(/fridgeside\.en-GB\.js$/, (route) => {
      // The second time the browser asks the server instead of its cache.
      if (route.request().resourceType() !== "script") reloads++;
      return route.request().resourceType() === "script"
        ? route.fulfill({ contentType: "text/javascript", body: older })
        : route.continue();
    });
    await page.goto("ways/one.html");
    await says(panel);
    await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    await expect.poll(() => panel.storedEvents()).toHaveLength(2);
    expect(reloads).toBe(1);
    const answers = { "opening.danger": "none", "opening.symptom": "no-ice" };
    for (const [turn, answer] of Object.entries(answers))
      panel.session = record(panel.session, {
        type: "answered",
        turn,
        answer,
        at: await panel.now(),
      }).session;
    await panel.reportDanger("shock");
    await panel.seesEnding("stopped");
  });
});

test("every later file that the first one names is there", () => {
  const there = readdirSync(`${builtFolder}/parts`);
  const named = own.match(/[\w-]+-[\da-f]{8}\.(?:json|js|css)/g) ?? [];
  expect(named.length).toBeGreaterThanOrEqual(5);
  expect(there).toEqual(expect.arrayContaining(named));
});
