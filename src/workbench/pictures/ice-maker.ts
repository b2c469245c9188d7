import { draw, type Pen } from "./pen.ts";
import { binBack, binFront, cavity, cube, cubes, hand, iceMaker } from "./props.ts";

/** A freezer's inside with the ice maker on its back wall. */
function freezer(pen: Pen, tray?: string): void {
  cavity(pen, [0, 0, 0], 104, 46, 88);
  iceMaker(pen, [8, 18, 54], tray);
}

const bin = [8, 2, 0] as const;

function fullBin(pen: Pen, rows: number[][]): void {
  binBack(pen, [...bin], 84, 40, 26);
  cubes(pen, [13, 6, 1], rows, 12, 9);
  binFront(pen, [...bin], 84, 40, 26);
}

/** The ice maker and what is filled, frozen and tipped out there. */
export const iceMakerPictures = {
  "ice-maker-switch": () =>
    draw([84, 6, 232, 162], (pen) => {
      iceMaker(pen, [0, 0, 0]);
      pen.front("r2", [3, -1, 2], 10, 16).front("k2", [4, -1, 10], 8, 7).front("k1", [4, -1, 3], 8, 7);
      pen.front("k3", [7.4, -1, 11], 1.2, 5);
      pen.sketch("wk", [16, 0, 6], "M0 0l14 30 46 27 0-8");
      pen.name("switch", [6, -1, 14], [76, 44]).name("arm", [40, -14, -12], [84, 146]).name("tray", [70, 10, 12], [236, 60]);
    }),

  "ice-under-maker": () =>
    draw([88, 6, 236, 162], (pen) => {
      freezer(pen, "c3");
      for (const [x, h] of [[30, 16], [46, 11], [60, 14]] as const) pen.poly("k2", [x, 20, 54], [x + 10, 20, 54], [x + 5, 20, 54 - h]);
      cube(pen, [42, 24, 66], 10, "k");
      fullBin(pen, [[4, 5, 3]]);
      pen.name("stuck-ice", [52, 24, 76], [242, 34]).name("ice-below", [35, 20, 46], [80, 70]).name("bin", [20, 2, 10], [80, 140]);
    }),

  "reset-button": () =>
    draw([70, 8, 226, 160], (pen) => {
      iceMaker(pen, [0, 0, 0]);
      pen.rod("k", [8, -4, 2], 3.6, 3, "y", "k1");
      pen.name("test-button", [8, -4, 2], [70, 140]).name("tray", [70, 10, 12], [232, 60]).name("ice-maker", [8, 10, 21], [64, 36]);
    }),

  "test-cycle": () =>
    draw([88, 6, 236, 162], (pen) => {
      cavity(pen, [0, 0, 0], 104, 46, 88);
      pen.box("b", [8, 17, 50], 16, 28, 26);
      pen.poly("s2", [24, 20, 58], [92, 20, 58], [92, 36, 76], [24, 36, 76]);
      for (const i of [0, 1, 2, 3, 4]) pen.poly("s3", [28 + i * 12.6, 23, 61], [37 + i * 12.6, 23, 61], [37 + i * 12.6, 33, 73], [28 + i * 12.6, 33, 73]);
      for (const [x, z] of [[40, 38], [60, 44], [76, 34]] as const) cube(pen, [x, 16, z], 10, "k");
      fullBin(pen, [[4, 5, 3]]);
      pen.turn(pen.at([100, 28, 66]), [10 * pen.scale, 17 * pen.scale], -110, 70);
      pen.name("tray-turns", [80, 28, 68], [242, 28]).name("ice-falls", [42, 16, 44], [82, 62]);
    }),

  "fill-tube": () =>
    draw([84, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 96, 46, 84);
      iceMaker(pen, [4, 14, 26], "c3");
      pen.rod("s", [70, 46, 68], 8, 2, "y").pipe("empty", [70, 46, 68], [70, 32, 68], [70, 30, 60]);
      pen.rod("k", [70, 30, 50], 5.5, 12).disc("i1", [70, 30, 62], 3);
      pen.name("fill-tube", [70, 36, 68], [238, 34]).name("ice-plug", [66, 30, 54], [80, 36]).name("tray", [60, 16, 38], [236, 130]);
    }),

  "fill-drip": () =>
    draw([84, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 96, 46, 84);
      iceMaker(pen, [4, 14, 22], "w1");
      pen.rod("s", [70, 46, 70], 8, 2, "y").pipe("water", [70, 46, 70], [70, 30, 70], [70, 28, 62]);
      for (const z of [54, 44]) pen.sketch("k2", [70, 28, z], "M0 -5q4 6 4 8q0 4-4 4t-4-4q0-2 4-8z");
      pen.name("spout", [70, 36, 70], [238, 34]).name("drops", [70, 28, 52], [82, 36]).name("tray", [60, 16, 34], [236, 130]);
    }),

  packing: () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen, "c3");
      pen.box("k", [44, 15, 50], 7, 32, 18).front("k2", [12, 16, 62], 22, 5).box("k", [30, 8, 0], 34, 30, 10);
      pen.name("tape", [20, 16, 65], [76, 50]).name("lock", [48, 16, 66], [238, 40]).name("foam", [36, 8, 5], [78, 140]);
    }),

  "bin-arm": () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen);
      pen.sketch("wk", [24, 18, 60], "M0 0l6 22 34 20 0-6");
      fullBin(pen, [[5, 5, 4]]);
      pen.rod("k", [84, 46, 34], 5, 2, "y", "k2");
      pen.name("arm", [34, 16, 38], [80, 66]).name("sensor", [84, 46, 34], [240, 44]).name("bin", [20, 2, 10], [80, 140]);
    }),

  "ice-maker-still": () =>
    draw([84, 6, 232, 162], (pen) => {
      freezer(pen, "c3");
      pen.front("r2", [13, 17, 54], 8, 14).front("k2", [14, 17, 55], 6, 6);
      pen.turn(pen.at([94, 30, 60]), [10 * pen.scale, 17 * pen.scale], -110, 70);
      pen.front("k2", [30, 18, 55], 54, 3);
      pen.name("switch-off", [17, 17, 58], [76, 52]).name("moves", [96, 30, 50], [242, 40]).name("hot", [60, 18, 56], [84, 130]);
    }),
};
void hand;
