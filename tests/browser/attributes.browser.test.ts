import { atModelOfBin, freshSession } from "./expected.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Opens a page whose panel has these attributes from the start; gives what the console warned of. */
async function openWith(panel: PanelPage, attributes: Record<string, string>): Promise<string[]> {
  const warnings: string[] = [];
  panel.page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
  await panel.page.goto("no-panel.html");
  await panel.page.evaluate((given) => {
    const host = document.createElement("fridgeside-panel");
    for (const [name, value] of Object.entries(given)) host.setAttribute(name, value);
    document.querySelector("#place")?.append(host);
  }, attributes);
  await panel.seesTurn();
  await panel.answer("none");
  return warnings;
}

test.describe("the tag's attributes", () => {
  for (const [name, value] of [
    ["language", "tlh"],
    ["theme", "neon"],
    ["catalogue", "javascript:alert(1)"],
    ["help-link", "data:text/html,<b>hi</b>"],
    ["session-name", "../../etc"],
    ["model", "W".repeat(41)],
  ] as const) {
    test(`${name}="${value.slice(0, 20)}" is left out with one sentence in the console`, async ({
      panel,
    }) => {
      const warnings = await openWith(panel, { [name]: value });
      expect(warnings).toEqual([expect.stringContaining(`<fridgeside-panel>: attribute "${name}" must be`)]);
      expect(warnings[0]).toContain(value.slice(0, 40));
    });
  }

  test("what can be used brings no sentence", async ({ panel }) => {
    const given = { language: "en-GB", theme: "auto", catalogue: "catalogue.json", "help-link": "help.html" };
    expect(await openWith(panel, given)).toEqual([]);
  });

  test("theme wins over what the phone asks for, both ways", async ({ panel, page }) => {
    const ground = () =>
      panel.host.getByRole("region").evaluate((each) => getComputedStyle(each).backgroundColor);
    await panel.open("plain.html");
    const light = await ground();
    await page.emulateMedia({ colorScheme: "dark" });
    const dark = await ground();
    expect(dark).not.toBe(light);
    await panel.host.evaluate((host) => host.setAttribute("theme", "light"));
    expect(await ground()).toBe(light);
    await page.emulateMedia({ colorScheme: "light" });
    await panel.host.evaluate((host) => host.setAttribute("theme", "dark"));
    expect(await ground()).toBe(dark);
  });

  test("a model that the page knows is not asked for again", async ({ panel, page }) => {
    await page.goto("no-panel.html");
    await page.evaluate(() => {
      const host = document.createElement("fridgeside-panel");
      host.setAttribute("catalogue", "catalogue.json");
      host.setAttribute("model", "TBY-744-K4.W");
      document.querySelector("#place")?.append(host);
    });
    panel.session = freshSession(await panel.now(), "TBY-744-K4.W");
    await panel.goTo("part.card", { "opening.symptom": "no-ice" }, "bin-cracked");
    await panel.seesEnding("part", { cause: "bin-cracked" });
    await expect(panel.host.getByText("TBY-744-K4.W").first()).toBeVisible();
  });

  test("without a catalogue a part is named by its kind, and nothing is fetched", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await panel.openAt(atModelOfBin(), "plain.html");
    await panel.goOnWithoutModel("measure.plate-lost");
    await panel.seesEnding("part");
    expect(asked.filter((path) => path.endsWith(".json") && !path.startsWith("/parts/"))).toEqual([]);
  });
});

test.describe("American English", () => {
  test("the way on to an ending is in American words, degrees and measures", async ({ page }) => {
    const panel = new PanelPage(page, { language: "en-US" });
    await panel.openWhere(
      "freezer-temperature.read",
      { "opening.symptom": "no-ice", "flow-test.run": "cannot" },
      "in-american.html",
    );
    await expect(panel.host.getByRole("region")).toHaveAttribute("lang", "en-US");
    await expect(panel.host.getByText("0 °F").first()).toBeVisible();
    await expect(panel.host.getByRole("radio", { name: "°F" })).toBeChecked();
    await panel.goTo("stop-tap.gate-water-supply");
    await expect(panel.host.getByText(/shutoff valve/).first()).toBeVisible();
    await expect(panel.host.getByText(/stop tap/)).toHaveCount(0);
    await panel.goTo("professional.end", { "stop-tap.open": "will-not-turn" }, "tap-stuck");
    await panel.seesEnding("professional", { cause: "tap-stuck", who: "plumber" });
  });

  test("the page's own language is spoken where the tag names none", async ({ page }) => {
    await page.route("**/plain.html", async (route) => {
      const response = await route.fetch();
      await route.fulfill({
        response,
        body: (await response.text()).replace('lang="en-GB"', 'lang="en-US"'),
      });
    });
    const panel = new PanelPage(page, { language: "en-US" });
    await panel.open("plain.html");
    await expect(panel.host.getByRole("region")).toHaveAttribute("lang", "en-US");
  });
});
