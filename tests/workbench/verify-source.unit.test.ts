import { describe, expect, test } from "vitest";
import { readSource } from "../../src/workbench/build/yaml-source.ts";

const text = `# A comment first.
id: door
turns:
  look:
    answers:
      open: { to: done, clears: [door, seal] }
    picture:
list:
  - one
  - { check: two }
`;
const source = readSource("checks/door.yaml", text);
const at = (path: (string | number)[], part?: "key") => {
  const { line, column } = source.placeOf(path, part);
  // The place as a person would find it: the rest of the line from there.
  return text.split("\n")[line - 1]?.slice(column - 1);
};

describe("a value is found", () => {
  test.each([
    ["a plain value", ["id"], "door"],
    ["a value inside braces", ["turns", "look", "answers", "open", "to"], "done, clears: [door, seal] }"],
    ["an entry of a list in brackets", ["turns", "look", "answers", "open", "clears", 1], "seal] }"],
    ["an entry of a list with dashes", ["list", 0], "one"],
    ["a value inside such an entry", ["list", 1, "check"], "two }"],
    ["a block, by its key", ["turns", "look"], "look:"],
    ["a key without a value, by its key", ["turns", "look", "picture"], "picture:"],
    ["what is not there, by what is around it", ["turns", "look", "kind"], "look:"],
  ])("%s", (_, path, rest) => {
    expect(at(path as string[])).toBe(rest);
  });

  test("by its key where the key is at fault", () => {
    expect(at(["turns", "look", "answers", "open"], "key")).toBe("open: { to: done, clears: [door, seal] }");
  });
});

test("a slip that makes YAML unreadable is told once, where it starts", () => {
  const { problems, data } = readSource("x.yaml", "id: a\n  turns: b\n other: [\nmore: }\n");
  expect(problems).toMatchObject([{ code: "yaml-syntax", file: "x.yaml", line: 1, column: 5 }]);
  expect(data).toBeNull();
});

test("each doubled key is told", () => {
  const { problems } = readSource("x.yaml", "a: 1\na: 2\nb: 1\nb: 2\n");
  expect(problems.map(({ code, line }) => [code, line])).toEqual([
    ["doubled-key", 2],
    ["doubled-key", 4],
  ]);
});

test("an alias without its anchor is a problem, not a crash", () => {
  expect(readSource("x.yaml", "a: *nobody\n").problems).toMatchObject([{ code: "yaml-syntax" }]);
});
