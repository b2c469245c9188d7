import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { fieldOf, heardBy, lastLine, say } from "./talk.ts";

const offered = (panel: PanelPage) => heardBy(panel).getByRole("button");
const answerText = (panel: PanelPage, id: string) => panel.text(`checks.opening.symptom.answers.${id}`);
const saidTo = (panel: PanelPage) => heardBy(panel).locator(".ask > p");

test.describe("what is typed at a turn", () => {
  test.beforeEach(({ panel }) => panel.openWhere("opening.symptom", { "opening.danger": "none" }));

  test("is understood on the device, and sent nowhere", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await say(panel, "It leaks, and I don’t get any ICE");
    const leaking = offered(panel).filter({ hasText: answerText(panel, "leaking") });
    await expect(leaking).toBeVisible();
    await panel.seesTurn();
    expect(asked.filter((url) => !/\/axe\.min\.js$|\/parts\/[\w-]+\.(?:js|json)$/.test(url))).toEqual([]);
    await leaking.tap();
    const words = "It leaks, and I don’t get any ICE";
    await panel.took({
      type: "answered",
      turn: "opening.symptom",
      answer: "leaking",
      words,
      at: await panel.now(),
    });
  });

  test("can be said and its answer given by keyboard alone", async ({ panel, page }) => {
    await fieldOf(panel).focus();
    await page.keyboard.type("the cubes taste odd");
    await page.keyboard.press("Enter");
    await expect(saidTo(panel)).toBeFocused();
    await page.keyboard.press("Tab");
    await expect(offered(panel).first()).toBeFocused();
    await page.keyboard.press("Enter");
    await panel.took({
      type: "answered",
      turn: "opening.symptom",
      answer: "odd-ice",
      words: "the cubes taste odd",
      at: await panel.now(),
    });
  });

  test("of danger is answered by the way out of it, before all else", async ({ panel }) => {
    await say(panel, "No ice and there are sparks at the plug");
    await expect(saidTo(panel)).toHaveText(panel.text("composer.danger"));
    await panel.seesTurn();
    await offered(panel).first().tap();
    await panel.took({ type: "danger-reported", danger: "sparks", at: await panel.now() });
    await expect(fieldOf(panel)).toHaveCount(0);
  });

  test("that nobody understands is said to be, is kept, and leaves the question as it was", async ({
    panel,
  }) => {
    await say(panel, "My neighbour's dog barks at it");
    await expect(saidTo(panel)).toHaveText(panel.text("composer.none"));
    await offered(panel).last().tap();
    await expect(heardBy(panel)).toHaveCount(0);
    await panel.seesTurn();
    await expect.poll(() => panel.storedText()).toContain("neighbour's dog");
  });

  test("as a question is answered in place", async ({ panel }) => {
    await say(panel, "where is the water filter?");
    await expect(saidTo(panel)).toContainText("Look inside the fridge");
    await panel.seesTurn();
  });

  test("about something else is asked back, and its question does not come", async ({ panel }) => {
    await say(panel, "the ice smells of garlic");
    await offered(panel)
      .filter({ hasText: answerText(panel, "odd-ice") })
      .tap();
    await expect(heardBy(panel)).toContainText(panel.text("checks.opening.odd.answers.taste"));
    await panel.button(panel.text("composer.yes")).tap();
    await expect(panel.heading).not.toHaveText(panel.text("checks.opening.odd.ask"));
    await panel.reload().catch(() => null);
    await expect(panel.host).toContainText(panel.text("checks.opening.odd.answers.taste"));
  });

  test("stands in a field that no phone enlarges, above which all that is offered can be hit", async ({
    panel,
    page,
  }) => {
    // The browser's own spelling check may send words away.
    expect(await fieldOf(panel).evaluate((input: HTMLInputElement) => input.spellcheck)).toBe(false);
    await say(panel, "We moved, no ice comes out and the cubes taste odd");
    await expect(offered(panel).first()).toBeVisible();
    for (const width of [320, 360]) {
      await page.setViewportSize({ width, height: 640 });
      for (const target of [fieldOf(panel), ...(await offered(panel).all())]) {
        const found = await target.evaluate((element) => ({
          size: Number.parseFloat(getComputedStyle(element).fontSize),
          height: element.getBoundingClientRect().height,
          hidden: element.localName === "button" ? element.scrollWidth - element.clientWidth : 0,
          right: innerWidth - element.getBoundingClientRect().right,
        }));
        // iPhones enlarge a page for a field under 16 px; 44 px: WCAG 2.2, 2.5.5 Target Size (Enhanced).
        expect(found.size).toBeGreaterThanOrEqual(16);
        expect(found.height).toBeGreaterThanOrEqual(44);
        expect(found.hidden).toBe(0);
        expect(found.right).toBeGreaterThanOrEqual(0);
      }
    }
  });
});

test.describe("what is typed while nothing understands it", () => {
  test.use({ expectedFaults: /ERR_FAILED/ });

  test("stays in the field where what understands it cannot come, and is understood once it can", async ({
    panel,
    page,
  }) => {
    await panel.openWhere("opening.symptom", { "opening.danger": "none" });
    await page.route("**/parts/words-*", (route) => route.abort());
    await say(panel, "it makes no ice");
    await expect(panel.host).toContainText(panel.text("composer.away"));
    await expect(fieldOf(panel)).toHaveValue("it makes no ice");
    await page.unroute("**/parts/words-*");
    await fieldOf(panel).press("Enter");
    await expect(offered(panel).first()).toHaveText(answerText(panel, "no-ice"));
  });
});

test.describe("the line of what was said in own words", () => {
  const symptom = "opening.symptom";
  const words = "the cubes taste odd";
  // What greets stands first.
  const bubble = (panel: PanelPage) => panel.host.locator("ol[role=list] > li").first().locator("b");

  test("has them, and what they were taken as, also after a reload; a change takes them away", async ({
    panel,
  }) => {
    await panel.openWhere(symptom, { "opening.danger": "none" });
    await say(panel, words);
    await offered(panel)
      .filter({ hasText: answerText(panel, "odd-ice") })
      .tap();
    await panel.took({ type: "answered", turn: symptom, answer: "odd-ice", words, at: await panel.now() });
    const noted = panel.text("thread.noted", { answer: answerText(panel, "odd-ice") });
    await expect(bubble(panel)).toHaveText(`${words} ${noted}`);
    await panel.reload();
    await expect(bubble(panel)).toHaveText(`${words} ${noted}`);
    await panel.seesTurn();
    await bubble(panel).tap();
    await expect(panel.heading).toHaveText(panel.text(`checks.${symptom}.ask`));
    await panel.button(answerText(panel, "odd-ice")).tap();
    await expect(bubble(panel)).toHaveText(answerText(panel, "odd-ice"));
  });

  test("has those that were said to the turn that greets, before danger is asked about and after", async ({
    panel,
    page,
  }) => {
    await panel.open();
    await panel.says("odd-ice", async () => {
      await say(panel, words);
      await offered(panel)
        .filter({ hasText: answerText(panel, "odd-ice") })
        .tap();
      await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
      const at = await panel.now();
      return { id: "told", event: { type: "answered", turn: symptom, answer: "odd-ice", words, at } };
    });
    const line = `${words} ${panel.text("thread.noted", { answer: answerText(panel, "odd-ice") })}`;
    await expect(bubble(panel)).toHaveText(line);
    await page.reload();
    await expect(bubble(panel)).toHaveText(line);
    await panel.answer("none");
    await expect(bubble(panel)).toHaveText(line);
    await panel.reload();
    await expect(bubble(panel)).toHaveText(line);
  });

  for (const [name, hostile] of [
    ["a script", `${words} <script>document.title = "hurt"</script><img src=x onerror=alert(1)>`],
    ["ten thousand characters", `${words} ${"very ".repeat(2000)}odd`],
    ["a word without end", `${words} ${"x".repeat(900)}`],
    ["letters that turn the text around", `${words} \u202Edlrow\u2066 olleh`],
  ] as const)
    test(`does no harm with ${name}`, async ({ panel, page }) => {
      await panel.openWhere(symptom, { "opening.danger": "none" });
      const title = await page.title();
      await say(panel, hostile);
      await offered(panel)
        .filter({ hasText: answerText(panel, "odd-ice") })
        .tap();
      const said = bubble(panel).locator("bdi");
      await expect(said).toContainText(words);
      expect(await said.locator("*").count()).toBe(0);
      expect(await said.textContent()).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/);
      expect(((await said.textContent()) ?? "").length).toBeLessThanOrEqual(1001);
      expect(await page.title()).toBe(title);
      const { right, lines } = await said.evaluate((element) => ({
        right: innerWidth - element.getBoundingClientRect().right,
        lines: element.clientHeight / Number.parseFloat(getComputedStyle(element).lineHeight),
      }));
      expect(right).toBeGreaterThanOrEqual(0);
      expect(Math.round(lines), "it leaves the question in sight").toBeLessThanOrEqual(2);
      await expect(panel.heading).toBeInViewport();
    });
});

test("a reading is filled in from a sentence, and sent by hand", async ({ panel }) => {
  await panel.openWhere("flow-test.run");
  await say(panel, "I got 150 ml in 10 seconds");
  await expect(saidTo(panel)).toHaveText(panel.text("composer.filled"));
  await expect(panel.host.getByRole("textbox", { name: panel.text("measure.volume-label") })).toHaveValue(
    "150",
  );
  await panel.seesTurn();
  await panel.button(panel.text("measure.show-result")).tap();
  await panel.button(panel.text("measure.use")).tap();
  await expect(lastLine(panel).locator("bdi")).toHaveText("I got 150 ml in 10 seconds");
});

test.describe("the field stands above a keyboard that covers the window's foot", () => {
  const keyboard = 300;
  const rise = (covered: number) => {
    Object.defineProperty(VisualViewport.prototype, "height", { get: () => innerHeight - covered });
    window.visualViewport?.dispatchEvent(new Event("resize"));
  };
  const stands = async (panel: PanelPage) => {
    const foot = () => fieldOf(panel).evaluate((field) => innerHeight - field.getBoundingClientRect().bottom);
    await expect.poll(foot).toBeGreaterThanOrEqual(keyboard);
  };

  test("that comes up while it is there", async ({ panel, page }) => {
    await panel.open();
    await expect(fieldOf(panel)).toBeVisible();
    await page.evaluate(rise, keyboard);
    await stands(panel);
  });

  test("that was up before it came", async ({ panel, page }) => {
    await page.addInitScript(rise, keyboard);
    await panel.open();
    await stands(panel);
  });
});
