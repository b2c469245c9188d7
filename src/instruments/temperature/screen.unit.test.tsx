// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { temperatureTurn } from "../../../tests/panel/gallery/measure-fixtures.ts";
import { viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";

const show = "Show what it means";
const atTemperature = (locale: "en-GB" | "en-US" = "en-GB") => mount(viewOf(temperatureTurn), { locale });

test("the verdict is shown before the reading is used", async () => {
  const { type, tap, focused, calls, text } = await atTemperature();
  await type("Temperature", "-20");
  await tap(show);
  expect(focused().textContent).toBe("Cold enough to make ice");
  expect(text()).toContain("−20 °C, give or take 1.9°. It should be −15 °C or colder.");
  expect(calls).toEqual([]);
  await tap("Use this");
  expect(calls).toEqual([
    ["measure", "freezer.temperature", { kind: "temperature", value: -20, unit: "C", with: "display" }],
  ]);
});

test("editing takes the verdict back, so that an old one is never used for a new number", async () => {
  const { type, tap, buttons } = await atTemperature();
  await type("Temperature", "-20");
  await tap(show);
  await type("Temperature", "-2");
  expect(buttons()).not.toContain("Use this");
});

test("a minus can be typed: the keyboard is that of words, because the number pad of some phones has none", async () => {
  const { field } = await atTemperature();
  expect(field("Temperature").inputMode).toBe("text");
});

test("the true minus sign of a pasted reading is read", async () => {
  const { type, tap, text } = await atTemperature();
  await type("Temperature", "−18");
  await tap(show);
  expect(text()).toContain("−18 °C, give or take");
});

// −4 °F is −20 °C and 5 °F is −15 °C: NIST SP 811 App. B.8.
test("American kitchens read degrees Fahrenheit first", async () => {
  const { type, tap, text, calls } = await atTemperature("en-US");
  await type("Temperature", "-4");
  await tap(show);
  expect(text()).toContain("−4 °F, give or take 3.4°. It should be 5 °F or colder.");
  await tap("Use this");
  expect(calls[0]?.[2]).toEqual({
    kind: "temperature",
    value: -4,
    unit: "F",
    with: "display",
  });
});

test("a thermometer asks how long it was there, and has less doubt than a display", async () => {
  const { pick, type, tap, text } = await atTemperature();
  await pick("A thermometer");
  expect(text()).toContain("How long was it in there?");
  await type("Temperature", "-18");
  await tap(show);
  expect(text()).toContain("give or take 0.9°");
});

test.each([
  ["", "Enter the temperature."],
  ["12abc", "We can't read “12abc” as a number. Type digits, such as 150, 1.5 or 1/2."],
  ["-180", "−180 °C is colder than any kitchen freezer. Check the unit, and enter −40 °C or more."],
  ["77", "77 °C is warmer than any kitchen. Check the unit, and enter 40 °C or less."],
])("'%s' is refused in words beside the field, and stays there", async (typed, said) => {
  const { type, tap, told, field, focused } = await atTemperature();
  await type("Temperature", typed);
  await tap(show);
  expect(told("Temperature")).toBe(said);
  expect(field("Temperature").value).toBe(typed);
  expect(focused()).toBe(field("Temperature"));
});

test("zero degrees is a reading like any other", async () => {
  const { type, tap, focused } = await atTemperature();
  await type("Temperature", "0");
  await tap(show);
  expect(focused().textContent).toBe("Too warm to make ice well");
});

describe("a freezer's degrees above zero may lack their minus", () => {
  test("which is asked before they mean anything, and one tap puts it there", async () => {
    const { type, tap, text, field, focused, buttons, calls } = await atTemperature();
    await type("Temperature", "18");
    await tap(show);
    expect(focused().textContent).toContain("Is it minus?");
    expect(buttons()).not.toContain("Use this");
    await tap("Yes, −18 °C");
    expect(field("Temperature").value).toBe("-18");
    expect(focused().textContent).toBe("Cold enough to make ice");
    expect(text()).toContain("−18 °C, give or take");
    await tap("Use this");
    expect(calls).toHaveLength(1);
    expect(calls[0]?.[2]).toMatchObject({ value: -18 });
  });

  test("and whoever means them says so", async () => {
    const { type, tap, calls } = await atTemperature();
    await type("Temperature", "18");
    await tap(show);
    await tap("No, 18 °C above zero");
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ value: 18 });
  });

  test("another number is asked about anew", async () => {
    const { type, tap, buttons } = await atTemperature();
    await type("Temperature", "18");
    await tap(show);
    await tap("No, 18 °C above zero");
    await type("Temperature", "8");
    await tap(show);
    expect(buttons()).toContain("Yes, −8 °C");
  });

  test("degrees Fahrenheit above zero are what freezers there show", async () => {
    const { type, tap, buttons } = await atTemperature("en-US");
    await type("Temperature", "18");
    await tap(show);
    expect(buttons()).toContain("Use this");
  });
});
