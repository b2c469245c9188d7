import { describe, expect, test } from "vitest";
import {
  despeckle,
  evenLight,
  type Grey,
  lieOf,
  portableGreymap,
  quarterTurn,
  rotate,
  scaleTo,
  toGrey,
} from "../../src/plate/index.ts";

const picture = (width: number, height: number, shade: (x: number, y: number) => number): Grey => ({
  width,
  height,
  data: Uint8Array.from({ length: width * height }, (_, at) => shade(at % width, Math.floor(at / width))),
});

const at = ({ width, data }: Grey, x: number, y: number) => data[y * width + x] ?? Number.NaN;

/** Rows of print: dashes of ink of uneven length on a light ground, leaning by so many degrees clockwise. */
function printed(lean: number, width = 640, height = 480): Grey {
  const [sin, cos] = [Math.sin((lean * Math.PI) / 180), Math.cos((lean * Math.PI) / 180)];
  return picture(width, height, (x, y) => {
    const [along, down] = [(x - 320) * cos + (y - 240) * sin, (y - 240) * cos - (x - 320) * sin];
    const row = Math.floor((down + 160) / 40);
    const isInk = (down + 400) % 40 < 16 && (Math.floor((along + 900) / 9) * (row + 7)) % 5 < 3;
    return Math.abs(along) < 220 && Math.abs(down) < 150 && isInk ? 40 : 220;
  });
}

describe("a picture of print", () => {
  test("becomes grey by how bright its colours look", () => {
    const data = Uint8ClampedArray.from([255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255, 255, 255, 255, 255]);
    const grey = [...toGrey({ width: 4, height: 1, data }).data];
    expect(grey).toEqual([76, 149, 28, 255]);
  });

  test("turned by quarters comes back as it was after four, and has its corner where a clock's hand would take it", () => {
    const small = picture(3, 2, (x, y) => 10 * y + x);
    expect(at(quarterTurn(small, 1), 1, 0)).toBe(0);
    expect(at(quarterTurn(small, 2), 2, 1)).toBe(0);
    expect(at(quarterTurn(small, 3), 0, 2)).toBe(0);
    expect(quarterTurn(quarterTurn(small, 3), 1)).toEqual(small);
  });

  test("scaled keeps its proportions, and what is thinner than a new pixel still darkens it", () => {
    const lined = picture(400, 200, (x) => (x % 4 === 0 ? 0 : 200));
    const scaled = scaleTo(lined, 100);
    expect([scaled.width, scaled.height]).toEqual([100, 50]);
    expect(Math.abs(at(scaled, 50, 25) - 150)).toBeLessThan(26);
  });

  test.each([-26, 4.5])("that leans by %d degrees is seen to, and comes out level", (lean) => {
    const lie = lieOf(printed(lean));
    expect(lie.isUpended).toBe(false);
    expect(Math.abs(lie.lean - lean)).toBeLessThanOrEqual(0.75);
    // Level again: the row of pixels through a line of print is ink or gap, as it is in print that never leaned.
    const level = rotate(printed(lean), lie.lean);
    const inkIn = (row: number) =>
      level.data.slice(row * level.width, (row + 1) * level.width).filter((s) => s < 90).length;
    const rows = Array.from({ length: level.height }, (_, row) => inkIn(row));
    expect(rows.filter((ink) => ink > 100).length).toBeGreaterThan(90);
  });

  test("whose lines run down is seen to", () => {
    expect(lieOf(quarterTurn(printed(3), 1)).isUpended).toBe(true);
  });

  test("has ink equally dark in light and in shadow, and a calm ground", () => {
    const shaded = picture(300, 100, (x, y) => {
      const light = 30 + (200 * x) / 300;
      return y > 40 && y < 48 && x % 12 < 5 ? light * 0.4 : light;
    });
    const even = evenLight(shaded, 20);
    for (const x of [24, 144, 276]) {
      expect(at(even, x, 44)).toBeLessThan(90);
      expect(at(even, x + 8, 44)).toBeGreaterThan(190);
    }
  });

  test("in light letters on a dark plate comes out dark on light", () => {
    const dark = picture(200, 80, (x, y) => (y > 36 && y < 44 && x % 15 < 4 ? 220 : 30));
    const even = evenLight(dark, 20);
    expect(at(even, 62, 40)).toBeLessThan(90);
    expect(at(even, 70, 40)).toBeGreaterThan(190);
  });

  test("loses single specks and keeps its edges", () => {
    const specked = picture(20, 20, (x, y) => (x === 5 && y === 5 ? 0 : x < 10 ? 200 : 20));
    const clean = despeckle(specked);
    expect(at(clean, 5, 5)).toBe(200);
    expect([at(clean, 9, 10), at(clean, 10, 10)]).toEqual([200, 20]);
  });

  test("is handed on as a greymap that says its size", () => {
    const file = portableGreymap(picture(3, 2, (x) => x));
    expect(new TextDecoder().decode(file.slice(0, 11))).toBe("P5\n3 2\n255\n");
    expect([...file.slice(11)]).toEqual([0, 1, 2, 0, 1, 2]);
  });
});
