// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { describe, expect, test, vi } from "vitest";
import type { FoundModel } from "../../../src/turn/index.ts";
import { modelTurn } from "../gallery/measure-fixtures.ts";
import { servicesFor } from "../gallery/services.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const find = "Find my model";
const label = "Model number";
const atModel = (fixture: string) =>
  mount(viewOf(modelTurn), { services: { findModel: servicesFor(fixture).findModel } });

async function asked(fixture: string, typed: string) {
  const panel = await atModel(fixture);
  await panel.type(label, typed);
  await panel.tap(find);
  await panel.settle();
  return panel;
}

test("even an exact code is shown and confirmed before it counts", async () => {
  const { calls, text, tap } = await asked("model-exact", "wx40b8e");
  expect(text()).toContain("WX-40B8/ENordlicht");
  expect(calls).toEqual([]);
  await tap("This is mine: WX-40B8/E");
  expect(calls).toEqual([["giveModel", "model.code", "WX-40B8/E", "wx40b8e"]]);
});

test("a near miss is never taken silently: each candidate has a button of its own, and differences are marked", async () => {
  const { calls, all, buttons, tap } = await asked("model-near", "WX40BBE");
  expect(calls).toEqual([]);
  expect(buttons().filter((name) => name.startsWith("This is mine"))).toHaveLength(2);
  expect(all("mark").map((mark) => mark.textContent)).toEqual(["8", "8", "8"]);
  await tap("This is mine: WX-4088/E");
  expect(calls).toEqual([["giveModel", "model.code", "WX-4088/E", "WX40BBE"]]);
});

test("'not mine' goes back to the typed code, which is still there, and says what to compare", async () => {
  const { tap, told, field, focused } = await asked("model-near", "WX40BBE");
  await tap("Not mine");
  expect(field(label).value).toBe("WX40BBE");
  expect(focused()).toBe(field(label));
  expect(told(label)).toContain("0 and O");
});

test("an unknown code can be tried again, or the person goes on without it and the shop sees what was typed", async () => {
  const { text, tap, calls } = await asked("", "ZZ9");
  expect(text()).toContain("We don't know “ZZ9”.");
  await tap("Go on without it");
  expect(calls).toEqual([["giveModel", "model.code", null, "ZZ9"]]);
});

test("a broken catalogue says so, keeps the code, can be retried and can be left", async () => {
  const answers: (() => Promise<FoundModel>)[] = [
    async () => Promise.reject(new Error("offline")),
    async () => ({ kind: "unknown", typed: "WX" }),
  ];
  const findModel = vi.fn(() => (answers.shift() as () => Promise<FoundModel>)());
  const { type, tap, settle, text, field, buttons } = await mount(viewOf(modelTurn), {
    services: { findModel },
  });
  await type(label, "WX");
  await tap(find);
  await settle();
  expect(text()).toContain("The list of models didn't load. Your number is still there.");
  expect(field(label).value).toBe("WX");
  expect(buttons()).toContain("Go on without it");
  await tap("Try again");
  await settle();
  expect(text()).toContain("We don't know “WX”.");
});

test("a slow search says that it is looking, keeps the typed code and takes no second search", async () => {
  const findModel = vi.fn(() => new Promise<never>(() => {}));
  const { type, tap, text, field } = await mount(viewOf(modelTurn), { services: { findModel } });
  await type(label, "WX40");
  await tap(find);
  await tap(find);
  expect(text()).toContain("Looking it up…");
  expect(field(label).value).toBe("WX40");
  expect(findModel).toHaveBeenCalledTimes(1);
});

test("an answer to a code that was edited meanwhile is dropped", async () => {
  let answer: (found: FoundModel) => void = () => {};
  const findModel = () => new Promise<FoundModel>((resolve) => (answer = resolve));
  const { type, tap, settle, buttons } = await mount(viewOf(modelTurn), { services: { findModel } });
  await type(label, "WX4");
  await tap(find);
  await type(label, "WX40");
  answer({ kind: "unknown", typed: "WX4" });
  await settle();
  expect(buttons()).not.toContain("Try again");
});

test("a code of 300 characters is refused in words, and as much of it as a field takes stays there", async () => {
  const long = "W".repeat(300);
  const { told, field } = await asked("model-long", long);
  expect(told(label)).toBe(
    "That's too long for a model number. Type only the number, without the words around it.",
  );
  expect(field(label).value).toBe(long.slice(0, 201));
});

test("without a plate the person goes on all the same", async () => {
  const { tap, calls } = await atModel("");
  await tap("I can't find it");
  expect(calls).toEqual([["giveModel", "model.code", null, ""]]);
});

test("the field does not complete what is read off a plate", async () => {
  const { field } = await atModel("");
  expect(field(label).getAttribute("autocomplete")).toBe("off");
  expect(field(label).getAttribute("autocapitalize")).toBe("characters");
});

test("of two codes that look alike the one that was typed says so, and both show where they differ", async () => {
  const { text, all } = await asked("model-twin", "NTW 254NH/A0");
  expect(text()).toContain("That number is on our list, but another looks much like it.");
  expect(text()).not.toContain("We don't have");
  expect(all(".models li").map((each) => each.textContent?.includes("as you typed it"))).toEqual([
    true,
    false,
  ]);
  expect(all("mark").map((mark) => mark.textContent)).toEqual(["0", "O"]);
});

test("candidates say in one line which parts differ between them, or that none do", async () => {
  const near = await asked("model-near", "WX40BBE");
  expect(near.text()).toContain("Some parts differ between them: water filter and inlet valve.");
  const more = await asked("model-more", "WXR1200");
  expect(more.text()).toContain("One part differs between them: door seal.");
  const twin = await asked("model-twin", "NTW 254NH/A0");
  expect(twin.text()).toContain("They take the same parts.");
});

test("where more codes look like it than a phone can show, the whole code is asked for", async () => {
  const { text, buttons } = await asked("model-more", "WXR1200");
  expect(buttons().filter((name) => name.startsWith("This is mine"))).toHaveLength(3);
  expect(text()).toContain("4 more look like it. Type the whole number");
});

test("a kind of machine is named in words, and one that nobody has words for by its own", async () => {
  expect((await asked("model-twin", "NTW 254NH/A0")).text()).toContain("Two doors, freezer below");
  expect((await asked("model-exact", "wx40b8e")).text()).toContain("fridge freezer");
});

test("a long number without letters is said to be rather another number of the plate", async () => {
  const { text, buttons } = await asked("model-digits", "9250 314480");
  expect(text()).toContain("“9250 314480” has no letters. It may be the serial or product number.");
  expect(buttons()).toContain("Go on without it");
  expect((await asked("", "4711")).text()).toContain("We don't know “4711”.");
});

describe("a code that the page gives", () => {
  /** Comes to the question, by a tap or as the page loads, on a page that gives a code once. */
  async function withPageModel(fixture: string, given: string, isLedByTap: boolean) {
    const findModel = vi.fn(servicesFor(fixture).findModel);
    let once: string | null = given;
    const takePageModel = () => {
      const code = once;
      once = null;
      return code;
    };
    const services = { findModel, takePageModel };
    const first = viewOf({ ...modelTurn, turn: "opening.symptom", kind: "choice", answers: [own] });
    const panel = await mount(isLedByTap ? first : viewOf(modelTurn), { services });
    if (isLedByTap) await panel.tap("No ice");
    if (isLedByTap) await panel.show(viewOf(modelTurn));
    await act(() => new Promise<void>((over) => requestAnimationFrame(() => over())));
    await panel.settle();
    return { ...panel, findModel };
  }
  const own = { id: "no-ice", text: "No ice", role: "own" as const };

  test("is looked up as if it was typed, and taken by itself where it can mean one model only", async () => {
    const { calls, findModel } = await withPageModel("model-exact", "wx40b8e", true);
    expect(findModel).toHaveBeenCalledWith("wx40b8e");
    expect(calls.at(-1)).toEqual(["giveModel", "model.code", "WX-40B8/E", "wx40b8e"]);
  });

  test("is shown for a tap where the page is only loading, and moves no focus", async () => {
    const { calls, buttons, focused, field, tap } = await withPageModel("model-exact", "wx40b8e", false);
    expect(calls).toEqual([]);
    expect(field(label).value).toBe("wx40b8e");
    expect(focused()).toBe(document.body);
    expect(buttons()).toContain("This is mine: WX-40B8/E");
    await tap("This is mine: WX-40B8/E");
    expect(calls).toEqual([["giveModel", "model.code", "WX-40B8/E", "wx40b8e"]]);
  });

  test.each(["model-near", "model-twin", "model-more"])(
    "that may mean several (%s) is asked about",
    async (fixture) => {
      const { calls, buttons } = await withPageModel(fixture, "WX40BBE", true);
      expect(calls.filter(([name]) => name === "giveModel")).toEqual([]);
      expect(buttons().some((name) => name.startsWith("This is mine"))).toBe(true);
    },
  );

  test("that is not found says so, stays in the field, and another one can be typed", async () => {
    const { text, field, type, tap, settle, findModel } = await withPageModel("", "ZZ9", true);
    expect(text()).toContain("We don't know “ZZ9”.");
    expect(field(label).value).toBe("ZZ9");
    await type(label, "WX40");
    await tap(find);
    await settle();
    expect(findModel).toHaveBeenLastCalledWith("WX40");
  });

  test("is not put in again for somebody who comes back to type another", async () => {
    const { show, field, settle } = await withPageModel("model-near", "WX40BBE", true);
    await show(viewOf({ ...modelTurn, turn: "part.card", kind: "choice" }));
    await show(viewOf(modelTurn));
    await settle();
    expect(field(label).value).toBe("");
  });
});
