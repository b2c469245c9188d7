import type { Page } from "@playwright/test";
import { createJournal } from "../../src/session/index.ts";
import { fillVolume, runWater, temperatureField, volumeField } from "./instruments.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const key = "fridgeside:panel:draft";
const draftOn = (page: Page) => page.evaluate((at) => sessionStorage.getItem(at), key);

const boxes = (panel: PanelPage) => panel.host.getByRole("checkbox");
const ticked = (panel: PanelPage) =>
  boxes(panel).evaluateAll((all) => all.map((box) => (box as HTMLInputElement).checked));

/** A run of ten seconds that gave so much. */
async function takeRun(panel: PanelPage, volume: number): Promise<void> {
  await runWater(panel, 10);
  await fillVolume(panel, { volume, unit: "ml" });
  await panel.button(panel.text("measure.show-result")).tap();
}

test.describe("a page that is closed for the camera, and comes back", () => {
  test("has the run that was taken, the time of the next, and what was typed for it", async ({
    panel,
    page,
  }) => {
    await panel.openWhere("flow-test.run");
    await takeRun(panel, 250);
    await panel.button(panel.text("measure.again")).tap();
    await runWater(panel, 10);
    await volumeField(panel).fill("24");
    await panel.reload();
    await expect(volumeField(panel)).toHaveValue("24");
    await expect(panel.heading, "a page that loads moves no focus").not.toBeFocused();
    await volumeField(panel).fill("240");
    await panel.button(panel.text("measure.show-result")).tap();
    const reading = {
      kind: "flow",
      runs: [250, 240].map((volume) => ({ volume, unit: "ml", seconds: 10 })),
    } as const;
    await panel.button(panel.text("measure.use")).tap();
    await panel.took({
      type: "measured",
      turn: "flow-test.run",
      reading: reading as never,
      at: await panel.now(),
    });
    expect(await draftOn(page), "once answered it is gone").toBeNull();
  });

  test("has them behind the gate that is asked again, and behind the tap that is opened again", async ({
    panel,
  }) => {
    await panel.openWhere("flow-without-filter.run", { "flow-without-filter.have": "have-plug" });
    await panel.confirmGate("at once");
    await panel.goOnTo("flow-without-filter.run");
    await takeRun(panel, 250);
    await panel.reload();
    await expect(panel.host.getByText("250 ml, 10 s")).toBeVisible();
    await expect(panel.button(panel.text("measure.use"))).toBeVisible();
  });

  test("has a watch that was running stand still", async ({ panel, page }) => {
    await panel.openWhere("flow-test.run");
    await panel.button(panel.text("measure.start")).tap();
    await page.clock.runFor(4000);
    await panel.reload();
    await expect(panel.button(panel.text("measure.start"))).toBeVisible();
    await expect(volumeField(panel)).toHaveCount(0);
  });

  test("has a model code that was half typed, and own words", async ({ panel }) => {
    await panel.openWhere("part.model", { "opening.symptom": "no-ice" }, undefined, "bin-cracked");
    const code = panel.host.getByRole("textbox", { name: panel.text("measure.code-label") });
    await code.fill("TBY-7");
    await panel.reload();
    await expect(code).toHaveValue("TBY-7");
    await panel.restart();
    await panel.says();
    const words = panel.host.getByRole("textbox", { name: panel.text("composer.label") });
    await words.fill("it makes no ice");
    await panel.reload();
    await expect(words).toHaveValue("it makes no ice");
  });
});

test.describe("the ticks of a gate", () => {
  test.beforeEach(({ panel }) => panel.openWhere("stop-tap.gate-water-supply"));

  test("are there after a reload, and the gate still waits for its last line and for the tap", async ({
    panel,
    page,
  }) => {
    const count = await boxes(panel).count();
    const left = count - 2;
    for (const place of [0, 1]) await boxes(panel).nth(place).tap();
    await panel.reload();
    expect(await ticked(panel)).toEqual([true, true, ...Array(left).fill(false)]);
    await panel.confirmButton.tap();
    await expect(panel.host.getByText(panel.text("measure.gate-left", { count: left }))).toBeVisible();
    for (let place = 2; place < count; place += 1) await boxes(panel).nth(place).tap();
    await panel.reload();
    expect(await ticked(panel)).toEqual(Array(count).fill(true));
    await panel.seesTurn();
    await panel.confirmButton.tap();
    const items = panel.turn.gate?.items.map(({ id }) => id) ?? [];
    const { turn } = panel.turn;
    await panel.took({ type: "answered", turn, answer: "ready", items, at: await panel.now() });
    await page.reload();
    await expect(panel.heading).toHaveText(panel.text("gates.water-supply.ask"));
    expect(await ticked(panel), "asked again it comes without them").toEqual(Array(count).fill(false));
  });

  test("are gone after a quarter of an hour", async ({ panel }) => {
    await boxes(panel).first().tap();
    await panel.comeBackAfter(0.24);
    expect((await ticked(panel))[0]).toBe(true);
    await panel.comeBackAfter(0.02);
    expect((await ticked(panel))[0]).toBe(false);
  });

  test("are not in a second tab", async ({ panel, page }) => {
    await boxes(panel).first().tap();
    const second = await page.context().newPage();
    await second.clock.install({ time: Date.parse(await panel.now()) });
    const other = new PanelPage(second);
    await other.openAgain(panel.session);
    expect(await ticked(other)).not.toContain(true);
    await second.close();
  });
});

test.describe("a draft that is not this turn's own", () => {
  test.beforeEach(({ panel }) => panel.openWhere("freezer-temperature.read"));

  test("is ignored, whatever it is", async ({ panel, page }) => {
    const sound = { started: panel.session.log.started, entries: 0, turn: "freezer-temperature.read" };
    const { entries } = JSON.parse((await panel.storedText()) ?? "");
    const values = [["temperature", "-18"]];
    for (const [what, stored] of Object.entries({
      "another session's": JSON.stringify([
        { ...sound, started: createJournal("2020-01-01T00:00:00Z").started, values },
      ]),
      "one from before the last answer": JSON.stringify([{ ...sound, entries: entries.length - 2, values }]),
      "one that is too long": JSON.stringify([
        { ...sound, entries: entries.length, values, more: "x".repeat(30_000) },
      ]),
      "no JSON": "{{{",
      markup: '"<img src=x onerror=alert(1)>"',
    })) {
      await page.evaluate(
        ([at, text]) => sessionStorage.setItem(at as string, text as string),
        [key, stored],
      );
      await panel.reload();
      await expect(temperatureField(panel), what).toHaveValue("");
      await expect(panel.host.locator("img"), what).toHaveCount(0);
    }
  });

  test("is gone with the search that was started again", async ({ panel, page }) => {
    await temperatureField(panel).fill("-18");
    expect(await draftOn(page)).toContain("-18");
    await panel.restart();
    expect(await draftOn(page)).toBeNull();
  });
});

test("where the tab's storage is denied everything else works", async ({ panel, page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(window, "sessionStorage", {
      get: () => {
        throw new DOMException("denied", "SecurityError");
      },
    }),
  );
  await panel.openWhere("freezer-temperature.read");
  await temperatureField(panel).fill("-18");
  await panel.reload();
  await expect(temperatureField(panel)).toHaveValue("");
  await panel.measure({ kind: "temperature", value: -18, unit: "C", with: "display" });
});
