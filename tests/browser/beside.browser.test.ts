import type { Page } from "@playwright/test";
import { healthy } from "../session/drive.ts";
import { violationsOn } from "./axe.ts";
import { noteShifts, shiftsOf } from "./layout-shifts.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** The file of the machine cut open. */
const scene = /\/parts\/cut-open-/;
const opening = ["opening.danger", "opening.symptom", "opening.supply", "opening.changed"];

/** Answers the opening; what is not told is as `healthy` has it. */
async function goToFirstCheck(panel: PanelPage, answers: Record<string, string> = {}): Promise<void> {
  await panel.open();
  for (const turn of opening) await panel.answer(answers[turn] ?? (healthy[turn] as string));
}

const picture = (panel: PanelPage) => panel.host.getByRole("img", { name: panel.turn.pathText, exact: true });
const column = (panel: PanelPage) => panel.host.locator(".beside");

/** Notes every file that the page asks for. */
function noteRequests(page: Page): string[] {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(request.url()));
  return asked;
}

/** Names that overlap, or that the column cuts off; and the smallest type among them, in px. */
const faultsOfNames = (panel: PanelPage) =>
  column(panel).evaluate((beside) => {
    const edge = beside.getBoundingClientRect();
    const names = [...beside.querySelectorAll(".cut > span")].map((span) => {
      const parts = [...span.querySelectorAll("i, b")].map((part) => part.getBoundingClientRect());
      return {
        text: span.textContent ?? "",
        left: Math.min(...parts.map((part) => part.left)),
        right: Math.max(...parts.map((part) => part.right)),
        top: Math.min(...parts.map((part) => part.top)),
        bottom: Math.max(...parts.map((part) => part.bottom)),
      };
    });
    const cut = names.filter(({ left, right }) => left < edge.left || right > edge.right);
    const overlapping = names.flatMap((one, i) =>
      names
        .slice(i + 1)
        .filter(
          (other) =>
            one.left < other.right &&
            other.left < one.right &&
            one.top < other.bottom &&
            other.top < one.bottom,
        )
        .map((other) => `${one.text} over ${other.text}`),
    );
    const sizes = [...beside.querySelectorAll(".cut b")].map((b) =>
      Number.parseFloat(getComputedStyle(b).fontSize),
    );
    return {
      count: names.length,
      cut: cut.map(({ text }) => text),
      overlapping,
      smallest: Math.min(...sizes),
    };
  });

const isInSight = (panel: PanelPage) =>
  panel.host.locator(".cut").evaluate((cut) => {
    const { top, bottom } = cut.getBoundingClientRect();
    return top >= 0 && bottom <= innerHeight;
  });

test.describe("where there is room beside the thread", () => {
  test.use({ viewport: { width: 1280, height: 800 }, isMobile: false, deviceScaleFactor: 1 });

  test("the machine stands there shut in the opening, at the place where it opens at the first check", async ({
    panel,
    page,
  }) => {
    const asked = noteRequests(page);
    await panel.open();
    const machine = panel.host.locator(".cut");
    await expect(machine).toBeVisible();
    // It says nothing yet, to nobody.
    await expect(machine).toHaveAttribute("aria-hidden", "true");
    await expect(machine).toHaveText("");
    const { x, width } = (await machine.boundingBox()) ?? {};
    for (const turn of opening) await panel.answer(healthy[turn] as string);
    await expect(picture(panel)).toBeVisible();
    expect(await machine.boundingBox()).toMatchObject({ x, width });
    expect(asked.filter((url) => scene.test(url))).toHaveLength(1);
  });

  test("after a tap no answer lies over what the question says", async ({ panel }) => {
    await panel.open();
    const isCovered = () =>
      panel.heading.evaluate((heading) => {
        const said = heading.nextElementSibling?.getBoundingClientRect();
        const root = heading.getRootNode() as ShadowRoot;
        const at = said && root.elementFromPoint(said.left + 5, said.top + said.height / 2);
        return Boolean(at?.closest(".dock, .foot"));
      });
    for (const turn of opening) {
      await panel.answer(healthy[turn] as string);
      await expect.poll(isCovered, turn).toBe(false);
    }
  });

  test("the machine cut open marks the turn's station, and is fetched once", async ({ panel, page }) => {
    const asked = noteRequests(page);
    await goToFirstCheck(panel);
    await expect(picture(panel)).toBeVisible();
    const here = panel.turn.path.find((mark) => mark.here);
    await expect(panel.host.locator(".cut .here")).toHaveText(here?.name ?? "");
    await expect(panel.host.locator(".cut .k1").first()).toBeAttached();
    await panel.answer("on");
    await expect(picture(panel)).toBeVisible();
    await expect(panel.host.locator(".cut .clear", { hasText: here?.name ?? "" })).toBeVisible();
    // The same is not drawn and not read twice.
    await expect(panel.host.locator(".way")).toBeHidden();
    expect(asked.filter((url) => scene.test(url))).toHaveLength(1);
  });

  for (const colorScheme of ["light", "dark"] as const)
    test(`axe has nothing against it in ${colorScheme}`, async ({ panel, page }) => {
      await page.emulateMedia({ colorScheme });
      await goToFirstCheck(panel);
      await expect(picture(panel)).toBeVisible();
      expect(await violationsOn(page, `beside ${colorScheme}`)).toEqual([]);
    });

  for (const [supply, width] of [
    ["plumbed", 1280],
    ["tank", 1280],
    ["plumbed", 810],
  ] as const)
    test(`no name lies on another or is cut off, of a ${supply} machine at ${width} px`, async ({
      panel,
      page,
    }) => {
      await page.setViewportSize({ width, height: 800 });
      await goToFirstCheck(panel, { "opening.supply": supply });
      await expect(picture(panel)).toBeVisible();
      const { count, cut, overlapping, smallest } = await faultsOfNames(panel);
      expect(count).toBeGreaterThanOrEqual(supply === "tank" ? 4 : 7);
      expect(cut).toEqual([]);
      expect(overlapping).toEqual([]);
      expect(smallest).toBeGreaterThanOrEqual(13);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
      const thread = await panel.host.locator(".turn").evaluate((turn) => turn.getBoundingClientRect().width);
      expect(thread).toBeGreaterThanOrEqual(360);
      expect(thread).toBeLessThanOrEqual(640);
    });

  test("it stays in sight while the thread is scrolled", async ({ panel, page }) => {
    await goToFirstCheck(panel);
    await expect(picture(panel)).toBeVisible();
    await page.setViewportSize({ width: 1280, height: 560 });
    for (const share of [0.4, 0.8]) {
      await panel.host.evaluate((host, far) => {
        const { top, height } = host.getBoundingClientRect();
        scrollTo(0, scrollY + top + (height - innerHeight) * far);
      }, share);
      expect(await isInSight(panel)).toBe(true);
    }
  });

  test("nothing moves when it comes to somebody who comes back", async ({ panel, page }) => {
    await goToFirstCheck(panel);
    await panel.answer("on");
    await noteShifts(page);
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route(scene, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("index.html");
    await expect(panel.heading).toHaveText(panel.turn.heading);
    await expect(column(panel)).toBeVisible();
    await expect(picture(panel)).toHaveCount(0);
    release();
    await expect(picture(panel)).toBeVisible();
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
    expect(await shiftsOf(page)).toEqual([]);
  });

  test("a stop has no column, and the thread stays where it was", async ({ panel }) => {
    await goToFirstCheck(panel);
    await expect(picture(panel)).toBeVisible();
    const placeOf = () =>
      panel.heading.evaluate((heading) => {
        const { left, width } = heading.getBoundingClientRect();
        return [left, width].map(Math.round);
      });
    const before = await placeOf();
    await panel.reportDanger("gas");
    await expect(column(panel)).toHaveCount(0);
    expect(await placeOf()).toEqual(before);
  });

  test("while nobody knows where the water comes from, it is shut and the path stands in the thread", async ({
    panel,
  }) => {
    await goToFirstCheck(panel, { "opening.supply": "not-sure" });
    await panel.answer((healthy[panel.turn.turn] as string) ?? "not-sure");
    await expect(panel.host.locator(".cut")).toHaveAttribute("aria-hidden", "true");
    await expect(panel.host.locator(".way")).toBeVisible();
  });
});

test.describe("where the file does not come", () => {
  test.use({
    viewport: { width: 1280, height: 800 },
    isMobile: false,
    expectedFaults: /ERR_FAILED/,
  });

  test("the path stands in the thread, and the next turn tries again", async ({ panel, page }) => {
    await page.route(scene, (route) => route.abort());
    await goToFirstCheck(panel);
    await expect(column(panel)).toHaveCount(0);
    await page.unroute(scene);
    await panel.answer("on");
    await expect(picture(panel)).toBeVisible();
  });
});

test.describe("on a phone", () => {
  test("nothing of it is fetched or drawn, and the path is where it was", async ({ panel, page }) => {
    const asked = noteRequests(page);
    await goToFirstCheck(panel);
    await panel.answer("on");
    await panel.hasEverything();
    await expect(panel.host.locator(".way")).toBeVisible();
    await expect(column(panel)).toBeHidden();
    expect(asked.some((url) => /\/parts\/later-screens-/.test(url))).toBe(true);
    expect(asked.filter((url) => scene.test(url))).toEqual([]);
  });
});
