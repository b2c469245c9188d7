import { choose, temperatureField } from "./instruments.ts";
import { expect, test } from "./panel-test.ts";

test.describe("the temperature of the freezer", () => {
  test.beforeEach(({ panel }) => panel.openWhere("freezer-temperature.read"));

  test("what cannot be read or believed is told beside the field, stays typed, and is not kept", async ({
    panel,
  }) => {
    const kept = await panel.storedText();
    const unreadable = (typed: string) => panel.text("measure.unreadable", { typed });
    const beyond = (side: "small" | "large", value: string, limit: string) =>
      panel.text(`measure.temperature-too-${side}`, { value, min: limit, max: limit, unit: "°C" });
    for (const [typed, said] of [
      ["", panel.text("measure.temperature-empty")],
      ["12abc", unreadable("12abc")],
      ["-18-", unreadable("-18-")],
      ["180", beyond("large", "180", "60")],
      ["-300", beyond("small", "−300", "−60")],
    ] as const) {
      await temperatureField(panel).fill(typed);
      await panel.button(panel.text("measure.show-result")).tap();
      await expect(temperatureField(panel)).toHaveAccessibleDescription(said);
      await expect(temperatureField(panel)).toHaveValue(typed);
      await expect(temperatureField(panel)).toBeFocused();
    }
    await panel.seesTurn();
    expect(await panel.storedText()).toBe(kept);
  });

  test("nought degrees is a reading, and too warm for ice", async ({ panel }) => {
    await panel.measure({ kind: "temperature", value: 0, unit: "C", with: "thermometer" });
    expect(panel.turn.turn).toBe("freezer-temperature.colder");
  });

  test("0 °F is the freezer that the food authorities ask for: cold enough", async ({ panel }) => {
    // 0 °F = −17.8 °C, USDA FSIS and FDA advice.
    await panel.measure({ kind: "temperature", value: 0, unit: "F", with: "thermometer" });
    expect(panel.turn.turn).not.toBe("freezer-temperature.colder");
    await panel.seesLine("freezer-temperature.read", "passes");
  });

  for (const typed of ["-18,5", "−18.5"]) {
    test(`"${typed}" is read as eighteen and a half below nought`, async ({ panel }) => {
      await choose(panel, "measure.with-thermometer-freezer");
      await temperatureField(panel).fill(typed);
      await panel.button(panel.text("measure.show-result")).tap();
      await expect(panel.host.getByText(panel.text("measure.temperature-passes"))).toBeVisible();
      await expect(panel.host.getByText("−18.5 °C").first()).toBeVisible();
    });
  }

  test("a verdict goes away as soon as anything it rests on is changed", async ({ panel }) => {
    await temperatureField(panel).fill("-20");
    await panel.button(panel.text("measure.show-result")).tap();
    await expect(panel.button(panel.text("measure.use"))).toBeVisible();
    await choose(panel, "measure.unit-F");
    await expect(panel.button(panel.text("measure.use"))).toHaveCount(0);
  });
});
