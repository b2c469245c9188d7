import type { Page } from "@playwright/test";
import { noteShifts, shiftsOf } from "./layout-shifts.ts";
import { expect, test } from "./panel-test.ts";
import { fieldOf } from "./talk.ts";

/** A wide drawing without a size of its own, as a shop may give it. */
const svg =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"><path fill="#484" d="M0 0h4v1H0z"/></svg>';
const drawing = { contentType: "image/svg+xml", body: svg };

/** Opens a page whose panel has the attribute from the start, and notes what moves and what the console says. */
async function openWith(page: Page, attributes: Record<string, string>, path = "ways/one.html") {
  const warnings: string[] = [];
  page.on("console", (message) => message.type() === "warning" && warnings.push(message.text()));
  await noteShifts(page);
  const written = Object.entries(attributes)
    .map(([name, value]) => `${name}="${value}"`)
    .join(" ");
  await page.route(`**/${path}`, async (route) => {
    const response = await route.fetch();
    const body = (await response.text()).replace("<fridgeside-panel", `<fridgeside-panel ${written}`);
    await route.fulfill({ response, body });
  });
  await page.goto(path);
  return { warnings, shifts: () => shiftsOf(page) };
}

/** How far below the panel's top the question stands. */
const questionTop = (page: Page) =>
  page.evaluate(() => {
    const host = document.querySelector("fridgeside-panel") as HTMLElement;
    const top = host.shadowRoot?.querySelector("h2")?.getBoundingClientRect().top ?? 0;
    return top - host.getBoundingClientRect().top;
  });

test.describe("a shop's picture", () => {
  test("comes late, above the question that greets, and nothing moves", async ({ panel, page }) => {
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/front.svg", async (route) => {
      await held;
      await route.fulfill(drawing);
    });
    const { shifts, warnings } = await openWith(page, { picture: "/front.svg", "picture-alt": "Our shop" });
    await expect(fieldOf(panel)).toBeVisible();
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    const before = await questionTop(page);
    release();
    const picture = panel.host.getByRole("img", { name: "Our shop" });
    await expect
      .poll(() => picture.evaluate((image: HTMLImageElement) => image.naturalWidth))
      .toBeGreaterThan(0);
    const box = await picture.boundingBox();
    expect(box?.height).toBeGreaterThan(40);
    expect((box?.width ?? 0) / (box?.height ?? 1)).toBeCloseTo(4, 1);
    const heading = await panel.heading.boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(heading?.y ?? 0);
    expect(await questionTop(page)).toBe(before);
    expect(await shifts()).toEqual([]);
    expect(warnings).toEqual([]);
  });

  test("leaves the question and three answers in sight on a small phone", async ({ panel, page }) => {
    await page.setViewportSize({ width: 360, height: 640 });
    await page.route("**/front.svg", (route) => route.fulfill(drawing));
    await openWith(page, { picture: "/front.svg" });
    await expect(fieldOf(panel)).toBeVisible();
    const third = await panel.host.locator(".answers > button").nth(2).boundingBox();
    const top = (await panel.host.boundingBox())?.y ?? 0;
    // Above the field at the window's foot, once the panel's top is at the window's.
    expect((third?.y ?? 0) + (third?.height ?? 0) - top).toBeLessThanOrEqual(640 - 65);
  });

  test("is gone with its place at the next question, and at a danger", async ({ panel, page }) => {
    await page.route("**/front.svg", (route) => route.fulfill(drawing));
    await openWith(page, { picture: "/front.svg", "picture-alt": "Our shop" });
    const picture = panel.host.getByRole("img", { name: "Our shop" });
    await expect(picture).toBeVisible();
    const greeting = await questionTop(page);
    await panel.says();
    await expect(picture).toHaveCount(0);
    await panel.host.getByRole("button", { name: panel.text("checks.opening.danger.answers.gas") }).click();
    await expect(panel.host.locator(".badge, h2").first()).toBeVisible();
    await expect(picture).toHaveCount(0);
    const kept = await page.evaluate(() => {
      const turn = document
        .querySelector("fridgeside-panel")
        ?.shadowRoot?.querySelector(".turn > :last-child");
      return turn && getComputedStyle(turn, "::before").content;
    });
    expect(kept).toBe("none");
    expect(greeting).toBeGreaterThan(100);
  });

  test.describe("that can't be had", () => {
    test.use({ expectedFaults: /front\.svg|Content Security Policy/ });

    test("leaves no broken picture, moves nothing, and is said in the console", async ({ panel, page }) => {
      await page.route("**/front.svg", (route) => route.fulfill({ status: 404, body: "" }));
      const { shifts, warnings } = await openWith(page, { picture: "/front.svg", "picture-alt": "Our shop" });
      await expect.poll(() => warnings).toEqual([expect.stringContaining("can't be shown")]);
      await expect(panel.host.locator("img")).toHaveCount(0);
      await expect(panel.host.getByText("Our shop")).toHaveCount(0);
      await expect(panel.heading).toBeVisible();
      expect(await shifts()).toEqual([]);
    });

    test("is refused by the page's policy as any other of its pictures", async ({ panel, page }) => {
      const { warnings } = await openWith(
        page,
        { picture: "https://img.example/front.svg", "picture-alt": "Our shop" },
        "ways/strict.html",
      );
      await expect.poll(() => warnings.join()).toContain("can't be shown");
      await expect(panel.host.locator("img")).toHaveCount(0);
    });
  });

  test("with an address that runs is never asked for", async ({ panel, page }) => {
    const { warnings } = await openWith(page, { picture: "javascript:alert(1)" });
    await expect(fieldOf(panel)).toBeVisible();
    await expect(panel.host.locator("img")).toHaveCount(0);
    expect(warnings).toEqual([expect.stringContaining('attribute "picture" must be an address')]);
  });
});
