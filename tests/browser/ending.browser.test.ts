import type { Page } from "@playwright/test";
import { violationsOn } from "./axe.ts";
import { atModelOfBin } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

type Printed = { html: string; css: string; title: string };

/** Notes what every frame would print, in place of printing it. */
async function notesPrints(page: Page): Promise<void> {
  await page.addInitScript(() => {
    Object.assign(window, { printed: [] });
    const append = Element.prototype.append;
    Element.prototype.append = function (...nodes) {
      append.apply(this, nodes);
      for (const node of nodes)
        if (node instanceof HTMLIFrameElement && node.contentWindow) {
          const frame = node.contentWindow as Window & typeof globalThis;
          frame.print = () => {
            const rules = frame.document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules]);
            const css = rules.map((rule) => rule.cssText).join("\n");
            const { outerHTML: html } = frame.document.documentElement;
            (window as never as { printed: Printed[] }).printed.push({
              html,
              css,
              title: frame.document.title,
            });
            frame.dispatchEvent(new Event("afterprint"));
          };
        }
    };
  });
}

/** Prints what is on screen, and returns it with the number of its pages of A4. */
async function print(panel: PanelPage): Promise<Printed & { pages: number }> {
  const { page } = panel;
  await panel.button(panel.text("part.print")).tap();
  const all = await page.evaluate(() => (window as never as { printed: Printed[] }).printed);
  const printed = all.at(-1) as Printed;
  const paper = await page.context().newPage();
  await paper.setContent(`<style>${printed.css}</style>${printed.html}`);
  const pdf = (await paper.pdf({ format: "A4" })).toString("latin1");
  await paper.close();
  return { ...printed, pages: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0 };
}

test.describe("an ending on paper", () => {
  test("is on one page, with the cause first and all that was found, and without a button or the shop's page", async ({
    panel,
    page,
  }) => {
    await notesPrints(page);
    await panel.openAt(atModelOfBin());
    await panel.giveModel("TBY-744-K4.W");
    await expect(panel.button(panel.text("part.add")).first()).toBeVisible();
    const { html, title, pages } = await print(panel);
    expect(pages).toBe(1);
    expect(title).toBe(panel.text("ui.title"));
    const words = html.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");
    for (const { check, found } of panel.turn.ending?.evidence ?? [])
      expect(words).toContain(`${check} ${found}`);
    expect(words.indexOf(panel.turn.heading)).toBeLessThan(words.indexOf(panel.text("part.why")));
    expect(words).toContain(panel.text("endings.worth").split("\n")[0]);
    expect(html).not.toMatch(/<(button|input|svg|img|iframe)\b/);
    expect(words).not.toContain("Larder Lane Spares is an invented shop");
  });

  test("says whether it is worth it at the machine's age, once somebody has said that, also after a reload", async ({
    panel,
    page,
  }) => {
    await panel.openWhere("professional.end", { "opening.symptom": "no-ice" });
    const { age, worth } = panel.turn.ending ?? {};
    const old = age?.options.find(({ id }) => id === "old");
    const summary = panel.host.getByText(panel.text("part.worth"), { exact: true });
    await summary.tap();
    await expect(panel.host.getByText(worth?.[1] ?? "", { exact: true })).toBeVisible();
    // Files for what may come next are still fetched; what was said goes nowhere.
    const told: string[] = [];
    page.on("request", (request) => {
      if (request.method() !== "GET" || new URL(request.url()).search) told.push(request.url());
    });
    await panel.host.getByLabel(old?.text ?? "", { exact: true }).check();
    await expect(panel.host.getByText(old?.worth.at(-1) ?? "", { exact: true })).toBeVisible();
    await expect(panel.host.getByText(worth?.[1] ?? "", { exact: true })).toHaveCount(0);
    await panel.seesTurn();
    expect(told).toEqual([]);
    await panel.reload();
    await summary.tap();
    await expect(panel.host.getByLabel(old?.text ?? "", { exact: true })).toBeChecked();
  });

  test("is on one page where the search was a long one", async ({ panel, page }) => {
    await notesPrints(page);
    await panel.openWhere("professional.end", { "opening.symptom": "no-ice" });
    expect(panel.turn.ending?.evidence.length).toBeGreaterThan(15);
    expect((await print(panel)).pages).toBe(1);
  });

  test("leaves nothing behind in the panel", async ({ panel, page }) => {
    await notesPrints(page);
    await panel.openWhere("fixed.end");
    await print(panel);
    await expect(panel.host.locator("iframe")).toHaveCount(0);
    await panel.seesTurn();
  });
});

test.describe("an ending on a phone", () => {
  test("is shared with its own words where the phone has a share sheet", async ({ panel, page }) => {
    await page.addInitScript(() => {
      const shared: ShareData[] = [];
      Object.assign(window, { shared });
      Object.defineProperty(navigator, "share", { value: async (data: ShareData) => void shared.push(data) });
    });
    await panel.openWhere("professional.end", {}, undefined, "cooling-fault");
    await panel.seesTurn();
    await panel.button(panel.text("part.share")).tap();
    const [shared] = await page.evaluate(() => (window as never as { shared: ShareData[] }).shared);
    expect(shared?.text?.split("\n")[0]).toBe(panel.turn.heading);
    for (const { check, found } of panel.turn.ending?.evidence ?? [])
      expect(shared?.text).toContain(`- ${check}: ${found}`);
  });

  test("has the way to the shop's basket once the part is in it", async ({ panel, page }) => {
    await panel.openAt(atModelOfBin());
    await panel.giveModel("TBY-744-K4.W");
    const way = panel.host.getByRole("link", { name: panel.text("part.basket") });
    await expect(way).toHaveCount(0);
    await panel.button(panel.text("part.add")).first().tap();
    await expect(way).toHaveAttribute("href", /^http.*\/index\.html#basket$/);
    expect(await violationsOn(page)).toEqual([]);
  });

  test("shows a part where it sits, before the shop has answered", async ({ panel }) => {
    await panel.openAt(atModelOfBin());
    await panel.giveModel("TBY-744-K4.W");
    const drawing = panel.host.locator(".part-card .tile").getByRole("img");
    await expect(drawing).toHaveAttribute("aria-label", panel.text("pictures.shows.bin-seated"));
  });
});
