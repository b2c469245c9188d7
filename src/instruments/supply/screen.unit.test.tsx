// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { turnWith, viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";
import { regionOf } from "../../../tests/panel/regions.ts";
import { supplyLimits as limits } from "./example-limits.ts";

type Given = Parameters<typeof mount>[1];

const atSupply = async (given: Given, statutoryKilopascals = limits.statutoryKilopascals) => {
  const panel = await mount(
    viewOf(
      turnWith({
        turn: "supply.measure",
        kind: "reading",
        heading: "How strong is the supply?",
        reading: {
          instrument: "supply",
          region: regionOf("en-GB"),
          limits: { ...limits, statutoryKilopascals },
        },
      }),
    ),
    given,
  );
  const units = () =>
    panel.all<HTMLLabelElement>("fieldset:last-of-type label").map((label) => label.textContent);
  return { ...panel, units };
};

test("a vessel and a gauge are read in the units of the country, the usual one first", async () => {
  const unitsIn = async (given: Given) => {
    const { units, pick } = await atSupply(given);
    const fill = units();
    await pick("Read a gauge");
    return [fill, units()];
  };
  expect(await unitsIn({ locale: "en-GB" })).toEqual([
    ["litres", "ml", "UK pints", "US gallons"],
    ["bar", "kPa", "psi"],
  ]);
  expect(await unitsIn({ locale: "en-US" })).toEqual([
    ["quarts", "gallons", "liters"],
    ["psi", "kPa", "bar"],
  ]);
  // The words are a language's, the units a country's.
  expect(await unitsIn({ locale: "en-GB", region: "US" })).toEqual([
    ["US quarts", "US gallons", "litres"],
    ["psi", "kPa", "bar"],
  ]);
});

test("a pressure surely below the country's limit is told with the words of its law, and of no other", async () => {
  const toldIn = async (region: string, kilopascals: string, limit?: number) => {
    const { pick, type, tap, text } = await atSupply({ region }, limit);
    await pick("Read a gauge");
    await pick("kPa");
    await type("Pressure with all other taps shut", kilopascals);
    await tap("Show what it means");
    const said = ["owes you", "very little"];
    return said.filter((words) => text().includes(words));
  };
  // 7 m of head are 69 kPa (guaranteed standards scheme, UK); the gauge may be 20 kPa out.
  expect(await toldIn("GB", "45")).toEqual(["owes you"]);
  expect(await toldIn("GB", "60")).toEqual([]);
  expect(await toldIn("US", "45")).toEqual(["very little"]);
  expect(await toldIn("GB", "0", 0)).toEqual([]);
});
