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
