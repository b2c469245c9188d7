import type { Page } from "@playwright/test";
import { violationsOn } from "./axe.ts";
import { Finger } from "./finger.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const dialogIn = (panel: PanelPage) => panel.host.getByRole("dialog", { name: panel.text("ui.title") });
const closeButton = (panel: PanelPage) => panel.button(panel.text("thread.full-close"));
const fieldOf = (panel: PanelPage) => panel.host.getByRole("textbox", { name: panel.text("composer.label") });

/** By the menu, as a person does it. */
async function openFull(panel: PanelPage): Promise<void> {
  await panel.button(panel.text("ui.menu")).tap();
  await panel.button(panel.text("thread.full")).tap();
  await expect(dialogIn(panel)).toBeVisible();
}

/** Answers the opening and the first check; returns the question that was answered last, then the one before it, and so on. */
async function answerSome(panel: PanelPage): Promise<string[]> {
  const asked: string[] = [];
  await panel.says("no-ice");
  for (const answer of ["none", "plumbed", "not-sure"]) {
    asked.unshift((await panel.heading.textContent()) ?? "");
    await panel.answer(answer);
  }
  return asked;
}

/** Comes to the shop's page from another one, which Back would lead to. */
async function comeFromElsewhere(page: Page, panel: PanelPage, path?: string): Promise<void> {
  await page.goto("blank.html");
  await panel.open(path);
}

const pathOf = (page: Page) => page.evaluate(() => location.pathname + location.search + location.hash);

/** Presses Back as often as told, each time as soon as the browser has gone back. */
const pressBack = (page: Page, times = 1) =>
  page.evaluate(async (count) => {
    for (let pressed = 0; pressed < count; pressed++) {
      const moved = new Promise((resolve) => navigation.addEventListener("currententrychange", resolve));
      history.back();
      await moved;
    }
  }, times);

test.describe("the panel in a phone's whole window", () => {
  for (const colorScheme of ["light", "dark"] as const)
    test(`shows the same turn, fills the window and is fit for everybody in ${colorScheme}`, async ({
      panel,
      page,
    }) => {
      await page.emulateMedia({ colorScheme });
      await panel.openWhere("flow-test.run", { "opening.symptom": "no-ice" });
      await openFull(panel);
      await panel.seesTurn();
      await expect(panel.heading).toBeFocused();
      expect(await dialogIn(panel).boundingBox()).toEqual({ x: 0, y: 0, width: 360, height: 740 });
      await expect(fieldOf(panel)).toBeInViewport({ ratio: 1 });
      expect(await violationsOn(page, `full screen ${colorScheme}`)).toEqual([]);
    });

  test("is offered by the menu alone, and nowhere on a wide screen", async ({ panel, page }) => {
    await panel.open();
    await expect(dialogIn(panel)).toHaveCount(0);
    await expect(panel.button(panel.text("thread.full"))).toHaveCount(0);
    await panel.button(panel.text("ui.menu")).tap();
    await expect(panel.button(panel.text("thread.full"))).toBeVisible();
    await page.setViewportSize({ width: 640, height: 740 });
    await expect(panel.button(panel.text("thread.full"))).toBeHidden();
  });

  test("goes on with what was begun: typed words, a stopwatch, and what is open", async ({ panel, page }) => {
    await panel.openWhere("flow-test.run", { "opening.symptom": "no-ice" });
    await panel.button(panel.text("measure.start")).tap();
    await page.clock.runFor(3000);
    await fieldOf(panel).fill("it only drips");
    const section = await panel.host.locator(".panel").elementHandle();
    for (const act of [() => openFull(panel), () => closeButton(panel).tap()]) {
      await act();
      await expect(fieldOf(panel)).toHaveValue("it only drips");
      await expect(panel.button(panel.text("measure.start"))).toHaveCount(0);
      expect(await section?.evaluate((each) => each.isConnected), "nothing was drawn anew").toBe(true);
    }
    await expect(dialogIn(panel)).toHaveCount(0);
  });

  test("the page behind it does not scroll, and is where it was afterwards", async ({ panel, page }) => {
    await panel.open();
    await answerSome(panel);
    const before = await page.evaluate(() => [scrollY, document.documentElement.getAttribute("style")]);
    await openFull(panel);
    await page.mouse.move(180, 400);
    await page.mouse.wheel(0, 4000);
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
    expect(await page.evaluate(() => scrollY)).toBe(before[0]);
    await closeButton(panel).tap();
    await expect(dialogIn(panel)).toHaveCount(0);
    await expect
      .poll(() => page.evaluate(() => [scrollY, document.documentElement.getAttribute("style")]))
      .toEqual(before);
    await panel.seesTurn();
    await expect(panel.button(panel.text("ui.menu"))).toBeFocused();
  });

  test("its bar begins at the other side where people read from right to left", async ({ panel }) => {
    await panel.open();
    await openFull(panel);
    await dialogIn(panel).evaluate((dialog) => {
      for (const each of [dialog, dialog.querySelector(".panel")]) each?.setAttribute("dir", "rtl");
    });
    const [close, menu] = [await closeButton(panel).boundingBox(), await panel.button("More").boundingBox()];
    expect(close?.x).toBe(0);
    expect(menu?.x).toBeGreaterThanOrEqual(44);
  });
});

test.describe("while it fills the window", () => {
  test("Back is the question before, and at the first question it closes", async ({ panel, page }) => {
    await comeFromElsewhere(page, panel);
    const address = page.url();
    const asked = await answerSome(panel);
    await openFull(panel);
    for (const question of asked) {
      await page.goBack();
      await expect(panel.heading).toHaveText(question);
      await expect(panel.heading).toBeFocused();
      await expect(dialogIn(panel)).toBeVisible();
    }
    await page.goBack();
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await page.goBack();
    await expect(dialogIn(panel)).toHaveCount(0);
    await expect(panel.heading).toBeInViewport();
    await expect(panel.heading).toBeFocused();
    expect(page.url()).toBe(address);
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("Back pressed twice takes two answers back", async ({ panel, page }) => {
    await panel.open();
    const asked = await answerSome(panel);
    await openFull(panel);
    await pressBack(page, 2);
    await expect(panel.heading).toHaveText(asked[1] ?? "");
    await expect(dialogIn(panel)).toBeVisible();
  });

  test("answers that are given in it can be taken back in it as well", async ({ panel, page }) => {
    await panel.open();
    await openFull(panel);
    const asked = await answerSome(panel);
    for (const question of asked) {
      await page.goBack();
      await expect(panel.heading).toHaveText(question);
    }
    await expect(dialogIn(panel)).toBeVisible();
  });

  test("Escape puts it back, after what was said to a sentence", async ({ panel, page }) => {
    await panel.open();
    await answerSome(panel);
    await openFull(panel);
    await fieldOf(panel).fill("what does it cost?");
    await fieldOf(panel).press("Enter");
    await expect(panel.host.locator(".heard")).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(panel.host.locator(".heard")).toHaveCount(0);
    await expect(dialogIn(panel)).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(dialogIn(panel)).toHaveCount(0);
    await panel.seesTurn();
  });

  test("a stop is not taken back: Back closes it, and the stop stands", async ({ panel, page }) => {
    await panel.open();
    await answerSome(panel);
    await openFull(panel);
    await panel.reportDanger("gas");
    await expect(dialogIn(panel)).toBeVisible();
    await page.goBack();
    await expect(dialogIn(panel)).toHaveCount(0);
    await panel.seesEnding("stopped");
    expect(await pathOf(page)).toBe("/index.html");
  });
});

test.describe("the page's own history", () => {
  test("is as it was once it has closed", async ({ panel, page }) => {
    await comeFromElsewhere(page, panel);
    await page.evaluate(() => history.replaceState({ of: "the shop" }, "", "?page=2#help"));
    // What the page listened with before this file was there hears of every entry: a window calls in order.
    await expect(panel.host.locator(".full")).toBeAttached();
    const popped = await page.evaluateHandle(() => {
      const states: unknown[] = [];
      addEventListener("popstate", (event) => states.push(event.state));
      return states;
    });
    await answerSome(panel);
    await openFull(panel);
    expect(await pathOf(page)).toBe("/index.html?page=2#help");
    await page.goBack();
    await closeButton(panel).tap();
    await expect.poll(() => page.evaluate(() => history.state)).toEqual({ of: "the shop" });
    expect(await pathOf(page)).toBe("/index.html?page=2#help");
    expect(await popped.jsonValue(), "the page's script hears nothing of it").toEqual([]);
    // What is left is ahead, and leads nowhere.
    await page.goForward();
    await expect.poll(() => page.evaluate(() => history.state)).toEqual({ of: "the shop" });
    await expect(dialogIn(panel)).toHaveCount(0);
    expect(await popped.jsonValue()).toEqual([{ of: "the shop" }]);
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("goes on where the page itself moves on, and it closes", async ({ panel, page }) => {
    await comeFromElsewhere(page, panel);
    await answerSome(panel);
    await openFull(panel);
    await page.evaluate(() => history.pushState({ of: "the shop" }, "", "?page=2"));
    await expect(dialogIn(panel)).toHaveCount(0);
    expect(await pathOf(page)).toBe("/index.html?page=2");
    await panel.seesTurn();
    // What lies between the two is passed over.
    await page.goBack();
    await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
    expect(await pathOf(page)).toBe("/index.html");
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("is free after a reload: the panel is in the page, and Back leaves it", async ({ panel, page }) => {
    await comeFromElsewhere(page, panel);
    await answerSome(panel);
    await openFull(panel);
    await panel.reload();
    await expect(dialogIn(panel)).toHaveCount(0);
    await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("serves one of two panels at a time", async ({ page }) => {
    const [kitchen, garage] = ["kitchen", "garage"].map(
      (sessionName) => new PanelPage(page, { sessionName }),
    ) as [PanelPage, PanelPage];
    await kitchen.open("ways/two.html");
    await kitchen.says("no-ice");
    await garage.says("no-ice");
    for (const [one, other] of [
      [kitchen, garage],
      [garage, kitchen],
    ] as const) {
      await openFull(one);
      await page.goBack();
      await expect(one.heading).toHaveText(one.text("thread.hello"));
      await expect(dialogIn(other)).toHaveCount(0);
      await page.goBack();
      await expect(dialogIn(one)).toHaveCount(0);
    }
    expect(await pathOf(page)).toBe("/ways/two.html");
  });
});

test.describe("a page that writes its own history meanwhile", () => {
  test("keeps an entry that has a copy of ours in it, after a reload too", async ({ panel, page }) => {
    await comeFromElsewhere(page, panel);
    await answerSome(panel);
    await openFull(panel);
    await page.evaluate(() => history.pushState({ ...history.state, page: 2 }, ""));
    await expect(dialogIn(panel)).toHaveCount(0);
    await panel.reload();
    // The menu has its entry once what would pass over it is there.
    await panel.button(panel.text("ui.menu")).tap();
    await expect(panel.button(panel.text("thread.full"))).toBeVisible();
    expect(await page.evaluate(() => history.state)).toMatchObject({ page: 2 });
    await page.goBack();
    await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
    await page.goForward();
    await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("has what it notes for the same address kept, and Back is the question before still", async ({
    panel,
    page,
  }) => {
    await comeFromElsewhere(page, panel);
    const asked = await answerSome(panel);
    await openFull(panel);
    await page.evaluate(() => history.replaceState({ scrolled: 120 }, ""));
    await page.goBack();
    await expect(panel.heading).toHaveText(asked[0] ?? "");
    await expect(dialogIn(panel)).toBeVisible();
    await closeButton(panel).tap();
    await expect.poll(() => page.evaluate(() => history.state)).toEqual({ scrolled: 120 });
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  test("closes it by another address in place of one of ours, and one Back passes the rest", async ({
    panel,
    page,
  }) => {
    await comeFromElsewhere(page, panel);
    await answerSome(panel);
    await openFull(panel);
    await page.evaluate(() => history.replaceState({ ...history.state }, "", "?page=2"));
    await expect(dialogIn(panel)).toHaveCount(0);
    expect(await pathOf(page)).toBe("/index.html?page=2");
    await page.goBack();
    await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
    expect(await pathOf(page)).toBe("/index.html");
    await page.goBack();
    expect(await pathOf(page)).toBe("/blank.html");
  });

  for (const [browser, tells] of [
    ["tells of it", true],
    ["tells nothing of it, at the next touch", false],
  ] as const)
    test(`closes it and scrolls and focuses as it likes, where the browser ${browser}`, async ({
      panel,
      page,
    }) => {
      if (!tells)
        await page.addInitScript("Object.defineProperty(window, 'navigation', { value: undefined })");
      await panel.open();
      await answerSome(panel);
      await page.evaluate(() => {
        document.body.style.minHeight = "4000px";
        scrollTo(0, 300);
      });
      await openFull(panel);
      await page.evaluate(() => {
        history.pushState({ of: "the shop" }, "", "?page=2");
        scrollTo(0, 0);
      });
      if (!tells) await panel.button(panel.text("ui.menu")).tap();
      await expect(dialogIn(panel)).toHaveCount(0);
      await page.evaluate(
        () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
      );
      expect(await page.evaluate(() => [scrollY, document.activeElement?.tagName])).toEqual([0, "BODY"]);
      expect(await pathOf(page)).toBe("/index.html?page=2");
    });
});

test.describe("a thumb that slips", () => {
  // What counts is when the browser says that a tap was made.
  test.use({ hand: "fast", clock: "real" });

  test("closes it with its first tap, and touches nothing of the page with its second", async ({
    panel,
    page,
  }) => {
    const finger = await Finger.on(page);
    await panel.open();
    const touched = await page.evaluateHandle(() => {
      const button = document.createElement("button");
      button.textContent = "To the basket";
      Object.assign(button.style, { position: "fixed", inset: "0 0 auto auto", height: "56px" });
      const touched: number[] = [];
      button.addEventListener("click", () => touched.push(1));
      document.body.append(button);
      return touched;
    });
    await finger.tap(panel.button(panel.text("ui.menu")));
    await finger.tap(panel.button(panel.text("thread.full")));
    await finger.tapTwice(closeButton(panel), 150);
    await expect(dialogIn(panel)).toHaveCount(0);
    expect(await touched.jsonValue()).toEqual([]);
    await finger.tap(page.getByRole("button", { name: "To the basket" }));
    expect(await touched.jsonValue()).toEqual([1]);
  });
});
