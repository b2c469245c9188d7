import { expect } from "@playwright/test";
import type { CubesReading } from "../../src/instruments/cubes/reading.ts";
import type { FilterAgeReading } from "../../src/instruments/filter-age/reading.ts";
import type { FlowReading, FlowRun } from "../../src/instruments/flow/reading.ts";
import type { IceReading } from "../../src/instruments/ice/reading.ts";
import type { Reading, ReadingNeed } from "../../src/instruments/index.ts";
import type { SealReading } from "../../src/instruments/seal/reading.ts";
import { carry } from "../../src/instruments/seal/spot.tsx";
import type { SupplyReading } from "../../src/instruments/supply/reading.ts";
import type { TemperatureReading } from "../../src/instruments/temperature/reading.ts";
import type { Estimate } from "../../src/measuring/index.ts";
import type { PanelPage } from "./panel-page.ts";

/** Does on screen what brings this reading, up to the verdict. */
export async function enterReading(panel: PanelPage, reading: Reading): Promise<void> {
  switch (reading.kind) {
    case "flow":
      return enterFlow(panel, reading);
    case "temperature":
      return enterTemperature(panel, reading);
    case "supply":
      return enterSupply(panel, reading);
    case "ice":
      return enterIce(panel, reading);
    case "cubes":
      return enterCubes(panel, reading);
    case "seal":
      return enterSeal(panel, reading);
    default:
      return enterFilterAge(panel, reading);
  }
}

/** The reading as the screen keeps it: with what was measured before in the session and belongs to it. */
export function withConditions(reading: Reading, need: ReadingNeed | null): Reading {
  if (reading.kind === "flow" && need?.instrument === "flow" && need.before)
    return { ...reading, before: need.before };
  if (reading.kind !== "ice" || need?.instrument !== "ice") return reading;
  const plain = (estimate: Estimate | null) => estimate && { value: estimate.value, u: estimate.u };
  const [celsius, perSecond] = [plain(need.celsius), plain(need.perSecond)];
  return { ...reading, ...(celsius ? { celsius } : {}), ...(perSecond ? { perSecond } : {}) };
}

async function enterSupply(panel: PanelPage, reading: SupplyReading): Promise<void> {
  await choose(panel, `measure.supply-by-${reading.by}`);
  await choose(panel, `measure.unit-${reading.unit}`);
  if (reading.by === "gauge") await fillField(panel, "pressure-label", reading.value);
  else {
    await fillField(panel, "vessel-label", reading.volume);
    await fillField(panel, "seconds-label", reading.seconds);
  }
  await showResult(panel);
}

async function enterIce(panel: PanelPage, reading: IceReading): Promise<void> {
  await choose(panel, `measure.ice-by-${reading.by}`);
  await fillField(panel, `ice-${reading.by}`, reading.amount);
  if (reading.unit) await choose(panel, `measure.unit-${reading.unit}`);
  if (reading.pieceGrams !== undefined) await fillField(panel, "ice-piece-grams", reading.pieceGrams);
  await fillField(panel, `ice-hours-${reading.by}`, reading.hours);
  await choose(panel, `measure.ice-use-${reading.wanted ?? "unknown"}`);
  await showResult(panel);
}

async function enterCubes(panel: PanelPage, reading: CubesReading): Promise<void> {
  await fillField(panel, "pieces-label", reading.pieces);
  await fillField(panel, "mass-label", reading.mass);
  await choose(panel, `measure.unit-${reading.unit}`);
  await showResult(panel);
}

/** One place after the other, as the drawing asks for them. */
async function enterSeal(panel: PanelPage, reading: SealReading): Promise<void> {
  await choose(panel, `measure.seal-${reading.door}`);
  const need = panel.turn.reading;
  const { reading: first, verdict = "" } = (need?.instrument === "seal" && need.before) || {};
  const places = panel.text("measure.seal-places").split("\n").length;
  const carried = first && carry(first.spots, verdict, places);
  for (const [place, spot] of reading.spots.entries())
    if (!carried || carried[place] === "untried")
      await panel.button(panel.text(`measure.seal-${spot ?? "skip"}`)).tap();
}

async function fillField(panel: PanelPage, key: string, value: number): Promise<void> {
  await panel.host.getByRole("textbox", { name: panel.text(`measure.${key}`) }).fill(`${value}`);
}

async function showResult(panel: PanelPage): Promise<void> {
  await panel.button(panel.text("measure.show-result")).tap();
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
 * Starts the stopwatch, lets so many seconds pass by the page's clock, and stops it by a tap, or goes on by one if it is
 * over. The clock stands still around it, so that the time is exact.
 */
export async function runWater(panel: PanelPage, seconds: number): Promise<void> {
  const { page } = panel;
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
  await panel.button(panel.text("measure.start")).tap();
  await page.clock.runFor(seconds * 1000);
  const isOver = await panel.button(panel.text("measure.go-on")).isVisible();
  await panel.button(panel.text(isOver ? "measure.go-on" : "measure.stop")).tap();
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
  await choose(panel, `measure.with-${reading.with}-${reading.place ?? "freezer"}`);
  await choose(panel, `measure.unit-${reading.unit}`);
  await temperatureField(panel).fill(`${reading.value}`);
  if (reading.stood !== undefined)
    await fillField(panel, "stood-label", reading.place === "fridge" ? reading.stood / 60 : reading.stood);
  await panel.button(panel.text("measure.show-result")).tap();
}

export function temperatureField(panel: PanelPage) {
  return panel.host.getByRole("textbox", { name: panel.text("measure.temperature-label") });
}

async function enterFilterAge(panel: PanelPage, { fitted, use }: FilterAgeReading): Promise<void> {
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
  if (use) {
    await choose(panel, `measure.habit-${use.habit}`);
    await fillField(panel, "people-label", use.people);
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
