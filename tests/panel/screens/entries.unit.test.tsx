// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { expect, test } from "vitest";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";
import { regionOf } from "../regions.ts";

const show = "Show what it means";

/** Limits of our own; 17.5 g a piece is 140 g in 8 pieces (LBNL, Meier 1995). */
const atCubes = () =>
  mount(
    viewOf(
      turnWith({
        turn: "cubes.weigh",
        kind: "reading",
        heading: "How heavy are the cubes?",
        reading: {
          instrument: "cubes",
          region: regionOf("en-GB"),
          limits: {
            coverage: 0.95,
            scaleReading: 1,
            nominalGrams: 17.5,
            leastGrams: 12,
            fewestPieces: 3,
            mostPieces: 200,
          },
        },
      }),
    ),
  );

test("two fields that a phone fills in one go are both kept", async () => {
  const { field, tap, text, calls } = await atCubes();
  await act(() => {
    for (const [label, typed] of [
      ["How many cubes?", "10"],
      ["What do they weigh together?", "175"],
    ] as const) {
      const input = field(label);
      input.value = typed;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }
  });
  await tap(show);
  expect(text()).toContain("17.5 g each");
  expect(text()).toContain("about 100 %");
  await tap("Use this");
  expect(calls).toEqual([["measure", "cubes.weigh", { kind: "cubes", pieces: 10, mass: 175, unit: "g" }]]);
});

test("what is wrong stands beside its own field only, and goes away when that is mended", async () => {
  const { type, tap, told, text } = await atCubes();
  await type("How many cubes?", "2");
  await type("What do they weigh together?", "36");
  await tap(show);
  expect(told("How many cubes?")).toContain("Enter 3 to 200");
  expect(told("What do they weigh together?")).toBe("");
  await type("How many cubes?", "3");
  expect(told("How many cubes?")).toBe("");
  await tap(show);
  expect(text()).toContain("Too close to call");
});

test("a result is taken back as soon as its unit is changed", async () => {
  const { type, tap, pick, buttons } = await atCubes();
  await type("How many cubes?", "10");
  await type("What do they weigh together?", "175");
  await tap(show);
  expect(buttons()).toContain("Use this");
  await pick("oz");
  expect(buttons()).not.toContain("Use this");
});
