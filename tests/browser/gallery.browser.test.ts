import type { Page } from "@playwright/test";
import { readGallery } from "../gallery/read-gallery.ts";
import { violationsOn } from "./axe.ts";
import { textsIn } from "./expected.ts";
import { expect, test } from "./panel-test.ts";

// A panel that nobody has tapped may not shake the phone, and its stopwatch runs.
test.use({ expectedFaults: /navigator\.vibrate/, clock: "real" });

const frameOf = (page: Page) => page.frameLocator("iframe").first();
const questionIn = (page: Page) => frameOf(page).locator("fridgeside-panel h2");

test.describe("the gallery", () => {
  test("shows a turn in the language, the colours and the width that are chosen, and keeps them in its address", async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.goto("gallery/?place=flow-test.run");
    const asked = textsIn("en-GB")("checks.flow-test.run.ask");
    await expect(questionIn(page)).toHaveText(asked);
    await expect(page.locator("figcaption")).toContainText(asked);
    for (const [name, value] of [
      ["Language", "en-US"],
      ["Colours", "dark"],
      ["Width", "740"],
    ] as const)
      await page.getByLabel(name).selectOption(value);
    const inUs = textsIn("en-US");
    await expect(
      frameOf(page)
        .getByText(inUs("measure.run-how", { count: 10 }))
        .first(),
    ).toBeVisible();
    await expect(frameOf(page).locator("fridgeside-panel")).toHaveCSS("color-scheme", "dark");
    await expect(page.locator("iframe")).toHaveCSS("width", "740px");
    expect(new URL(page.url()).search).toContain("place=flow-test.run");
    await page.reload();
    await expect(page.getByLabel("Colours")).toHaveValue("dark");
    await expect(page.locator("iframe")).toHaveCSS("width", "740px");
  });

  test("goes from turn to turn, and shows all of a group at once", async ({ page }) => {
    await page.goto("gallery/?place=stopped.end");
    await page.getByRole("button", { name: "Next" }).click();
    await expect(page.locator("figcaption b")).toHaveText("Stopped: End burning");
    await expect(frameOf(page).locator("fridgeside-panel .badge")).toBeVisible();
    await page.getByLabel("Show").selectOption("group");
    const stops = readGallery().places.filter(({ name }) => name.startsWith("stopped."));
    await expect(page.locator("iframe")).toHaveCount(stops.length);
  });

  test("leaves nothing in the browser's storage", async ({ page }) => {
    await page.goto("gallery/panel.html?place=ice-bin.look");
    await expect(page.locator("html")).toHaveAttribute("data-stands", "ice-bin.look");
    await page.goto("blank.html");
    expect(await page.evaluate(() => Object.keys(localStorage))).toEqual([]);
  });

  for (const width of [320, 360, 1280])
    test(`fits ${width} px, and axe finds no fault with it`, async ({ page }) => {
      await page.setViewportSize({ width, height: 740 });
      await page.goto("gallery/?place=ice-bin.look&width=1280");
      await expect(questionIn(page)).toBeVisible();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThan(1);
      expect(await violationsOn(page, `gallery ${width}`)).toEqual([]);
    });

  // Those that a journal leads to are held true by tests/gallery, and shown by every-turn.
  for (const place of readGallery().places.filter(
    ({ name: _, after: __, acts = [], ...special }) =>
      Object.keys(special).length > 0 || acts.some((act) => act.do === "press" || act.do === "elsewhere"),
  ))
    test(`shows ${place.name}`, async ({ page }) => {
      await page.goto(`gallery/panel.html?place=${encodeURIComponent(place.name)}`);
      await expect(page.locator("html")).toHaveAttribute("data-stands", place.name);
      const panel = page.locator("fridgeside-panel");
      await expect(panel.locator(shownBy(place.name)).first()).toBeVisible();
    });
});

/** What there is of a state and of nothing else. */
function shownBy(name: string): string {
  const texts = textsIn("en-GB");
  const says = (key: string, values = {}) => `text="${texts(key, values)}"`;
  const shown: Record<string, string> = {
    "own-words": ".heard button",
    "side-question": says("asides.cost-engineer.says"),
    "danger-asked": ".ask button",
    menu: says("ui.restart"),
    "restart-asked": says("ui.restart-ask"),
    "help-asked": says("ui.help-ask"),
    "fixed-asked": says("ui.ice-ask"),
    "not-kept": says("notices.memory-only"),
    denied: says("notices.memory-only"),
    offline: says("notices.offline"),
    "link-broken": says("notices.link-broken"),
    "live-asked": says("live.coming"),
    "other-tab": says("notices.other-tab"),
    "wait-over": says("notices.wait-over"),
    "set-aside": says("notices.set-aside"),
    forgotten: says("notices.forgotten"),
    "asked-later": says("care.ask.yes"),
    machine: ".sum-up",
    running: ".dial .count",
    "near-miss": ".models li:nth-child(2)",
    "not-known": says("measure.model-unknown", { typed: "QQQ 999 999" }),
  };
  return shown[name.split(" ")[1] ?? ""] ?? "none";
}
