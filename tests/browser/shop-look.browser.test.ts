import { violationsOn } from "./axe.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { fieldOf, heardBy, say } from "./talk.ts";

/** Opens a page of a shop that has these rules; gives what the console warned of. */
async function openIn(panel: PanelPage, rules: string): Promise<string[]> {
  const warnings: string[] = [];
  panel.page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
  await panel.page.route("**/place.css", (route) => route.fulfill({ body: rules, contentType: "text/css" }));
  await panel.page.goto("no-panel.html");
  await panel.page.evaluate(() =>
    document.querySelector("#place")?.append(document.createElement("fridgeside-panel")),
  );
  await panel.seesTurn();
  await panel.says();
  return warnings;
}

const maroon = `fridgeside-panel {
  --fridgeside-ground: #fff8f0; --fridgeside-card: white; --fridgeside-tint: hsl(25 60% 92%);
  --fridgeside-text: #2a1218; --fridgeside-quiet-text: #5d4048; --fridgeside-edge: oklch(0.4 0.09 10);
  --fridgeside-accent: #7a1f3d; --fridgeside-on-accent: #fff;
  --fridgeside-font: Georgia, serif; --fridgeside-radius: 2px; --fridgeside-space: 14px;
}`;

test.describe("a shop's own look", () => {
  test("is worn in its colours, its font, its corners and its gaps, and axe finds no fault with it", async ({
    panel,
    page,
  }) => {
    expect(await openIn(panel, maroon)).toEqual([]);
    const region = panel.host.getByRole("region");
    await expect(region).toHaveCSS("background-color", "rgb(255, 248, 240)");
    await expect(region).toHaveCSS("color", "rgb(42, 18, 24)");
    await expect(region).toHaveCSS("font-family", "Georgia, serif, sans-serif");
    await expect(region).toHaveCSS("border-radius", "2px");
    await expect(region.locator(".answers")).toHaveCSS("gap", "14px");
    await expect(region.locator(".past > b").first()).toHaveCSS("background-color", "rgb(122, 31, 61)");
    await expect(panel.button("Danger?").locator("svg")).toHaveCSS("color", "rgb(174, 34, 26)");
    expect(await violationsOn(page, "maroon")).toEqual([]);
  });

  test("that can't be read is said once at the console, and the panel keeps its own", async ({
    panel,
    page,
  }) => {
    const warnings = await openIn(
      panel,
      ":root { --fridgeside-accent: #ffb3c6; --fridgeside-text: #777; --fridgeside-ground: #fff; }",
    );
    const region = panel.host.getByRole("region");
    await expect(region).toHaveCSS("background-color", "rgb(241, 249, 253)");
    await expect(region).toHaveCSS("color", "rgb(5, 38, 59)");
    expect(warnings).toHaveLength(2);
    expect(warnings[0]).toContain(
      "--fridgeside-text (#777777) on --fridgeside-ground (#ffffff) has a contrast of 4.47:1",
    );
    expect(warnings[1]).toContain("--fridgeside-accent (#ffb3c6) on our ground (#f1f9fd)");
    await panel.host.evaluate((host) => host.setAttribute("class", "again"));
    await expect(region).toHaveCSS("color", "rgb(5, 38, 59)");
    expect(warnings).toHaveLength(2);
    expect(await violationsOn(page, "kept")).toEqual([]);
  });

  test("may have other colours in the dark", async ({ panel, page }) => {
    const css =
      "fridgeside-panel { --fridgeside-accent: light-dark(#7a1f3d, #ffb3c6); --fridgeside-on-accent: light-dark(#fff, #2a0010); }";
    expect(await openIn(panel, css)).toEqual([]);
    const said = panel.host.locator(".past > b").first();
    await expect(said).toHaveCSS("background-color", "rgb(122, 31, 61)");
    await panel.host.evaluate((host) => host.setAttribute("theme", "dark"));
    await expect(said).toHaveCSS("background-color", "rgb(255, 179, 198)");
    await expect(said).toHaveCSS("color", "rgb(42, 0, 16)");
    expect(await violationsOn(page, "dark maroon")).toEqual([]);
  });

  for (const [name, value, wants] of [
    ["accent", "blurple", "a colour that nothing shows through"],
    ["ground", "#ffffff80", "a colour that nothing shows through"],
    ["radius", "4em", "a length from 0px to 24px"],
    ["radius", "round", "a length from 0px to 24px"],
    ["space", "0", "a length from 4px to 20px"],
    ["font", "12px/1 x; y", "the name of a font"],
  ] as const) {
    test(`${name}: ${value} is left with one sentence`, async ({ panel }) => {
      const warnings = await openIn(panel, `fridgeside-panel { --fridgeside-${name}: ${value} }`);
      expect(warnings).toEqual([expect.stringContaining(`--fridgeside-${name} must be ${wants}`)]);
    });
  }

  test("brings a file of its own, which a shop that sets nothing never fetches", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await openIn(panel, "");
    expect(asked.some((path) => path.includes("/parts/engine-"))).toBe(true);
    expect(asked.filter((path) => path.includes("/parts/dress-"))).toEqual([]);
  });
});

test.describe("a page's rules for parts of the panel", () => {
  test("restyle a question and an answer", async ({ panel }) => {
    await openIn(
      panel,
      "::part(question) { color: rgb(1, 2, 3) } fridgeside-panel::part(answer) { border-radius: 5px }",
    );
    await expect(panel.heading).toHaveCSS("color", "rgb(1, 2, 3)");
    await expect(panel.host.locator(".answers > button").first()).toHaveCSS("border-radius", "5px");
  });

  test("can't take the way out of a danger away", async ({ panel }) => {
    await openIn(panel, "::part(bar) { display: none; visibility: hidden; opacity: 0 }");
    await expect(panel.button("Danger?")).toBeVisible();
    await expect(panel.host.locator("header")).toHaveCSS("opacity", "1");
  });
});

test.describe("a shop's own words", () => {
  /** Opens a page whose panel takes its words from a file with this in it. */
  async function openWith(panel: PanelPage, answer: { body: string }): Promise<string[]> {
    const warnings: string[] = [];
    panel.page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
    await panel.page.route("**/words.json", (route) =>
      route.fulfill({ contentType: "application/json", ...answer }),
    );
    await panel.page.goto("no-panel.html");
    await panel.page.evaluate(() => {
      const host = document.createElement("fridgeside-panel");
      host.setAttribute("words", "words.json");
      document.querySelector("#place")?.append(host);
    });
    await expect(fieldOf(panel)).toBeVisible();
    return warnings;
  }

  test("greet, and answer what a visit costs, and what is wrong with them is said once", async ({
    panel,
  }) => {
    const warnings = await openWith(panel, {
      body: JSON.stringify({
        "thread.hello": "Larder Lane here. What's wrong?",
        "asides.cost-engineer.says": "Our engineer's visit costs £65.",
        "ui.danger": "Trouble?",
        "ui.menu": "<b>Rest</b>",
      }),
    });
    await expect(panel.heading).toHaveText("Larder Lane here. What's wrong?");
    await say(panel, "what does an engineer cost");
    await expect(heardBy(panel).getByText("Our engineer's visit costs £65.")).toBeVisible();
    await expect(panel.button("Danger?")).toBeVisible();
    await expect(panel.button("More")).toBeVisible();
    expect(warnings.sort()).toEqual([
      expect.stringContaining('"ui.danger" keeps our words'),
      expect.stringContaining('"ui.menu" keeps our words, because it has markup'),
    ]);
  });

  test("have the shop's facts beside them, which side questions quote", async ({ panel }) => {
    const warnings = await openWith(panel, {
      body: JSON.stringify({
        "asides.cost-engineer.says": "Ask us.",
        shop: {
          currency: "GBP",
          "call-out": 65,
          "return-days": "<img src=x onerror=alert(1)>",
          "opening-hours": "Mo-Fr 09:00-17:30, Sa 10:00-14:00",
        },
      }),
    });
    await say(panel, "what does an engineer cost");
    await expect(heardBy(panel).getByText("A call-out here costs £65.")).toBeVisible();
    await say(panel, "when are you open");
    await expect(
      heardBy(panel).getByText(
        /^The shop is open Monday to Friday from 0?9:00 to 17:30, and Saturday from 10:00 to 14:00\. It's (open|closed) now\.$/,
      ),
    ).toBeVisible();
    await say(panel, "can i send the part back");
    await expect(heardBy(panel).getByText("Look at the shop's page about returns")).toBeVisible();
    expect(warnings).toEqual([expect.stringContaining('"return-days" below "shop" must be a whole number')]);
  });

  test("that don't come leave ours", async ({ panel }) => {
    const warnings = await openWith(panel, { body: "<!doctype html>" });
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    expect(warnings).toEqual([expect.stringContaining("our words are used, because the file is not JSON")]);
  });
});
