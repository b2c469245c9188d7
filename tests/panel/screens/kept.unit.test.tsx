// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import type { Draft, Turn } from "../../../src/turn/index.ts";
import { createDraftOf } from "../gallery/draft.ts";
import { filterTurn, flowTurn, gateTurn, modelTurn, temperatureTurn } from "../gallery/measure-fixtures.ts";
import { sealTurn } from "../gallery/seal-fixtures.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const minute = 60_000;

/** A page at one turn with what a tab keeps; mounted again it is the same page after a reload. */
function page(turn: Turn, draft: Draft = createDraftOf()) {
  let now = Date.parse("2025-06-20T10:00:00Z");
  const takePageModel = vi.fn(() => null as string | null);
  return {
    takePageModel,
    load: () => {
      const services = { draft, takePageModel, now: () => new Date(now).toISOString() };
      return mount(viewOf(turn), { services });
    },
    pass: (milliseconds: number) => {
      now += milliseconds;
    },
  };
}

type Loaded = Awaited<ReturnType<ReturnType<typeof page>["load"]>>;
const boxes = ({ all }: Loaded) => all<HTMLInputElement>("[type=checkbox]").map((box) => box.checked);
const chosen = ({ all }: Loaded) =>
  all<HTMLLabelElement>("label")
    .filter((label) => label.querySelector<HTMLInputElement>("[type=radio]")?.checked)
    .map((label) => label.textContent);

describe("over a reload there stay", () => {
  test("what was typed, its unit and what it was read off, with no verdict and no focus", async () => {
    const { load } = page(temperatureTurn);
    const before = await load();
    await before.pick("A thermometer");
    await before.pick("°F");
    await before.type("Temperature", "-1");
    await before.tap("Show what it means");
    const after = await load();
    expect(after.field("Temperature").value).toBe("-1");
    expect(chosen(after)).toEqual(["A thermometer", "°F"]);
    expect(after.buttons()).not.toContain("Use this");
    expect(after.focused()).toBe(document.body);
  });

  test("a date, the way of saying it, and how much is drawn", async () => {
    const { load } = page(filterTurn);
    const before = await load();
    await before.pick("I know the season");
    await before.pick("Autumn");
    await before.type("Year", "2024");
    await before.pick("Some drinks");
    await before.type("For how many people?", "3");
    const after = await load();
    expect(chosen(after)).toEqual(["I know the season", "Autumn", "Some drinks"]);
    expect(after.field("Year").value).toBe("2024");
    expect(after.field("For how many people?").value).toBe("3");
  });

  test("the places of a seal, and the survey goes on at the next", async () => {
    const { load } = page(sealTurn);
    const before = await load();
    for (const felt of ["Grips", "Slips", "Can't reach it"]) await before.tap(felt);
    const after = await load();
    const spots = after.all(".seal-door li").map((spot) => spot.textContent?.split(": ")[1]);
    expect(spots.slice(0, 4)).toEqual(["Grips", "Slips", "not reached", "not tried yet"]);
    expect(after.all(".place")[0]?.textContent).toBe("Place 4 of 12: top right corner");
  });

  test("a model code, before the one that the page names", async () => {
    const { load, takePageModel } = page(modelTurn);
    await (await load()).type("Model number", "WX-4");
    takePageModel.mockReturnValue("TBY-744");
    expect((await load()).field("Model number").value).toBe("WX-4");
  });
});

describe("a timed dispense over a reload", () => {
  const volume = "Water in the jug";
  const taken = { [flowTurn.turn]: { runs: "250 ml 10.02;190 g 11", volume: "190", unit: "g" } };

  test("has the runs that were taken, as they were", async () => {
    const { load } = page(flowTurn, createDraftOf(taken));
    const { tap, calls, focused } = await load();
    expect(focused(), "a page that loads moves no focus").toBe(document.body);
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({
      kind: "flow",
      runs: [
        { volume: 250, unit: "ml", seconds: 10.02 },
        { volume: 190, unit: "g", seconds: 11 },
      ],
    });
  });

  test("asks how much water there is where the time was taken", async () => {
    const { load } = page(flowTurn, createDraftOf({ [flowTurn.turn]: { seconds: "10.5", volume: "20" } }));
    const { field, type, tap, calls } = await load();
    expect(field(volume).value).toBe("20");
    await type(volume, "200");
    await tap("Show what it means");
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({ kind: "flow", runs: [{ volume: 200, unit: "ml", seconds: 10.5 }] });
  });

  test("does not run on: a watch that was not stopped has taken nothing", async () => {
    const { load, pass } = page(flowTurn);
    await (await load()).tap("Start");
    pass(minute);
    const { buttons, all } = await load();
    expect(buttons()).toContain("Start");
    expect(all(".runs li")).toEqual([]);
  });

  test.each([
    "x",
    "250 ml",
    "-1 ml 10",
    "250 buckets 10",
    "250 ml 0",
    "1e9 ml 10",
    "250 ml NaN",
    "Infinity g 10",
  ])("leaves out what can be no run: %s", async (runs) => {
    const { load } = page(flowTurn, createDraftOf({ [flowTurn.turn]: { runs, seconds: runs, unit: "x" } }));
    const { buttons, all } = await load();
    expect(buttons()).toContain("Start");
    expect(all(".runs li")).toEqual([]);
  });
});

describe("a gate over a reload", () => {
  const lines = ["The plug is out, and I can see it", "The stop tap is closed", "The floor is dry"] as const;

  test("has the ticks that were made, and is not confirmed by them", async () => {
    const { load, pass } = page(gateTurn);
    const before = await load();
    await before.pick(lines[0]);
    await before.pick(lines[1]);
    await before.pick(lines[2]);
    await before.pick(lines[1]);
    pass(5 * minute);
    const after = await load();
    expect(boxes(after)).toEqual([true, false, true]);
    await after.tap("I have done all of this");
    expect(after.calls).toEqual([]);
    await after.pick(lines[1]);
    expect((await load()).calls, "all ticked, nobody has tapped").toEqual([]);
  });

  test("has none that is older than a confirmation may be, however often the page was loaded", async () => {
    const { load, pass } = page(gateTurn);
    await (await load()).pick(lines[0]);
    pass(10 * minute);
    await (await load()).pick(lines[1]);
    pass(5 * minute);
    expect(boxes(await load()), "fifteen minutes are not over yet").toEqual([true, true, false]);
    pass(1);
    expect(boxes(await load())).toEqual([false, true, false]);
  });

  test.each(["2025-06-20T10:00:01Z", "yes", ""])("has none of another time: %s", async (at) => {
    const { load } = page(gateTurn, createDraftOf({ [gateTurn.turn]: { plug: at, water: at, floor: at } }));
    expect(boxes(await load())).toEqual([false, false, false]);
  });
});
