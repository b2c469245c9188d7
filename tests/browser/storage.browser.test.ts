import { journalOf } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { atModelOfBin, freshSession, sessionAt } from "./expected.ts";
import { says } from "./greeting.ts";
import { keptText } from "./kept-logs.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const doorStaysOpen = {
  "door-closing.blocked-front": "nothing-there",
  "door-closing.blocked-behind": "nothing-there",
  "door-closing.again": "still-open",
};

test.describe("storage", () => {
  for (const [how, deny] of [
    [
      "denied",
      () =>
        Object.defineProperty(window, "localStorage", {
          get: () => {
            throw new DOMException("denied", "SecurityError");
          },
        }),
    ],
    [
      "full",
      () => {
        Storage.prototype.setItem = () => {
          throw new DOMException("full", "QuotaExceededError");
        };
      },
    ],
  ] as const) {
    test(`${how}, it says so and works to an ending`, async ({ page }) => {
      await page.addInitScript(deny);
      const panel = new PanelPage(page, { keeps: false });
      await panel.open();
      await panel.says();
      await panel.answer("none");
      await panel.seesNotice("memory-only");
      await panel.goTo(
        "professional.end",
        { "opening.symptom": "no-ice", "door-closing.look": "stays-open", ...doorStaysOpen },
        "door-out-of-line",
      );
      await panel.seesNotice("memory-only");
      await panel.seesEnding("professional", { cause: "door-out-of-line" });
      await page.reload();
      await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    });
  }

  test("full, what was answered meanwhile outlives a change of an attribute", async ({ page }) => {
    const panel = new PanelPage(page, { keeps: false });
    await panel.open();
    await panel.says();
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await panel.answer("none");
    await panel.host.evaluate((host) => host.setAttribute("shop-name", "Another name"));
    await panel.seesNotice("welcome-back");
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
  });

  test("whatever else lies there counts as nothing", async ({ panel, page }) => {
    const { log } = freshSession();
    for (const [what, stored] of Object.entries({
      "no JSON": "{{{",
      "an empty text": "",
      "a list": "[]",
      "a number": "7",
      markup: '"<img src=x onerror=alert(1)>"',
      "a newer format": JSON.stringify({ ...journalOf(log), format: 3 }),
      "events that are none": keptText({ ...log, events: [{ type: "gate-opened", at: at(1) }] }),
      "a time that is none": keptText({ ...log, events: [{ type: "help-asked", at: "tomorrow" }] }),
      "a prototype": '{"__proto__":{"format":1},"constructor":{}}',
      "ten thousand brackets": `${"[".repeat(10_000)}${"]".repeat(10_000)}`,
    })) {
      await page.goto("blank.html");
      await page.evaluate((text) => localStorage.setItem("fridgeside:panel", text), stored);
      await page.goto("index.html");
      await expect(panel.heading, what).toHaveText(panel.text("thread.hello"));
      await says(panel);
      await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
      await expect(panel.heading, what).toHaveText(panel.text("checks.opening.supply.ask"));
    }
  });

  test("a stored log that jumps a gate is followed as far as the gate, and says that it was cut", async ({
    panel,
    page,
  }) => {
    const atGate = sessionAt("stop-tap.gate-water-supply");
    const events = [
      ...atGate.log.events,
      { type: "answered", turn: "stop-tap.gate-water-supply", answer: "ready", items: [], at: at(60) },
      { type: "answered", turn: "stop-tap.open", answer: "opened", at: at(61) },
    ];
    await page.goto("blank.html");
    await page.evaluate(
      (text) => localStorage.setItem("fridgeside:panel", text),
      keptText({ ...atGate.log, events }),
    );
    await page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.text("gates.water-supply.ask"));
    await panel.seesNotice("shortened");
  });

  test("markup in a stored answer stays text", async ({ panel, page }) => {
    const given = {
      type: "model-given",
      turn: "part.model",
      code: "<img src=x onerror=alert(1)>",
      typed: "x",
      at: at(60),
    };
    const { log } = atModelOfBin();
    const kept = { ...log, events: [...log.events, given] };
    await page.goto("blank.html");
    await page.evaluate((text) => localStorage.setItem("fridgeside:panel", text), keptText(kept));
    await page.goto("index.html");
    await expect(panel.host.getByText(given.code).first()).toBeVisible();
    await expect(panel.host.locator("img")).toHaveCount(0);
  });
});

test.describe("the connection", () => {
  // A drawing of a turn to come may be on its way at that very moment.
  test.use({ expectedFaults: /ERR_INTERNET_DISCONNECTED .*\/picture-/ });

  test("lost after loading, it is said, and the search goes on to its ending", async ({ panel, page }) => {
    await panel.openWhere("ice-bin.reseat", { "opening.symptom": "no-ice" });
    await panel.hasEverything();
    await page.context().setOffline(true);
    await panel.seesNotice("offline");
    await panel.answer("cracked");
    await panel.seesNotice("offline");
    await panel.goTo("part.model", {}, "bin-cracked");
    // The catalogue came with the page: even the part is found.
    await panel.giveModel("TBY-744-K4.W");
    await expect(
      panel
        .button(panel.text("part.add"))
        .or(panel.host.getByText(panel.text("part.out-of-stock")))
        .first(),
    ).toBeVisible();
    await page.context().setOffline(false);
    await expect(panel.host.getByText(panel.text("notices.offline"))).toHaveCount(0);
  });
});
