import type { Page } from "@playwright/test";
import { parseJournal, standingOf } from "../../../src/session/index.ts";
import { says } from "../greeting.ts";
import { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";
import { holdParts, parts } from "./held-back.ts";

/** A way through the opening in five answers, and the question that each leads to; the last only the engine has. */
const way = [
  ["symptom", "not-sure", "danger"],
  ["danger", "none", "bin"],
  ["bin", "odd-ice", "odd"],
  ["odd", "shape", "supply"],
  ["supply", "plumbed", "changed"],
] as const;

/** As they are kept: the complaint where its turn comes, after the question about danger. */
const inTurn = [way[1], way[0], ...way.slice(2)];

/** Answers and sees the next question with nothing else there. */
async function answerAll(panel: PanelPage): Promise<void> {
  for (const [turn, answer, next] of way) {
    const own = panel.texts(`checks.opening.${turn}.answers.${answer}`);
    await panel.button(own || panel.text(`standing.${answer}`)).tap();
    await expect(panel.heading).toHaveText(panel.text(`checks.opening.${next}.ask`));
    await expect(panel.heading).toBeFocused();
  }
}

/** What is kept, with the times. */
async function keptIn(page: Page) {
  const text = await page.evaluate(() => localStorage.getItem("fridgeside:panel") ?? "null");
  const journal = parseJournal(JSON.parse(text));
  const { started = "", events = [] } = journal ? standingOf(journal).log : {};
  return { started, events: events.flatMap((event) => (event.type === "answered" ? [event] : [])) };
}

async function wereKept(panel: PanelPage, before: number, after: number): Promise<void> {
  await expect.poll(async () => (await keptIn(panel.page)).events.length).toBe(way.length);
  const { started, events } = await keptIn(panel.page);
  expect(events.map(({ turn, answer }) => [turn, answer])).toEqual(
    inTurn.map(([turn, answer]) => [`opening.${turn}`, answer]),
  );
  // Each has the time of its own tap, not of the engine's coming.
  const times = [started, ...events.map(({ at }) => at)].map((at) => Date.parse(at));
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(times[0]).toBeGreaterThanOrEqual(before);
  expect(times.at(-1)).toBeLessThanOrEqual(after);
}

test.describe("quick answers before the rest of the script is there", () => {
  test("five are answered at once, and arrive in order with the times at which they were given", async ({
    panel,
    page,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    const before = Date.parse(await panel.now());
    await answerAll(panel);
    const after = Date.parse(await panel.now());
    await page.clock.runFor(60_000);
    release();
    await wereKept(panel, before, after);
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
    await expect(panel.heading).toBeFocused();
    await page.reload();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
  });

  test("the last is changed without the rest, and only what was answered in the end arrives", async ({
    panel,
    page,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await answerAll(panel);
    await panel.row(panel.text("checks.opening.supply.name")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    await panel.button(panel.text("checks.opening.supply.answers.tank")).tap();
    release();
    await expect
      .poll(async () => (await keptIn(page)).events.map(({ answer }) => answer))
      .toEqual([...inTurn.slice(0, -1).map(([, answer]) => answer), "tank"]);
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
  });

  test("before an earlier one is changed the rest says what becomes of the others", async ({
    panel,
    page,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await answerAll(panel);
    await panel.button(panel.text("ui.earlier", { count: 4 })).tap();
    await panel.row(panel.text("checks.opening.symptom.name")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
    release();
    await expect(panel.host.getByText(panel.text("ui.drops", { count: 3 }))).toBeVisible();
    await panel.button(panel.text("ui.change-anyway")).tap();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.symptom.ask"));
    await panel.button(panel.text("checks.opening.symptom.answers.no-ice")).tap();
    // How the water gets in still fits.
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
    await expect
      .poll(async () => (await keptIn(page)).events.map(({ answer }) => answer))
      .toEqual(["none", "no-ice", "plumbed"]);
  });

  test("they do not enter a session that another tab has kept meanwhile", async ({
    panel,
    page,
    context,
  }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    const elsewhere = await context.newPage();
    await elsewhere.route("**/favicon.ico", (route) => route.fulfill({ status: 204 }));
    const other = new PanelPage(elsewhere);
    await other.open();
    await other.goTo("opening.supply", { "opening.symptom": "no-ice" });
    const kept = await other.storedEvents();
    await answerAll(panel);
    release();
    await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
    expect(await panel.storedEvents()).toEqual(kept);
  });

  test("a danger after them wins, and nothing of them is kept", async ({ panel, page }) => {
    const { release } = await holdParts(page);
    await page.goto("index.html");
    await says(panel, "leaking");
    await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
    await panel.button(panel.text("checks.opening.leak.answers.water-near-socket")).tap();
    await panel.button(panel.text("checks.opening.leak-power.answers.water-near-socket")).tap();
    const stop = panel.text("dangers.water-near-socket.heading");
    await expect(panel.heading).toHaveText(stop);
    release();
    await expect(panel.host.getByText(panel.text("part.found"), { exact: true })).toBeVisible();
    await expect(panel.heading).toHaveText(stop);
    expect(await panel.storedEvents()).toEqual([{ type: "danger-reported", danger: "water-near-socket" }]);
  });

  for (const height of [740, 1400])
    test(`nothing moves or changes its words when the rest comes, on a screen ${height} px high`, async ({
      panel,
      page,
    }) => {
      await page.setViewportSize({ width: 360, height });
      await page.addInitScript(() => {
        const shifts: { at: number; moved: string[] }[] = [];
        Object.assign(window, { shifts });
        type Shift = PerformanceEntry & { sources: { node: Element | null }[] };
        new PerformanceObserver((list) => {
          for (const { startTime, sources } of list.getEntries() as Shift[]) {
            const moved = sources.map(({ node }) => `${node?.nodeName}.${node?.className}`);
            shifts.push({ at: startTime, moved });
          }
        }).observe({ type: "layout-shift", buffered: true });
      });
      for (let answered = 0; answered <= way.length; answered++) {
        await page.goto("blank.html");
        await page.evaluate(() => localStorage.clear());
        const { release } = await holdParts(page);
        await page.goto("ways/one.html");
        for (const [turn, answer] of way.slice(0, answered)) {
          const own = panel.texts(`checks.opening.${turn}.answers.${answer}`);
          await panel.button(own || panel.text(`standing.${answer}`)).tap();
        }
        // biome-ignore lint/performance/useDomNodeTextContent: what can be seen, with its lines, is compared.
        const look = () => panel.host.getByRole("region").innerText();
        const before = await look();
        // What moves from here on, whether or not a tap was a moment ago.
        const released = await page.evaluate(() => performance.now());
        release();
        await expect(panel.host.locator(".notices")).toBeAttached();
        await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
        const after = await look();
        // New are the names in a drawing, for which a place is kept; on a slow machine a note of that is gone.
        const names = new Set(await panel.host.locator("svg :is(text, tspan)").allTextContents());
        for (const line of before.split("\n")) if (line.startsWith(panel.text("ui.slow"))) names.add(line);
        const linesOf = (text: string) => text.split("\n").filter((line) => line && !names.has(line));
        expect(linesOf(after)).toEqual(linesOf(before));
        const moved = await page.evaluate(() => (window as never as { shifts: { at: number }[] }).shifts);
        expect(moved.filter(({ at }) => at > released)).toEqual([]);
        await page.unrouteAll({ behavior: "ignoreErrors" });
        await page.route("**/favicon.ico", (route) => route.fulfill({ status: 204 }));
      }
    });
});

test.describe("without a connection", () => {
  test.use({ expectedFaults: /ERR_INTERNET_DISCONNECTED|could not be loaded; trying again/ });

  test("five are answered at once, and arrive in order as soon as there is a signal", async ({
    panel,
    page,
  }) => {
    await page.route(parts, (route) => route.abort("internetdisconnected"));
    await page.goto("index.html");
    const before = Date.parse(await panel.now());
    await answerAll(panel);
    const after = Date.parse(await panel.now());
    await page.unroute(parts);
    await page.clock.runFor(31_000);
    await wereKept(panel, before, after);
    await expect(panel.heading).toHaveText(panel.text("checks.opening.changed.ask"));
  });

  test("a page that has loaded goes on to a reading, a wait and an ending", async ({ panel, context }) => {
    await panel.open();
    await panel.hasEverything();
    await context.setOffline(true);
    await panel.goTo("flow-test.run", { "opening.symptom": "no-ice" });
    await expect(panel.host.getByText(panel.text("ui.loading"))).toHaveCount(0);
    await panel.askForHelp();
    await panel.seesEnding("professional");
    await context.setOffline(false);
  });
});

test.describe("the languages' first files", () => {
  test("the one that the page names comes without another", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await panel.open("ways/one.html");
    expect(asked.filter((path) => /^\/fridgeside/.test(path))).toEqual(["/fridgeside.en-GB.js"]);
  });

  for (const [where, path, change] of [
    ["of the tag", "in-american.html", (text: string) => text],
    ["of the page", "plain.html", (text: string) => text.replace('lang="en-GB"', 'lang="en-US"')],
  ] as const)
    test(`where it names none, the language ${where} is looked for`, async ({ page }) => {
      const asked: string[] = [];
      page.on("request", (request) => asked.push(new URL(request.url()).pathname));
      await page.route(`**/${path}`, async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, body: change(await response.text()) });
      });
      const panel = new PanelPage(page, { language: "en-US" });
      await panel.open(path);
      await expect(panel.host.getByRole("region")).toHaveAttribute("lang", "en-US");
      expect(asked.filter((file) => /^\/(fridgeside|parts\/first-)/.test(file))).toEqual([
        "/fridgeside.js",
        "/fridgeside.en-US.js",
      ]);
    });

  test("two languages on one page, from three first files, speak each their own and work", async ({
    page,
  }) => {
    await page.route("**/languages.html", async (route) => {
      const response = await route.fetch();
      const more = ["fridgeside.js", "fridgeside.en-US.js"].map(
        (file) => `<script type="module" src="../${file}"></script>`,
      );
      await route.fulfill({
        response,
        body: (await response.text()).replace("</head>", `${more.join("")}</head>`),
      });
    });
    await page.goto("ways/languages.html");
    const british = new PanelPage(page, { sessionName: "kitchen" });
    const american = new PanelPage(page, { sessionName: "garage", language: "en-US" });
    for (const panel of [british, american]) {
      await expect(panel.heading).toHaveText(panel.text("thread.hello"));
      await says(panel, "leaking");
      await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
      await expect(panel.heading).toHaveText(panel.text("checks.opening.leak.ask"));
      await panel.button(panel.text("checks.opening.leak.answers.away")).tap();
      await expect.poll(async () => (await panel.storedEvents()).length).toBe(3);
    }
    await expect(american.host.getByRole("region")).toHaveAttribute("lang", "en-US");
    await expect(british.host.getByRole("region")).toHaveAttribute("lang", "en-GB");
  });
});
