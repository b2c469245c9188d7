import fc from "fast-check";
import { expect, test } from "vitest";
import { readLine } from "../../src/insight/index.ts";

const left = {
  format: 1,
  what: "left",
  scenario: "no-ice-plumbed",
  turn: "flow-test.run",
  kind: "reading",
  minutes: 4,
  answers: 9,
};

test("a line that a panel wrote is read as it is", () => {
  expect(readLine(JSON.stringify(left))).toEqual(left);
});

test("so is what somebody said a day after an ending, and no other ending is asked about", () => {
  const lasted = {
    format: 1,
    what: "lasted",
    scenario: "no-ice-plumbed",
    outcome: "part",
    works: false,
    days: 3,
  };
  expect(readLine(JSON.stringify(lasted))).toEqual(lasted);
  expect(readLine(JSON.stringify({ ...lasted, outcome: "stopped" }))).toBeNull();
  expect(readLine(JSON.stringify({ ...lasted, days: 500 }))).toBeNull();
});

test.each([
  ["another format", { ...left, format: 2 }],
  ["a turn that no flow has", { ...left, turn: "<b>bold</b>" }],
  ["a turn of a thousand characters", { ...left, turn: "a".repeat(1000) }],
  ["half a minute", { ...left, minutes: 0.5 }],
  ["a week", { ...left, minutes: 10_080 }],
  ["words for a scenario", { ...left, scenario: "it makes no ice" }],
  ["what nobody sends", { ...left, what: "typed" }],
  ["a list", [left]],
])("a line with %s counts as none", (_, line) => {
  expect(readLine(JSON.stringify(line))).toBeNull();
});

test("more than the schema has is left out, so that it is counted nowhere", () => {
  expect(readLine(JSON.stringify({ ...left, visitor: "abc" }))).toEqual(left);
});

test("whatever else stands in a file is none, and nothing throws", () => {
  fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => readLine(text) === null));
});
