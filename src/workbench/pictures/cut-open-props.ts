import type { Pen, Place } from "./pen.ts";
import { binBack, binFront, cube } from "./props.ts";

/** A small tap in a pipe that comes down a wall: its handle along the pipe, or across it. */
export function wallTap(pen: Pen, [x, y, z]: Place, isOpen: boolean): void {
  pen.pipe("water", [x, y + 8, z + 26], [x, y, z + 26], [x, y, z + 12]);
  pen
    .rod("s", [x, y, z - 10], 5, 5)
    .rod("s", [x, y, z - 6], 7, 16)
    .rod("s", [x, y, z + 10], 5, 5);
  pen.rod("r", [x, y - 9, z + 2], 3.5, 4, "y");
  if (isOpen) pen.box("k", [x - 3, y - 13, z - 10], 6, 4, 24);
  else pen.box("k", [x - 12, y - 13, z - 1], 24, 4, 6);
}

/** The cover of the back, laid on the floor: four screw holes. */
export function smallCover(pen: Pen, [x, y, z]: Place): void {
  pen.box("s", [x, y, z], 40, 24, 2);
  for (const [dx, dy] of [
    [4, 4],
    [36, 4],
    [4, 20],
    [36, 20],
  ] as const)
    pen.disc("r2", [x + dx, y + dy, z + 2], 1.4);
}

/** The fan that blows the cold in, on the left wall. */
export function fan(pen: Pen, [x, y, z]: Place): void {
  pen.rod("k", [x, y, z], 12, 2, "x", "k2").disc("r2", [x + 2, y, z], 9, "x");
  for (const blade of [0, 1, 2]) {
    const on = (angle: number): Place => [x + 2, y + 8 * Math.cos(angle), z + 8 * Math.sin(angle)];
    const start = (blade * 2 * Math.PI) / 3 + 0.4;
    pen.poly("k1", [x + 2, y, z], on(start), on(start + 0.8));
  }
}

/** A clear bin of loose cubes, its rim and grip what is touched. */
export function bin(pen: Pen, [x, y, z]: Place): void {
  binBack(pen, [x, y, z], 38, 18, 26);
  for (const [dx, dy, dz] of [
    [4, 8, 0],
    [16, 8, 0],
    [26, 8, 1],
    [10, 5, 10],
    [22, 4, 11],
    [4, 1, 1],
    [15, 1, 1],
    [26, 1, 0],
  ] as const)
    cube(pen, [x + dx, y + dy, z + dz], 9);
  binFront(pen, [x, y, z], 38, 18, 26);
  pen.front("k1", [x, y, z + 22], 38, 4).side("k2", [x + 38, y, z + 22], 18, 4);
  pen.front("k2", [x + 12, y - 0.1, z + 6], 14, 5);
}

/** The same machine at the same place with its doors shut: when it opens, nothing else moves. */
export function shut(pen: Pen, [w, d, h]: Place): void {
  pen.top("f1", [-22, -56, 0], w + 86, d + 68).top("f2", [-6, -14, 0], w + 16, d + 16);
  pen.box("b", [0, 0, 4], w, d, h - 4);
  pen.front("r3", [0, 0, 0], w, 5).side("r3", [w, 0, 0], d, 5);
  pen.box("b", [2, -4, 5], w - 2, 4, 31);
  for (const z of [11, 17, 23, 29]) pen.front("s2", [8, -4, z], w - 12, 2);
  pen.box("b", [1, -9, 38], 64, 9, h - 38).box("b", [68, -9, 38], w - 68, 9, h - 38);
  pen.box("r", [57, -13, 66], 4, 4, 52).box("r", [72, -13, 66], 4, 4, 52);
  pen.front("r2", [82, -9, 126], 28, 18).front("s2", [85, -9, 135], 22, 6);
  for (const i of [0, 1, 2]) pen.disc("s1", [89 + i * 7, -9, 130.5], 1.9, "y");
}
