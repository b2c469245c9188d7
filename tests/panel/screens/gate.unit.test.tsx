// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { gateTurn } from "../gallery/measure-fixtures.ts";
import { linesOf, turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const done = "I have done all of this";
const items = ["The plug is out, and I can see it", "The stop tap is closed", "The floor is dry"];

test("opens only when every line is ticked, and says how many are left", async () => {
  const { pick, tap, calls, text } = await mount(viewOf(gateTurn));
  await tap(done);
  expect(text()).toContain("Tick 3 more lines first.");
  await pick(items[0] as string);
  await pick(items[1] as string);
  expect(text()).toContain("Tick one more line first.");
  expect(calls).toEqual([]);
  await pick(items[2] as string);
  await tap(done);
  expect(calls).toEqual([["confirmGate", "back-panel.gate", ["plug", "water", "floor"]]]);
});

test("a tick can be taken back", async () => {
  const { pick, tap, calls } = await mount(viewOf(gateTurn));
  for (const item of items) await pick(item);
  await pick(items[1] as string);
  await tap(done);
  expect(calls).toEqual([]);
});

test("nothing is ticked any more when the person comes back to it", async () => {
  const { pick, show, all } = await mount(viewOf(gateTurn, { lines: linesOf(2) }));
  for (const item of items) await pick(item);
  await show(viewOf(turnWith({ heading: "The step behind it" }), { lines: linesOf(3) }));
  await show(viewOf(gateTurn, { lines: linesOf(2) }));
  expect(all<HTMLInputElement>("[type=checkbox]").map((box) => box.checked)).toEqual([false, false, false]);
});

test("ticks do not carry over to the next gate, even where its lines are the same", async () => {
  const { pick, show, all } = await mount(viewOf(gateTurn, { lines: linesOf(2) }));
  for (const item of items) await pick(item);
  await show(viewOf({ ...gateTurn, turn: "valve.gate" }, { lines: linesOf(3) }));
  expect(all<HTMLInputElement>("[type=checkbox]").map((box) => box.checked)).toEqual([false, false, false]);
});

test("names its danger with the signal word", async () => {
  const { all } = await mount(viewOf(gateTurn));
  expect(all(".signal.danger .word")[0]?.textContent).toBe("DANGER");
});
