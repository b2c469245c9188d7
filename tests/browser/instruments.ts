import { expect } from "@playwright/test";
import type {
  FilterAgeReading,
  FlowReading,
  FlowRun,
  Reading,
  TemperatureReading,
} from "../../src/measurement/index.ts";
import type { PanelPage } from "./panel-page.ts";

/** Does on screen what brings this reading, up to the verdict. */
export async function enterReading(panel: PanelPage, reading: Reading): Promise<void> {
  if (reading.kind === "flow") return enterFlow(panel, reading);
  if (reading.kind === "temperature") return enterTemperature(panel, reading);
  return enterFilterAge(panel, reading);
}

async function enterFlow(panel: PanelPage, { runs }: FlowReading): Promise<void> {
  for (const [index, run] of runs.entries()) {
    if (index > 0) await panel.button(panel.text("measure.again")).tap();
    await runWater(panel, run.seconds);
    await fillVolume(panel, run);
    await panel.button(panel.text("measure.show-result")).tap();
  }
}

/**
 * Starts the stopwatch, lets so many seconds pass by the page's clock, and stops it by a tap if it still runs. The clock
 * stands still around it, so that the time is exact.
 */
export async function runWater(panel: PanelPage, seconds: number): Promise<void> {
  const { page } = panel;
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
  await panel.button(panel.text("measure.start")).tap();
  await page.clock.runFor(seconds * 1000);
  const stop = panel.button(panel.text("measure.stop"));
  if (await stop.isVisible()) await stop.tap();
  await page.clock.resume();
}

/** Types how much water there is, in the unit of the run. */
export async function fillVolume(panel: PanelPage, { volume, unit }: Pick<FlowRun, "volume" | "unit">) {
  await choose(panel, `measure.unit-${unit}`);
  await volumeField(panel).fill(`${volume}`);
}

export function volumeField(panel: PanelPage) {
  return panel.host.getByRole("textbox", { name: panel.text("measure.volume-label") });
}

async function enterTemperature(panel: PanelPage, reading: TemperatureReading): Promise<void> {
  await choose(panel, `measure.with-${reading.with}`);
  await choose(panel, `measure.unit-${reading.unit}`);
  await temperatureField(panel).fill(`${reading.value}`);
  await panel.button(panel.text("measure.show-result")).tap();
}

export function temperatureField(panel: PanelPage) {
  return panel.host.getByRole("textbox", { name: panel.text("measure.temperature-label") });
}

async function enterFilterAge(panel: PanelPage, { fitted }: FilterAgeReading): Promise<void> {
  await choose(panel, `measure.by-${fitted.by}`);
  if (fitted.by === "season") {
    await choose(panel, `measure.${fitted.season}`);
    await dateField(panel, "year").fill(`${fitted.year}`);
  } else {
    const [year = "", month = "", day] = (fitted.by === "date" ? fitted.date : fitted.month).split("-");
    await dateField(panel, "year").fill(year);
    if (day) {
      await dateField(panel, "month").fill(month);
      await dateField(panel, "day").fill(day);
    } else {
      const months = panel.host.getByRole("combobox", { name: panel.text("measure.month") });
      await months.selectOption(`${Number(month)}`);
    }
  }
  await showAge(panel);
}

export function dateField(panel: PanelPage, part: "day" | "month" | "year") {
  return panel.host.getByRole("textbox", { name: panel.text(`measure.${part}`), exact: true });
}

export async function showAge(panel: PanelPage): Promise<void> {
  await panel.button(panel.text("measure.show-age")).tap();
}

/** Takes one of a few, such as a unit, by its text. */
export async function choose(panel: PanelPage, key: string): Promise<void> {
  const option = panel.host.getByRole("radio", { name: panel.text(key), exact: true });
  await option.tap();
  await expect(option).toBeChecked();
}
