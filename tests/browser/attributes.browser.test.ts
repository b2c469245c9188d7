import { replay, resume } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { atModelOfBin, freshSession, guide, sessionAt } from "./expected.ts";
import { keptText } from "./kept-logs.ts";
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
  await panel.says();
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
    const given = {
      language: "en-GB",
      theme: "auto",
      catalogue: "catalogue.json",
      "help-link": "help.html",
      "link-hosts": "larder-lane.example",
      id: "helper",
      "data-page": "fridge",
    };
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

  for (const [what, css, phone, looks] of [
    ["a dark page on a light phone", "body { background: #111; color: #eee }", "light", "dark"],
    ["a light page on a dark phone", "body { background: white }", "dark", "light"],
    ["a page without any colours, which is white", "", "dark", "light"],
    ["a page of dark colours only", ":root { color-scheme: dark }", "light", "dark"],
    ["a page that follows the phone", ":root { color-scheme: light dark }", "dark", "dark"],
    ["a light box on a dark page", "body { background: #000 } #place { background: #eee }", "dark", "light"],
    ["a veil over a dark page", "body { background: #000 } #place { background: #fff2 }", "light", "dark"],
    ["a dark page in other words", "body { background: oklch(0.2 0.03 250); color: #eee }", "light", "dark"],
  ] as const) {
    test(`without a theme the panel looks as ${what} does`, async ({ panel, page }) => {
      await page.emulateMedia({ colorScheme: phone });
      await page.route("**/place.css", (route) => route.fulfill({ body: css, contentType: "text/css" }));
      await openWith(panel, { theme: "auto" });
      const ground = await panel.host
        .getByRole("region")
        .evaluate((each) => getComputedStyle(each).backgroundColor);
      expect(ground).toBe(looks === "dark" ? "rgb(4, 22, 31)" : "rgb(241, 249, 253)");
    });
  }

  test("the panel follows a page that turns dark by a class, at once and after a slow change", async ({
    panel,
    page,
  }) => {
    const css =
      "body { background: #fff } .night { background: #000 } .slow { transition: background-color 1s }";
    await page.route("**/place.css", (route) => route.fulfill({ body: css, contentType: "text/css" }));
    await openWith(panel, {});
    const region = panel.host.getByRole("region");
    await expect(region).toHaveCSS("background-color", "rgb(241, 249, 253)");
    await page.evaluate(() => document.body.classList.add("night"));
    await expect(region).toHaveCSS("background-color", "rgb(4, 22, 31)");
    await page.evaluate(() => document.body.classList.add("slow"));
    await page.evaluate(() => document.body.classList.remove("night"));
    await expect(region).toHaveCSS("background-color", "rgb(241, 249, 253)");
    await panel.host.evaluate((host) => host.setAttribute("theme", "dark"));
    await expect(region).toHaveCSS("background-color", "rgb(4, 22, 31)");
  });

  for (const [name, said] of [
    ["shopname", 'there is no attribute "shopname". Is "shop-name" meant?'],
    ["catalogue", "catalogue.json is empty"],
  ] as const) {
    test(`${name}: what is wrong is said once, however often attributes change`, async ({ panel, page }) => {
      await page.route("**/catalogue.json", (route) =>
        route.fulfill({ body: '{"models":[],"parts":[]}', contentType: "application/json" }),
      );
      const warnings = await openWith(panel, { [name]: "catalogue.json" });
      for (const text of ["One", "Two"]) {
        await panel.host.evaluate((host, given) => host.setAttribute("shop-name", given), text);
        await panel.seesTurn();
        await panel.seesNotice("welcome-back");
      }
      expect(warnings).toEqual([expect.stringContaining(said)]);
    });
  }

  test("help by telephone is a link that opens no empty tab", async ({ panel, page }) => {
    await page.goto("no-panel.html");
    await page.evaluate(() => {
      const host = document.createElement("fridgeside-panel");
      host.setAttribute("help-link", "tel:+441632960000");
      document.querySelector("#place")?.append(host);
    });
    panel.session = freshSession(await panel.now());
    await panel.askForHelp();
    const link = panel.host.locator("a.shop");
    await expect(link).toHaveAttribute("href", "tel:+441632960000");
    await expect(link).not.toHaveAttribute("target");
  });

  /** Opens a page that gives a model code where a cracked bin was just seen, one tap before the part. */
  async function openBeforePart(panel: PanelPage, attributes: Record<string, string>): Promise<void> {
    const { log } = sessionAt("ice-bin.reseat", { "opening.symptom": "no-ice" });
    await panel.page.goto("blank.html");
    await panel.page.clock.setSystemTime(log.events.at(-1)?.at ?? log.started);
    await panel.page.evaluate((text) => localStorage.setItem("fridgeside:panel", text), keptText(log));
    await panel.page.goto("no-panel.html");
    await panel.page.evaluate((given) => {
      const host = document.createElement("fridgeside-panel");
      for (const [name, value] of Object.entries(given)) host.setAttribute(name, value);
      document.querySelector("#place")?.append(host);
    }, attributes);
    panel.session = resume(guide, log, await panel.now()).session;
    await expect(panel.heading).toHaveText(panel.turn.heading);
  }

  test("a model that the page gives is looked up as if typed, and not asked for where it is certain", async ({
    panel,
  }) => {
    await openBeforePart(panel, { catalogue: "catalogue.json", model: "tby 744k4w" });
    await panel.button(panel.text("checks.ice-bin.reseat.answers.cracked")).tap();
    await expect(panel.heading).toHaveText("The ice bin is broken and doesn't sit right");
    await expect(panel.heading).toBeFocused();
    const last = (await panel.storedEvents()).at(-1);
    expect(last).toEqual({
      type: "model-given",
      turn: "part.model",
      code: "TBY-744-K4.W",
      typed: "tby 744k4w",
    });
    await expect(panel.host.getByText("TBY-744-K4.W").first()).toBeVisible();
  });

  test("a model that the page gives and that has a twin is asked about", async ({ panel }) => {
    await openBeforePart(panel, { catalogue: "catalogue.json", model: "BLQ254NH/A0" });
    await panel.answer("cracked");
    for (const code of ["BLQ254NH/A0", "BLQ254NH/AO"])
      await expect(panel.button(`${panel.text("measure.mine")}: ${code}`)).toBeVisible();
    await panel.seesTurn();
  });

  test("a model that the page gives and nobody knows is said to be unknown, and another can be typed", async ({
    panel,
  }) => {
    await openBeforePart(panel, { catalogue: "catalogue.json", model: "QQQ 999 999" });
    await panel.answer("cracked");
    await expect(
      panel.host.getByText(panel.text("measure.model-unknown", { typed: "QQQ 999 999" })),
    ).toBeVisible();
    await expect(panel.host.locator(".turn").getByRole("textbox")).toHaveValue("QQQ 999 999");
    await panel.giveModel("TBY-744-K4.W");
    await panel.seesEnding("part", { cause: "bin-cracked" });
  });

  test("a code that the shop's list has no longer can be typed again from the part", async ({ panel }) => {
    const { log } = atModelOfBin();
    const given = {
      type: "model-given",
      turn: "part.model",
      code: "GONE-1",
      typed: "gone1",
      at: at(60),
    } as const;
    const left = replay(guide, { ...log, events: [...log.events, given] }).session;
    await panel.openAt(left, "with-catalogue.html");
    await expect(panel.host.getByText(panel.text("part.lost-model", { model: "GONE-1" }))).toBeVisible();
    await panel.seesTurn();
    await panel.button(panel.text("part.retype")).tap();
    await expect(panel.heading).toHaveText(panel.text("endings.model.ask"));
    await expect(panel.heading).toBeFocused();
  });

  test("without a catalogue nobody is asked for a code: a part is named by its kind, and nothing is fetched", async ({
    panel,
    page,
  }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await panel.openWhere("ice-bin.reseat", { "opening.symptom": "no-ice" }, "plain.html");
    await panel.button(panel.text("checks.ice-bin.reseat.answers.cracked")).tap();
    await expect(panel.heading).toHaveText("The ice bin is broken and doesn't sit right");
    await expect(panel.heading).toBeFocused();
    const part = panel.text("parts.ice-bin.name");
    await expect(panel.host.getByText(panel.text("part.unknown-model", { part }))).toBeVisible();
    expect((await panel.storedEvents()).at(-1)).toMatchObject({ type: "model-given", code: null, typed: "" });
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
    await expect(
      panel.host
        .getByText(/shut-off valve/)
        .filter({ visible: true })
        .first(),
    ).toBeVisible();
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
