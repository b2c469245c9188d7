import { says } from "./greeting.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

// The demo's page for each way of embedding that has no file of tests of its own.

test("a tag and a script that a page adds on a tap: nothing is fetched before, and it works", async ({
  panel,
  page,
}) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.goto("ways/late.html");
  await expect(page.getByRole("button")).toBeVisible();
  expect(asked.filter((path) => /fridgeside|parts\//.test(path))).toEqual([]);
  await page.getByRole("button").tap();
  await panel.seesTurn();
  await panel.says();
  await panel.answer("none");
});

test.describe("a tag manager that runs its snippet twice", () => {
  test("starts one script, and both of its tags show the one search", async ({ page }) => {
    await page.goto("ways/tag-manager.html");
    const [first, second] = [0, 1].map((place) => page.locator("fridgeside-panel").nth(place));
    if (!first || !second) throw new Error("No panels");
    const { texts } = new PanelPage(page);
    for (const panel of [first, second]) await expect(panel.locator(".notices")).toBeAttached();
    await first.getByRole("button", { name: texts("checks.opening.symptom.answers.no-ice") }).tap();
    for (const panel of [first, second])
      await expect(panel.getByRole("heading", { level: 2 })).toHaveText(texts("checks.opening.danger.ask"));
    await expect(first.getByRole("heading", { level: 2 })).toBeFocused();
    await second.getByRole("button", { name: texts("checks.opening.danger.answers.none") }).tap();
    for (const panel of [first, second])
      await expect(panel.getByRole("heading", { level: 2 })).toHaveText(texts("checks.opening.supply.ask"));
    await first.getByRole("button", { name: texts("ui.danger") }).tap();
    await first
      .getByRole("button", { name: texts("checks.opening.danger.answers.gas") })
      .last()
      .tap();
    for (const panel of [first, second])
      await expect(panel.getByRole("heading", { level: 2 })).toHaveText(texts("dangers.gas.heading"));
  });
});

test.describe("a script that is lost", () => {
  test.use({ expectedFaults: /404|ERR_|Unexpected|MIME/ });

  for (const [how, come] of [
    ["isn't there", null],
    ["finds no network", "abort"],
    ["is cut off", { contentType: "text/javascript", body: "var e,t,n=" }],
    ["throws at once", { contentType: "text/javascript", body: "Unexpected.thing" }],
  ] as const)
    test(`and ${how} leaves what the page put inside the tag`, async ({ page }) => {
      if (come)
        await page.route("**/nothing-here.js", (route) =>
          come === "abort" ? route.abort() : route.fulfill(come),
        );
      await page.goto("ways/fails.html");
      await expect(page.getByText("Smoke, sparks or a smell of gas?")).toBeVisible();
      await expect(page.getByRole("link", { name: "Larder Lane Spares can help you" })).toBeVisible();
    });
});

test.describe("a frame that may keep nothing", () => {
  test("has a panel that says so, works on, and stops for a danger", async ({ page }) => {
    await page.goto("ways/no-storage.html");
    const panel = page.frameLocator("iframe").locator("fridgeside-panel");
    const { texts } = new PanelPage(page);
    const heading = panel.getByRole("heading", { level: 2 });
    const tap = (key: string) => panel.getByRole("button", { name: texts(key), exact: true }).tap();
    await expect(panel.locator(".notices")).toBeAttached();
    await tap("checks.opening.symptom.answers.no-ice");
    await expect(panel.getByText(texts("notices.memory-only"))).toBeVisible();
    await tap("checks.opening.danger.answers.none");
    await tap("checks.opening.supply.answers.plumbed");
    await expect(heading).toHaveText(texts("checks.opening.changed.ask"));
    await tap("ui.danger");
    await panel
      .getByRole("button", { name: texts("checks.opening.danger.answers.gas") })
      .last()
      .tap();
    await expect(heading).toHaveText(texts("dangers.gas.heading"));
  });
});

test.describe("a page that is read from right to left", () => {
  test("leaves the panel its own direction, on every kind of place in it", async ({ panel, page }) => {
    await panel.openWhere("flow-test.run", { "opening.symptom": "no-ice" }, "ways/right-to-left.html");
    const turned = await panel.host.evaluate((host) =>
      [host, ...(host.shadowRoot?.querySelectorAll("*") ?? [])]
        .filter((each) => getComputedStyle(each).direction !== "ltr")
        .map((each) => each.localName),
    );
    expect(turned).toEqual([]);
    expect(await page.locator("h1").evaluate((each) => getComputedStyle(each).direction)).toBe("rtl");
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThan(1);
    // Full screen is drawn over the page, in its own direction too.
    await panel.opensMenu("restart");
  });
});

test("two languages from one script: the second fetches its own texts alone", async ({ page }) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.goto("ways/languages.html");
  const british = new PanelPage(page, { sessionName: "kitchen" });
  const american = new PanelPage(page, { sessionName: "garage", language: "en-US" });
  for (const panel of [british, american]) {
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await says(panel, "leaking");
    await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.leak.ask"));
  }
  await expect(american.host.getByRole("region")).toHaveAttribute("lang", "en-US");
  expect(asked.filter((path) => /^\/fridgeside/.test(path))).toEqual(["/fridgeside.en-GB.js"]);
  expect(asked.filter((path) => path.includes("/engine-"))).toHaveLength(1);
});
