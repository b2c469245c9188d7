import fc from "fast-check";
import { expect, test } from "vitest";
import { insightBounds, readLine } from "../../src/insight/index.ts";

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
  const ofCause = { ...lasted, cause: "seal-worn" };
  expect(readLine(JSON.stringify(ofCause))).toEqual(ofCause);
  expect(readLine(JSON.stringify({ ...lasted, outcome: "stopped" }))).toBeNull();
  expect(readLine(JSON.stringify({ ...lasted, days: 500 }))).toBeNull();
});

const ended = {
  ...{ what: "ended", scenario: "no-ice-plumbed", outcome: "fixed", cause: "tap-closed", part: null },
  ...{ minutes: 4, answers: 9 },
};

test("an ending is read as panels write it, and as they wrote it before what was seen was told", () => {
  const now = { format: 2, ...ended, seen: ["stop-tap.was-shut", "power.alive"], vain: ["switched-off"] };
  expect(readLine(JSON.stringify(now))).toEqual(now);
  const before = { format: 1, ...ended };
  expect(readLine(JSON.stringify(before))).toEqual(before);
  expect(readLine(JSON.stringify({ ...before, seen: ["stop-tap.was-shut"] }))).toEqual(before);
});

test.each([
  ["words for what was seen", { seen: ["the tap was shut"] }],
  ["a number for a reading", { seen: ["flow-test.12.5 ml/s"] }],
  ["a check and no outcome", { seen: ["stop-tap"] }],
  ["more than a search can see", { seen: Array(insightBounds.seen + 1).fill("power.alive") }],
  ["an outcome that is too long", { seen: [`power.${"a".repeat(insightBounds.outcome)}`] }],
  ["words for what was tried", { vain: ["opened the tap"] }],
  ["more than anybody tries", { vain: Array(insightBounds.vain + 1).fill("switched-off") }],
  ["no list", { seen: undefined }],
])("an ending with %s counts as none", (_, wrong) => {
  expect(readLine(JSON.stringify({ format: 2, ...ended, seen: [], vain: [], ...wrong }))).toBeNull();
});

test("the longest ending that a panel may write fits into a line", () => {
  const longest = JSON.stringify({
    ...{ format: 2, ...ended, scenario: "a".repeat(insightBounds.id), cause: "a".repeat(insightBounds.id) },
    seen: Array(insightBounds.seen).fill(`a.${"b".repeat(insightBounds.outcome - 2)}`),
    vain: Array(insightBounds.vain).fill("a".repeat(insightBounds.id)),
  });
  expect(longest.length).toBeLessThanOrEqual(insightBounds.line);
  expect(readLine(longest)).not.toBeNull();
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
