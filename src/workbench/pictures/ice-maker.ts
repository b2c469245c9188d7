import { draw, type Pen } from "./pen.ts";
import { binBack, binFront, cavity, cube, cubes, iceMaker } from "./props.ts";

/** A freezer's inside with the ice maker on its back wall. */
function freezer(pen: Pen, tray?: string): void {
  cavity(pen, [0, 0, 0], 100, 46, 78);
  iceMaker(pen, [6, 18, 48], tray);
}

const bin = [6, 2, 0] as const;

function fullBin(pen: Pen, rows: number[][]): void {
  binBack(pen, [...bin], 84, 38, 22);
  cubes(pen, [11, 5, 1], rows, 13, 10);
  binFront(pen, [...bin], 84, 38, 22);
}

/** The ice maker and what is filled, frozen and tipped out there. */
export const iceMakerPictures = {
  "ice-maker-switch": () =>
    draw([84, 6, 232, 162], (pen) => {
      iceMaker(pen, [0, 0, 0]);
      pen.front("r2", [3, -1, 2], 10, 16).front("k2", [4, -1, 10], 8, 7).front("k1", [4, -1, 3], 8, 7);
      pen.front("k3", [7.4, -1, 11], 1.2, 5);
      pen.wire("wk", [16, -2, 8], [24, -14, -12], [84, -14, -12], [84, -4, -6]);
      pen
        .name("switch", [6, -1, 14], [70, 36])
        .name("arm", [50, -14, -12], [108, 150])
        .name("tray", [70, 10, 12], [236, 60]);
    }),

  "ice-under-maker": () =>
    draw([88, 6, 236, 162], (pen) => {
      freezer(pen, "c3");
      for (const [x, h] of [
        [28, 18],
        [46, 13],
        [64, 17],
      ] as const)
        pen
          .poly("k2", [x, 18, 48], [x + 7, 18, 48], [x + 6, 18, 48 - h])
          .poly("k3", [x + 7, 18, 48], [x + 13, 18, 48], [x + 6, 18, 48 - h]);
      cube(pen, [46, 22, 60], 13, "k");
      fullBin(pen, [[4, 4, 2]]);
      pen
        .name("stuck-ice", [56, 22, 73], [242, 30])
        .name("ice-below", [33, 18, 42], [80, 66])
        .name("bin", [20, 2, 10], [80, 140]);
    }),

  "reset-button": () =>
    draw([70, 8, 226, 160], (pen) => {
      iceMaker(pen, [0, 0, 0]);
      pen.rod("k", [8, -4, 2], 3.6, 3, "y", "k1");
      pen
        .name("test-button", [8, -4, 2], [70, 140])
        .name("tray", [70, 10, 12], [232, 60])
        .name("ice-maker", [8, 10, 21], [64, 36]);
    }),

  "test-cycle": () =>
    draw([88, 6, 236, 162], (pen) => {
      cavity(pen, [0, 0, 0], 100, 46, 78);
      pen.box("b", [6, 17, 44], 16, 28, 26);
      pen.poly("s2", [22, 20, 50], [90, 20, 50], [90, 36, 70], [22, 36, 70]);
      for (const i of [0, 1, 2, 3, 4])
        pen.poly(
          "s3",
          [26 + i * 12.6, 22, 53],
          [35 + i * 12.6, 22, 53],
          [35 + i * 12.6, 34, 67],
          [26 + i * 12.6, 34, 67],
        );
      for (const [x, z] of [
        [34, 30],
        [54, 36],
        [72, 27],
      ] as const)
        cube(pen, [x, 14, z], 11, "k");
      fullBin(pen, [[4, 4, 2]]);
      pen.turn(pen.at([97, 28, 60]), [10 * pen.scale, 18 * pen.scale], -110, 70);
      pen.name("tray-turns", [78, 28, 61], [242, 28]).name("ice-falls", [36, 14, 36], [80, 60]);
    }),

  "fill-tube": () =>
    draw([84, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 96, 46, 84);
      iceMaker(pen, [4, 14, 26], "c3");
      pen.rod("s", [70, 46, 68], 8, 2, "y").pipe("empty", [70, 46, 68], [70, 32, 68], [70, 30, 60]);
      pen.rod("k", [70, 30, 50], 5.5, 12).disc("i1", [70, 30, 62], 3);
      pen
        .name("fill-tube", [70, 36, 68], [238, 34])
        .name("ice-plug", [66, 30, 54], [80, 36])
        .name("tray", [60, 16, 38], [236, 130]);
    }),

  "fill-drip": () =>
    draw([84, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 96, 46, 84);
      iceMaker(pen, [4, 14, 22], "w1");
      pen.rod("s", [70, 46, 70], 8, 2, "y").pipe("water", [70, 46, 70], [70, 30, 70], [70, 28, 62]);
      for (const z of [54, 44]) pen.sketch("k2", [70, 28, z], "M0 -5q4 6 4 8q0 4-4 4t-4-4q0-2 4-8z");
      pen
        .name("spout", [70, 36, 70], [238, 34])
        .name("drops", [70, 28, 52], [82, 36])
        .name("tray", [60, 16, 34], [236, 130]);
    }),

  packing: () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen, "c3");
      pen.box("k", [42, 15, 44], 8, 32, 18).front("k2", [10, 17, 56], 26, 6).box("k", [28, 6, 0], 40, 30, 12);
      pen
        .name("tape", [18, 17, 59], [76, 46])
        .name("lock", [48, 16, 62], [240, 36])
        .name("foam", [36, 8, 5], [78, 140]);
    }),

  "bin-arm": () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen);
      pen.rod("k", [86, 44, 36], 5, 2, "y", "k2");
      binBack(pen, [...bin], 84, 38, 22);
      cubes(pen, [11, 5, 1], [[4, 4, 2]], 13, 10);
      pen.wire("wk", [22, 16, 56], [30, 10, 28], [74, 10, 28], [76, 14, 36]);
      binFront(pen, [...bin], 84, 38, 22);
      pen
        .name("arm", [38, 10, 28], [80, 62])
        .name("sensor", [88, 44, 36], [242, 44])
        .name("bin", [20, 2, 10], [80, 140]);
    }),

  "ice-maker-still": () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen, "c3");
      pen.front("r2", [8, 17, 46], 11, 18).front("k2", [9, 17, 47], 9, 8);
      pen.turn(pen.at([94, 30, 54]), [12 * pen.scale, 20 * pen.scale], -110, 70);
      pen.front("k2", [26, 18, 48], 62, 4);
      pen
        .name("switch-off", [12, 17, 51], [70, 56])
        .name("moves", [101, 30, 50], [246, 52])
        .name("hot", [60, 18, 50], [84, 134]);
    }),
};
