import { mkdirSync } from "node:fs";
import type { Page } from "@playwright/test";
import type { Reading } from "../../src/instruments/index.ts";
import {
  type Answers,
  flowOf,
  fridgeCelsius,
  gramsEach,
  kilograms,
  kilopascals,
  litresPerMinute,
} from "../session/drive.ts";
import { violationsOn } from "./axe.ts";
import { enterReading, withConditions } from "./instruments.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** `SHOTS=<folder> npm run browser measuring` also takes a picture of every result, light and dark. */
const shots = process.env.SHOTS;

type Case = {
  /** Where it is measured, and what was found on the way. */
  turn: string;
  answers?: Answers;
  reading: Reading;
  verdict: string;
  /** Parts of what the screen must say, besides the verdict. */
  says: string[];
};

const plugFitted: Answers = { "flow-test.run": flowOf(6), "flow-without-filter.prepare": "plug-fitted" };

/** Each instrument by touch: what is entered, and what the screen makes of it. Sources stand with the calculations. */
const cases: Record<string, Case> = {
  "a bucket at the kitchen tap": {
    // 2 l in 13 s is 9.2 l/min: fill test of a UK water company, too near to 9 for a bucket's marks.
    turn: "tap-fill.fill",
    reading: { kind: "supply", by: "fill", volume: 2, unit: "l", seconds: 13 },
    verdict: "unclear",
    says: ["9.2 litres a minute", "at least 4"],
  },
  "a strong house supply": {
    turn: "tap-fill.fill",
    reading: litresPerMinute(15),
    verdict: "passes",
    says: ["15 litres a minute"],
  },
  "a weak house supply": {
    turn: "tap-fill.fill",
    reading: litresPerMinute(2),
    verdict: "fails",
    says: ["No part for the machine makes it stronger"],
  },
  "a gauge below what a water company owes": {
    // 0.5 bar is 5 m head; the minimum is 7 m.
    turn: "tap-fill.fill",
    reading: { kind: "supply", by: "gauge", value: 0.4, unit: "bar" },
    verdict: "fails",
    says: ["less than a UK water company owes you", "0.4 bar"],
  },
  "a gauge beyond 120 psi": {
    turn: "tap-fill.fill",
    reading: { kind: "supply", by: "gauge", value: 140, unit: "psi" },
    verdict: "too-strong",
    says: ["140 psi", "120.4 at most", "A plumber can fit a valve"],
  },
  "a gauge in the middle": {
    turn: "tap-fill.fill",
    reading: kilopascals(300),
    verdict: "passes",
    says: ["300 kPa"],
  },
  "a thermometer in a glass of water": {
    turn: "fridge-temperature.read",
    reading: { ...(fridgeCelsius(3) as Extract<Reading, { kind: "temperature" }>), stood: 480 },
    verdict: "passes",
    says: ["3 °C"],
  },
  "a thermometer that has not stood long enough": {
    turn: "fridge-temperature.read",
    reading: { ...(fridgeCelsius(6) as Extract<Reading, { kind: "temperature" }>), stood: 60 },
    verdict: "unclear",
    says: ["It may still be falling"],
  },
  "a freezer at half the cold": {
    // Plank: −9 °C takes twice as long as −18 °C.
    turn: "freezer-temperature.read",
    reading: { kind: "temperature", value: -9, unit: "C", with: "thermometer", stood: 60 },
    verdict: "unclear",
    says: ["2 times as long", "at −18 °C"],
  },
  "a day's ice on the scales": {
    turn: "ice-yield.count",
    reading: kilograms(1.5),
    verdict: "passes",
    says: ["About 1.5 kg"],
  },
  "pieces counted over a night": {
    turn: "ice-yield.count",
    reading: { kind: "ice", by: "pieces", amount: 2, hours: 12, wanted: "some" },
    verdict: "fails",
    says: ["About 4 cubes"],
  },
  "batches watched over a day, and a party": {
    // 14.3 batches a day: LBNL, Meier 1995.
    turn: "ice-yield.count",
    reading: { kind: "ice", by: "batches", amount: 14, hours: 24, wanted: "much" },
    verdict: "passes",
    says: ["About 14 batches"],
  },
  "ice enough, and more used": {
    turn: "ice-yield.count",
    reading: kilograms(1.2, "much"),
    verdict: "demand",
    says: ["It makes all it can. You use more."],
  },
  "full cubes": {
    turn: "cube-weight.weigh",
    answers: { "fresh-ice.look": "small" },
    reading: gramsEach(17.5),
    verdict: "passes",
    says: ["17.5 g each", "100 %"],
  },
  "hollow pieces": {
    turn: "cube-weight.weigh",
    answers: { "fresh-ice.look": "hollow" },
    reading: gramsEach(7),
    verdict: "fails",
    says: ["40 %"],
  },
  "a filter that many people draw from": {
    turn: "filter-age.fitted",
    reading: {
      kind: "filter-age",
      fitted: { by: "date", date: "2025-11-01" },
      use: { people: 8, habit: "all" },
    },
    verdict: "fails",
    says: ["It has filtered", "Its litres run out first"],
  },
  "a young filter for ice alone": {
    turn: "filter-age.fitted",
    reading: {
      kind: "filter-age",
      fitted: { by: "date", date: "2026-01-01" },
      use: { people: 2, habit: "ice" },
    },
    verdict: "passes",
    says: ["Its months run out first", "1 July 2026"],
  },
  "a filter that takes the pressure": {
    // 6 ml/s with it, 25 without: 1 − (6/25)² is 94 % of the pressure.
    turn: "flow-without-filter.run",
    answers: plugFitted,
    reading: flowOf(25),
    verdict: "passes",
    says: ["The filter takes 94 to 95 %", "That points to the filter"],
  },
  "as little water without the filter": {
    turn: "flow-without-filter.run",
    answers: plugFitted,
    reading: flowOf(6),
    verdict: "fails",
    says: ["not to the filter"],
  },
};

for (const [name, { turn, answers, reading, verdict, says }] of Object.entries(cases))
  test(`${name}: measured by touch, judged in words and as a picture, kept as evidence`, async ({
    panel,
    page,
  }) => {
    await panel.openWhere(turn, answers);
    await passGates(panel);
    await panel.goOnTo(turn);
    const taken = withConditions(reading, panel.turn.reading);
    await enterReading(panel, reading);
    const card = panel.host.locator(".card");
    await expect(card).toHaveClass(new RegExp(verdict));
    for (const text of says) await expect(card).toContainText(text);
    expect(await violationsOn(page), "axe").toEqual([]);
    if (shots) await picture(page, shots, name);
    await panel.button(panel.text("measure.use")).tap();
    await panel.took({ type: "measured", turn, reading: taken as never, at: await panel.now() });
    const lines = panel.host.getByRole("listitem");
    if (panel.turn.kind !== "ending")
      await expect(lines.getByText(panel.text(`checks.${turn}.verdicts.${verdict}`)).first()).toBeVisible();
  });

test("the house supply is measured with the keys alone", async ({ panel, page }) => {
  await panel.openWhere("tap-fill.fill");
  await panel.host.getByRole("radio", { name: panel.text("measure.supply-by-fill") }).focus();
  await page.keyboard.press("ArrowRight");
  await expect(panel.host.getByRole("radio", { name: panel.text("measure.supply-by-gauge") })).toBeChecked();
  await page.keyboard.press("Tab");
  await page.keyboard.type("3,5");
  await page.keyboard.press("Enter");
  await expect(panel.host.locator(".verdict")).toBeFocused();
  await expect(panel.host.locator(".card")).toContainText("3.5 bar");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await panel.took({
    type: "measured",
    turn: "tap-fill.fill",
    reading: { kind: "supply", by: "gauge", value: 3.5, unit: "bar" },
    at: await panel.now(),
  });
});

/** Where each is measured, its first entry, and what is typed from there on: a tabulator goes on to the next. */
const typed: [turn: string, first: string, keys: string[], kind: Reading["kind"]][] = [
  ["freezer-temperature.read", "temperature-label", ["-20"], "temperature"],
  ["fridge-temperature.read", "temperature-label", ["3"], "temperature"],
  ["ice-yield.count", "ice-pieces", ["90", "", "24"], "ice"],
  ["cube-weight.weigh", "pieces-label", ["10", "175"], "cubes"],
  ["tap-fill.fill", "vessel-label", ["15"], "supply"],
];

for (const [turn, first, keys, kind] of typed)
  test(`${turn} is entered, sent and used with the keys alone`, async ({ panel, page }) => {
    await panel.openWhere(turn, turn.startsWith("cube") ? { "fresh-ice.look": "small" } : {});
    await panel.host.getByRole("textbox", { name: panel.text(`measure.${first}`) }).focus();
    for (const [place, text] of keys.entries()) {
      if (place > 0) await page.keyboard.press("Tab");
      await page.keyboard.type(text);
    }
    if (kind === "supply") {
      // Past the units to the clock, which the space bar starts and stops, and on to the seconds it has filled in.
      await page.keyboard.press("Tab");
      await page.keyboard.press("Tab");
      await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
      await page.keyboard.press("Space");
      await page.clock.fastForward(60_000);
      await page.keyboard.press("Space");
      await page.clock.resume();
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("Enter");
    // The verdict is read out at once.
    await expect(panel.host.locator(".verdict")).toBeFocused();
    const use = panel.button(panel.text("measure.use"));
    for (let tabs = 0; tabs < 4 && !(await use.evaluate((each) => each.matches(":focus"))); tabs++)
      await page.keyboard.press("Tab");
    await expect(use).toBeFocused();
    await page.keyboard.press("Enter");
    await expect
      .poll(async () => (await panel.storedEvents()).at(-1))
      .toMatchObject({ type: "measured", turn, reading: { kind } });
  });

test("an American kitchen starts with its own units, and is judged alike", async ({ page }) => {
  const panel = new PanelPage(page, { language: "en-US" });
  await panel.openWhere("tap-fill.fill", {}, "in-american.html");
  const checked = (unit: string) =>
    expect(panel.host.getByRole("radio", { name: unit, exact: true })).toBeChecked();
  await checked("quarts");
  await panel.host.getByRole("textbox", { name: panel.text("measure.vessel-label") }).fill("8");
  await panel.host.getByRole("textbox", { name: panel.text("measure.seconds-label") }).fill("30");
  await panel.button(panel.text("measure.show-result")).tap();
  // 8 quarts in half a minute.
  await expect(panel.host.locator(".card")).toContainText("16 quarts a minute");
  await panel.host.getByRole("radio", { name: panel.text("measure.supply-by-gauge") }).tap();
  await checked("psi");
  await panel.openWhere("ice-yield.count", {}, "in-american.html");
  await enterReading(panel, {
    kind: "ice",
    by: "weight",
    amount: 4,
    unit: "lb",
    hours: 24,
    wanted: "little",
  });
  await expect(panel.host.locator(".card")).toContainText(/It makes 3\.\d to 4\.\d lb in 24 hours/);
});

test("the stopwatch counts up while a bucket fills, out of sight too, and its time may be put right", async ({
  panel,
  page,
}) => {
  await panel.openWhere("tap-fill.fill");
  const seconds = panel.host.getByRole("textbox", { name: panel.text("measure.seconds-label") });
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
  await panel.button(panel.text("measure.start")).tap();
  // A page that is out of sight gets no ticks: the time passes all the same.
  await page.clock.fastForward(31_500);
  await panel.button(panel.text("measure.stop")).tap();
  await page.clock.resume();
  await expect(seconds).toHaveValue("31.5");
  await seconds.fill("30");
  await panel.host.getByRole("textbox", { name: panel.text("measure.vessel-label") }).fill("4.5");
  await panel.button(panel.text("measure.show-result")).tap();
  // 4.5 l in 30 s: 9.0 l/min, a UK water company's fill test.
  await expect(panel.host.locator(".card")).toContainText("9 litres a minute");
});

const refused: [turn: string, key: string, typed: string, says: string][] = [
  ["tap-fill.fill", "vessel-label", "", "measure.vessel-empty"],
  ["ice-yield.count", "ice-pieces", "many", "measure.unreadable"],
  ["cube-weight.weigh", "pieces-label", "2", "measure.out-of-range"],
  ["fridge-temperature.read", "temperature-label", "warm", "measure.unreadable"],
];

for (const [turn, key, typed, says] of refused)
  test(`"${typed}" at ${turn} is refused beside its field and stays typed`, async ({ panel }) => {
    await panel.openWhere(turn, turn.startsWith("cube") ? { "fresh-ice.look": "small" } : {});
    const field = panel.host.getByRole("textbox", { name: panel.text(`measure.${key}`) });
    if (turn.startsWith("cube"))
      await panel.host.getByRole("textbox", { name: panel.text("measure.mass-label") }).fill("30");
    await field.fill(typed);
    await panel.button(panel.text("measure.show-result")).tap();
    const values = { typed, min: "3", max: "200", unit: "" };
    await expect(field).toHaveAccessibleDescription(panel.text(says, values).trim());
    await expect(field).toHaveValue(typed);
    await expect(field).toBeFocused();
  });

/** A turn behind a gate is entered anew through it. */
async function passGates(panel: PanelPage): Promise<void> {
  while (panel.turn.kind === "gate") await panel.confirmGate("at once");
}

async function picture(page: Page, folder: string, name: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await page.screenshot({
      path: `${folder}/${name.replaceAll(/\W+/g, "-")}-${colorScheme}.png`,
      fullPage: true,
    });
  }
  await page.emulateMedia({ colorScheme: "light" });
}
