import type { Locator } from "@playwright/test";
import type { SealReading } from "../../src/instruments/seal/reading.ts";
import { violationsOn } from "./axe.ts";
import { choose } from "./instruments.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const turn = "door-seal.paper-strip";
type Felt = "grips" | "drags" | "slips" | "skip";

const button = (panel: PanelPage, felt: Felt): Locator => panel.button(panel.text(`measure.seal-${felt}`));
const names = (panel: PanelPage) => panel.text("measure.seal-places").split("\n");
const spot = (panel: PanelPage, place: number): Locator =>
  panel.host.getByRole("button", { name: `${names(panel)[place - 1]}:` });

/** The line that says which place is asked for, as it is announced. */
async function asksFor(panel: PanelPage, place: number): Promise<void> {
  const line = `${panel.text("measure.seal-place", { place, places: 12 })} ${names(panel)[place - 1]}`;
  await expect(panel.host.getByRole("status").filter({ hasText: line })).toBeVisible();
}

async function isFelt(panel: PanelPage, place: number, felt: "untried" | "skipped" | Felt): Promise<void> {
  await expect(spot(panel, place)).toHaveText(
    `${names(panel)[place - 1]}: ${panel.text(`measure.seal-${felt}`)}`,
  );
}

/** Taps how it felt, and lets the time pass that it takes to pull the next strip. */
async function tap(panel: PanelPage, ...felt: Felt[]): Promise<void> {
  for (const each of felt) {
    await button(panel, each).tap();
    await panel.page.clock.runFor(1000);
  }
}

/** Holds everywhere, but at these places, counted from one. */
const around = (but: Record<number, Felt> = {}): Felt[] =>
  Array.from({ length: 12 }, (_, place) => but[place + 1] ?? "grips");

const readingOf = (felt: Felt[], door: SealReading["door"] = "one"): SealReading => ({
  kind: "seal",
  door,
  spots: felt.map((each) => (each === "skip" ? null : each)),
});

async function uses(panel: PanelPage, reading: SealReading, how: "tap" | "keys" = "tap"): Promise<void> {
  const use = panel.button(panel.text("measure.use"));
  if (how === "tap") await use.tap();
  else await panel.page.keyboard.press("Enter");
  await panel.took({ type: "measured", turn, reading: reading as never, at: await panel.now() });
}

test("a second survey asks only the places that slipped, and keeps the others as they were found", async ({
  panel,
}) => {
  await panel.openWhere(turn);
  await tap(panel, ...around({ 2: "slips", 3: "drags", 8: "slips", 11: "skip" }));
  await uses(panel, readingOf(around({ 2: "slips", 3: "drags", 8: "slips", 11: "skip" })));
  await panel.answer("cleaned");
  expect(panel.turn.turn).toBe("door-seal.strip-again");
  await expect(panel.host.getByText(panel.text("measure.seal-slipped-only"))).toBeVisible();
  await asksFor(panel, 2);
  await isFelt(panel, 3, "drags");
  await panel.seesTurn();
  await tap(panel, "grips");
  await asksFor(panel, 8);
  await panel.reload();
  await asksFor(panel, 8);
  await tap(panel, "slips");
  const reading = readingOf(around({ 3: "drags", 8: "slips", 11: "skip" }));
  await panel.button(panel.text("measure.use")).tap();
  const at = await panel.now();
  await panel.took({ type: "measured", turn: "door-seal.strip-again", reading: reading as never, at });
});

test.describe("the survey of the door seal", () => {
  test.beforeEach(({ panel }) => panel.openWhere(turn));

  test("goes around by tapping, says what it means, and is kept", async ({ panel }) => {
    const felt = around({ 2: "slips", 3: "drags", 8: "slips", 11: "skip" });
    for (const [index, each] of felt.entries()) {
      await asksFor(panel, index + 1);
      await tap(panel, each);
      await isFelt(panel, index + 1, each === "skip" ? "skipped" : each);
    }
    await expect(panel.host.getByText(panel.text("measure.seal-worn"))).toBeFocused();
    const where = panel.host.getByRole("listitem").filter({ hasNot: panel.page.getByRole("button") });
    await expect(where.filter({ hasText: names(panel)[1] ?? "" })).toBeVisible();
    await expect(where.filter({ hasText: names(panel)[7] ?? "" })).toBeVisible();
    await expect(panel.host.getByText(panel.text("measure.seal-weak", { count: 1 }))).toBeVisible();
    await uses(panel, readingOf(felt));
    const said = panel.text("findings.seal", {
      count: 2,
      spots: 11,
      verdict: panel.text(`checks.${turn}.verdicts.fails`),
    });
    await expect(panel.host.getByRole("listitem").getByText(said)).toBeVisible();
    expect(panel.turn.turn).toBe("door-seal.clean");
  });

  test("goes around by keyboard alone", async ({ panel }) => {
    const { page } = panel;
    await button(panel, "grips").focus();
    // Four of "Grips", then on to "Slips" for one corner's place, then back.
    for (let place = 1; place <= 12; place++) {
      await asksFor(panel, place);
      if (place === 4) for (const _ of ["drags", "slips"]) await page.keyboard.press("Tab");
      if (place === 5) for (const _ of ["drags", "grips"]) await page.keyboard.press("Shift+Tab");
      await expect(button(panel, place === 4 ? "slips" : "grips")).toBeFocused();
      await page.keyboard.press(place % 2 ? "Enter" : "Space");
      await page.clock.runFor(1000);
    }
    await expect(panel.host.getByText(panel.text("measure.seal-corner"), { exact: true })).toBeFocused();
    await page.keyboard.press("Tab");
    await expect(panel.button(panel.text("measure.use"))).toBeFocused();
    await uses(panel, readingOf(around({ 4: "slips" })), "keys");
  });

  test("a key held down fills one place", async ({ panel }) => {
    await button(panel, "grips").focus();
    for (let repeat = 0; repeat < 10; repeat++) await panel.page.keyboard.down("Enter");
    await panel.page.keyboard.up("Enter");
    await asksFor(panel, 2);
  });

  test.describe("tapped twice", () => {
    test.use({ hand: "fast" });

    test("fills one place", async ({ panel }) => {
      const { page } = panel;
      await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
      await button(panel, "slips").tap();
      await page.clock.runFor(200);
      await button(panel, "slips").tap();
      await asksFor(panel, 2);
      await isFelt(panel, 1, "slips");
      await isFelt(panel, 2, "untried");
      await page.clock.runFor(400);
      await button(panel, "slips").tap();
      await asksFor(panel, 3);
    });
  });

  test("a place is corrected by tapping it, and the old result is never used", async ({ panel }) => {
    const use = panel.button(panel.text("measure.use"));
    await tap(panel, ...around({ 5: "slips", 6: "slips" }));
    await expect(panel.host.getByText(panel.text("measure.seal-in-the-way"), { exact: true })).toBeVisible();
    await spot(panel, 5).tap();
    await asksFor(panel, 5);
    await expect(button(panel, "slips")).toHaveAttribute("aria-pressed", "true");
    await tap(panel, "grips");
    await expect(use).toHaveCount(0);
    await spot(panel, 6).tap();
    await tap(panel, "drags");
    await panel.button(panel.text("measure.show-result")).tap();
    await expect(panel.host.getByText(panel.text("measure.seal-sound"), { exact: true })).toBeFocused();
    await uses(panel, readingOf(around({ 6: "drags" })));
    await panel.seesLine(turn, "passes");
  });

  test("few places are not enough, and more may be tried after all", async ({ panel }) => {
    await tap(panel, "grips", "grips");
    await panel.button(panel.text("measure.show-result")).tap();
    await expect(panel.host.getByText(panel.text("measure.seal-unclear"), { exact: true })).toBeFocused();
    await asksFor(panel, 3);
    await tap(panel, ...around().slice(2));
    await uses(panel, readingOf(around()));
  });

  for (const scheme of ["light", "dark"] as const)
    test(`everybody can read it, in ${scheme} colours`, async ({ panel, page }) => {
      await page.emulateMedia({ colorScheme: scheme });
      expect(await violationsOn(page, scheme)).toEqual([]);
      await tap(panel, ...around({ 2: "slips", 3: "drags", 9: "skip", 10: "slips" }));
      await expect(panel.button(panel.text("measure.use"))).toBeVisible();
      expect(await violationsOn(page, scheme)).toEqual([]);
    });

  for (const width of [320, 360, 1280])
    for (const door of ["one", "two", "drawer"] as const)
      test(`every place of “${door}” is there to be tapped at ${width} px`, async ({ panel, page }) => {
        await page.setViewportSize({ width, height: 740 });
        await choose(panel, `measure.seal-${door}`);
        const boxes = await Promise.all(names(panel).map((_, place) => spot(panel, place + 1).boundingBox()));
        const frame = await panel.host.boundingBox();
        for (const [index, box] of boxes.entries()) {
          if (!box || !frame) throw new Error(`Place ${index + 1} is not drawn`);
          // WCAG 2.2, 2.5.8: 24 by 24 px at least.
          expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(32);
          expect(box.x).toBeGreaterThanOrEqual(frame.x);
          expect(box.x + box.width).toBeLessThanOrEqual(frame.x + frame.width);
          for (const other of boxes.slice(index + 1)) {
            const apart = Math.hypot(box.x - (other?.x ?? 0), box.y - (other?.y ?? 0));
            expect(apart, "from the middle of one place to another's").toBeGreaterThanOrEqual(32);
          }
        }
        for (const felt of ["grips", "drags", "slips", "skip"] as const)
          expect((await button(panel, felt).boundingBox())?.height).toBeGreaterThanOrEqual(48);
      });
});
