// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { modelTurn } from "../gallery/measure-fixtures.ts";
import { servicesFor } from "../gallery/services.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const machines = ["Freezer on top", "Freezer below", "Freezer at the side", "Two doors, freezer below"];
const atModel = (fixture = "") => mount(viewOf(modelTurn), { services: servicesFor(fixture) });
const placesOn = ({ all }: Awaited<ReturnType<typeof atModel>>) =>
  all(".plate ol li").map((each) => each.textContent);

test("the code's field comes first, then the way without it, then where to look", async () => {
  const { all } = await atModel();
  const order = all(".turn input[type=text], .turn button, .turn summary").map(
    (each) => each.textContent || each.localName,
  );
  expect(order).toEqual([
    "input",
    "Find my model",
    "I can't find it",
    "Where is the plate?",
    "Which number is the model number?",
  ]);
});

test("no place is named before the machine is chosen", async () => {
  const panel = await atModel();
  expect(placesOn(panel)).toEqual([]);
});

test.each(machines)("%s: its drawing, and the same places in words in their order", async (machine) => {
  const panel = await atModel();
  await panel.pick(machine);
  const places = placesOn(panel);
  expect(places).toHaveLength(4);
  expect(places[0]).toMatch(/^In the fridge/);
  // Nobody may pull a machine out for a plate: that is a hazard of its own, behind a gate.
  expect(places[3]).toBe("On the back, if you can see it without moving the machine");
  expect(panel.all<HTMLImageElement>(".plate img").map(({ alt }) => alt)).toEqual([
    expect.stringMatching(/^plate-/),
    "rating-plate",
  ]);
});

test("each machine has a drawing of its own", async () => {
  const panel = await atModel();
  const drawn = new Set<string>();
  for (const machine of machines) {
    await panel.pick(machine);
    drawn.add(panel.all<HTMLImageElement>(".plate img")[0]?.alt ?? "");
  }
  expect(drawn.size).toBe(machines.length);
});

test("the numbers that are no model code are named", async () => {
  const { all } = await atModel();
  const said = all(".plate ul")[0]?.textContent;
  for (const number of ["serial number", "product number", "bar code", "energy label"])
    expect(said).toContain(number);
});

test("it shuts when a code is typed, opens again by hand and stays so, and opens when the field is emptied", async () => {
  const { all, type } = await atModel();
  const open = () => all<HTMLDetailsElement>(".plate details").map((each) => each.open);
  expect(open()).toEqual([true, true]);
  await type("Model number", "W");
  expect(open()).toEqual([false, false]);
  (all<HTMLDetailsElement>(".plate details")[0] as HTMLDetailsElement).open = true;
  await type("Model number", "WX");
  expect(open()).toEqual([true, false]);
  await type("Model number", "");
  expect(open()).toEqual([true, true]);
});

test("after a search it is still there, for a second look at the plate", async () => {
  const { type, tap, settle, all } = await atModel();
  await type("Model number", "ZZ9");
  await tap("Find my model");
  await settle();
  expect(all(".plate summary")).toHaveLength(2);
});

test("in the other English the machine is a refrigerator", async () => {
  const panel = await mount(viewOf(modelTurn), { locale: "en-US" });
  await panel.pick("Freezer on top");
  expect(placesOn(panel)[0]).toBe("In the refrigerator, high up on a side wall");
});
