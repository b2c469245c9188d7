import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "@playwright/test";
import { readGallery } from "../gallery/read-gallery.ts";
import { counts } from "../soak/counts.ts";
import { changesUnder } from "./look-of.ts";
import { expect, test } from "./panel-test.ts";

// A panel that nobody has tapped may not shake the phone.
test.use({ expectedFaults: /navigator\.vibrate/, clock: "real" });

const folder = fileURLToPath(new URL("pages/hostile/", import.meta.url));
/** Made of the names that the panel's own rules have. */
const namesSheet = "names.css";
const sheets = [...readdirSync(folder).filter((name) => !/^(none|place)\.css$/.test(name)), namesSheet];

/** A stopwatch that runs looks different all the time, and who waits for a person is told more after a while. */
const places = readGallery()
  .places.map(({ name }) => name)
  .filter((name) => !/ (running|live-asked)$/.test(name));

/** Opens the page at a place; whatever it calls `sheet` comes as told. */
async function openAt(page: Page, place: string, sheet = "none.css"): Promise<void> {
  await page.route(`**/hostile/${namesSheet}`, (route) =>
    route.fulfill({ contentType: "text/css", body: names }),
  );
  if (sheet !== "none.css")
    await page.route("**/hostile/none.css", (route) =>
      route.fulfill({
        contentType: "text/css",
        body: sheet === namesSheet ? names : readFileSync(folder + sheet, "utf8"),
      }),
    );
  await page.goto(`unkind.html?place=${encodeURIComponent(place)}`);
  await expect(page.locator("html")).toHaveAttribute("data-stands", place);
  await page.waitForLoadState("networkidle");
}

/** Every custom property that the panel's own rules name, set to what none of them can be. */
let names = "";
async function namesOn(page: Page): Promise<string> {
  await openAt(page, "flow-test.run");
  const found = await page.evaluate(() => {
    const root = document.querySelector("fridgeside-panel")?.shadowRoot as ShadowRoot;
    const rules = root.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText));
    return [...new Set(rules.join().match(/--fs-[a-z-]+(?=:)/g))];
  });
  expect(found.length).toBeGreaterThan(12);
  const values = found.map((name) => `${name}: red !important;`).join(" ");
  return `*, fridgeside-panel { ${values} }`;
}

test.describe("a host page that means no good", () => {
  test.beforeEach(async ({ page }) => {
    names ||= await namesOn(page);
  });

  test(`has ${sheets.length} sheets, one of each kind`, () => {
    expect(sheets.length).toBeGreaterThanOrEqual(12);
  });

  // A few places by each; the soak goes through all of them.
  const some = sheets.map((_, at) => places[Math.floor(((at + 0.5) * places.length) / sheets.length)] ?? "");
  for (const [at, sheet] of sheets.entries())
    test(`${sheet} is there first, and changes nothing about how the panel looks`, async ({ page }) => {
      const place = some[at] as string;
      await openAt(page, place, sheet);
      expect(await changesUnder(page, ["hostile/place.css"])).toEqual([]);
    });

  for (const place of counts.everyPlace ? places : some)
    test(`no sheet changes how ${place} looks, and the panel changes nothing around it`, async ({ page }) => {
      await openAt(page, place);
      const all = counts.everyPlace ? sheets : sheets.filter((_, at) => at % 4 === some.indexOf(place) % 4);
      expect(
        await changesUnder(
          page,
          all.map((sheet) => `hostile/${sheet}`),
        ),
      ).toEqual([]);
      expect(await outsideOf(page)).toEqual([]);
    });
});

const outsideOf = (page: Page) =>
  page.evaluate(() => (window as never as { changesOutside(): string[] }).changesOutside());
