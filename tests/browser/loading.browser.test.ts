import { says } from "./greeting.ts";
import { noteShifts, shiftsOf } from "./layout-shifts.ts";
import { expect, test } from "./panel-test.ts";

/** Holds back what the script loads later, until `release` is called. */
function createHold(): { held: Promise<void>; release(): void } {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  return { held, release: () => release() };
}

test.describe("arriving in a page", () => {
  test("nothing scrolls, nothing takes the focus, and what stands below does not jump", async ({
    panel,
    page,
  }) => {
    await noteShifts(page);
    await panel.open("long.html");
    await expect(page.getByRole("searchbox")).toBeFocused();
    expect(await page.evaluate(() => scrollY)).toBe(0);
    // Good is 0.1 and less (Core Web Vitals); far below the fold nothing at all may move.
    expect(await shiftsOf(page)).toEqual([]);
  });

  test("it comes into sight without moving what the person looks at", async ({ panel, page }) => {
    await page.setViewportSize({ width: 360, height: 2600 });
    await noteShifts(page);
    await panel.open("long.html");
    const shifts = await shiftsOf(page);
    expect(shifts.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(0.1);
  });

  test("somebody who comes back finds the page where it was, not scrolled to the panel", async ({
    panel,
    page,
  }) => {
    await panel.openWhere("flow-test.run", {}, "long.html");
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await expect(page.getByRole("searchbox")).toBeFocused();
  });

  for (const [height, turn] of [
    [740, "opening.supply"],
    [1400, "opening.supply"],
    [740, "flow-test.run"],
    [740, "stop-tap.gate-water-supply"],
    [740, "wait-for-ice.wait"],
    [950, "wait-for-ice.wait"],
  ] as const)
    test(`on a screen ${height} px high nothing moves for somebody who comes back to ${turn}`, async ({
      panel,
      page,
    }) => {
      await page.setViewportSize({ width: 360, height });
      await panel.openWhere(turn, turn.startsWith("opening") ? {} : { "opening.symptom": "no-ice" });
      await noteShifts(page);
      const { held, release } = createHold();
      await page.route("**/parts/**", async (route) => {
        await held;
        await route.continue();
      });
      await page.goto("ways/one.html");
      await expect(panel.host.getByText(panel.text("ui.loading"))).toBeVisible();
      release();
      await expect(panel.heading).toBeVisible();
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
      expect(await shiftsOf(page)).toEqual([]);
    });

  test("the height that the page keeps free counts where the script is there before the page's style", async ({
    panel,
    page,
  }) => {
    const { held, release } = createHold();
    await page.route("**/shop.css", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("ways/one.html", { waitUntil: "commit" });
    // A page draws no frame before its style is there: what waits for one would wait for ever.
    await expect
      .poll(() =>
        page.evaluate(() => !!document.querySelector("fridgeside-panel")?.shadowRoot?.firstElementChild),
      )
      .toBe(true);
    release();
    await expect(panel.heading).toBeVisible();
    const { height } = (await panel.host.boundingBox()) as { height: number };
    expect(height).toBeGreaterThanOrEqual(1040);
  });

  test("after a tap the new question has the focus and stands in sight", async ({ panel, page }) => {
    await panel.open("long.html");
    await panel.says();
    const top = await panel.heading.evaluate((heading) => heading.getBoundingClientRect().top);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(top).toBeLessThan(await page.evaluate(() => innerHeight));
  });
});

test.describe("a slow connection", () => {
  test("the opening is answered before the rest is there, and goes on from there when it is", async ({
    panel,
    page,
  }) => {
    const { held, release } = createHold();
    await page.route("**/parts/**", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    await says(panel);
    await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    await expect(panel.heading).toBeFocused();
    expect(await panel.storedText()).toBeNull();
    release();
    await expect.poll(() => panel.storedEvents()).toHaveLength(2);
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    await expect(panel.heading).toBeFocused();
  });

  test("tapped again and again while it loads, the last question of the opening is answered once", async ({
    panel,
    page,
  }) => {
    const { held, release } = createHold();
    await page.route("**/parts/**", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("index.html");
    await says(panel, "not-dispensed");
    await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
    const answer = panel.button(panel.text("checks.opening.changed.answers.nothing"));
    await answer.tap();
    await expect(answer).toHaveAttribute("aria-disabled", "true");
    await expect(answer).toHaveClass(/given/);
    await page.clock.runFor(5000);
    await answer.tap();
    release();
    await expect(answer).toHaveCount(0);
    await expect(panel.heading).toBeFocused();
    expect(await panel.storedEvents()).toHaveLength(3);
  });

  test("whoever comes back sees that it loads, never the first question flashing by", async ({
    panel,
    page,
  }) => {
    await panel.open();
    await panel.goTo("opening.supply");
    const { held, release } = createHold();
    await page.route("**/parts/**", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("index.html");
    await expect(panel.host.getByText(panel.text("ui.loading"))).toBeVisible();
    await expect(panel.heading).toHaveCount(0);
    release();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
  });

  for (const [what, file] of [
    ["the engine", "**/parts/engine-*.js"],
    ["the texts", "**/parts/en-GB-*.json"],
    ["the rules of style", "**/parts/later-*.css"],
  ] as const) {
    test.describe("lost at first", () => {
      test.use({ expectedFaults: /ERR_INTERNET_DISCONNECTED|could not be loaded; trying again/ });

      test(`${what} is fetched again as soon as there is a signal, and the tap meanwhile counts`, async ({
        panel,
        page,
      }) => {
        let signal = false;
        await page.route(file, (route) => (signal ? route.continue() : route.abort("internetdisconnected")));
        await page.goto("index.html");
        await says(panel);
        await page.clock.runFor(9000);
        signal = true;
        await page.clock.runFor(5000);
        await expect(panel.host.locator(".notices")).toBeAttached();
        await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
        await expect(panel.row(panel.text("checks.opening.symptom.name"))).toBeVisible();
      });
    });
  }
});

test.describe("the page's own content inside the tag", () => {
  test("is not shown once the panel is there", async ({ panel, page }) => {
    await panel.open("ways/one.html");
    await expect(page.getByText("Smoke, sparks or a smell of gas?")).toBeHidden();
  });

  test.describe("with scripts off", () => {
    test.use({ javaScriptEnabled: false });

    test("is what somebody reads", async ({ page }) => {
      await page.goto("ways/one.html");
      await expect(page.getByText("Smoke, sparks or a smell of gas?")).toBeVisible();
      await expect(page.getByRole("link", { name: "Larder Lane Spares can help you" })).toBeVisible();
    });
  });

  for (const [how, fault] of [
    ["blocked", { abort: true }],
    ["cut off", { body: "var e,t,n=" }],
    ["a page that says 'not found'", { body: "<!doctype html>", contentType: "text/html" }],
  ] as const)
    test.describe(`where the script is ${how}`, () => {
      test.use({ expectedFaults: /ERR_FAILED|MIME|Unexpected/ });

      test("is what somebody reads", async ({ page }) => {
        await page.route("**/fridgeside.*js", (route) =>
          "abort" in fault ? route.abort() : route.fulfill({ contentType: "text/javascript", ...fault }),
        );
        await page.goto("ways/one.html");
        await expect(page.getByText("Smoke, sparks or a smell of gas?")).toBeVisible();
      });
    });
});
