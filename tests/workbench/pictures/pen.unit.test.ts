import { expect, test } from "vitest";
import { draw, Pen } from "../../../src/workbench/pictures/pen.ts";

const numbersOf = (shape = "") => [...shape.slice(3).matchAll(/-?\d*\.?\d+/g)].map(Number);

test("all three axes of the room are as long on the paper, 120° apart (isometric, ISO 5456-3)", () => {
  const pen = new Pen([0, 0], 1);
  const ends = [pen.at([100, 0, 0]), pen.at([0, 100, 0]), pen.at([0, 0, 100])];
  for (const [x, y] of ends) expect(Math.hypot(x, y)).toBeCloseTo(100, 6);
  const angles = ends.map(([x, y]) => (Math.atan2(-y, x) * 180) / Math.PI);
  expect(angles.map(Math.round)).toEqual([-30, 30, 90]);
});

test("a box is its outline in the front's tone, then its side and its top", () => {
  const { shapes } = new Pen([0, 0], 1).box("s", [0, 0, 0], 10, 10, 10);
  expect(shapes.map((shape) => shape.slice(0, 2))).toEqual(["s2", "s3", "s1"]);
  // Six corners and four: a start, then a step each.
  expect(shapes.map((shape) => numbersOf(shape).length)).toEqual([12, 8, 8]);
});

test("a circle of 10 is an ellipse of 12.2 by 7.1 on the paper (the square roots of 3/2 and 1/2)", () => {
  const [shape] = new Pen([0, 0], 1).disc("k1", [0, 0, 0], 10).shapes;
  expect(shape).toMatch(/^k1 M-12\.2 0a12\.2 7\.1 0 /);
});

test("a scene is drawn as large as it fits into its place, in the middle; floors and words may reach further", () => {
  const shapes = draw([100, 20, 200, 120], (pen) => {
    pen.floor([0, 0, 0], 10, 10).poly("b1", [0, 0, 0], [10, 0, 0], [10, 10, 0], [0, 10, 0]);
  });
  const [left, top] = numbersOf(shapes.find((shape) => shape.startsWith("b1")));
  // 17.3 by 10 before; 100 wide then, 57.7 high.
  expect(left).toBeCloseTo(100, 0);
  expect(top).toBeCloseTo(70, 0);
});

test("numbers take as few letters as a path allows, to a tenth of a pixel", () => {
  const [shape] = new Pen([0.04, 0], 1).poly("b1", [0, 0, 0], [0, 0, 0.5], [0, 0, 100.06]).shapes;
  expect(shape).toBe("b1 M0 0l0 -.5 0 -99.6z");
});
