import { draw } from "./pen.ts";
import { openDoor, recess } from "./props.ts";

/** How the machine stands, and where water is found. */
export const floor = {
  level: () =>
    draw([84, 6, 236, 162], (pen) => {
      pen
        .top("t1", [-10, -10, 0], 100, 60)
        .front("b1", [-10, -10, -3], 100, 3)
        .side("b2", [90, -10, -3], 60, 3);
      pen
        .rod("t", [40, 20, 0], 26, 56, "z", "t3")
        .rod("q", [40, 20, 1], 24, 28)
        .disc("k2", [40, 20, 29], 24)
        .disc("q1", [40, 20, 29], 21.5);
      pen
        .name("rim", [40, 20, 56], [236, 36])
        .name("water", [30, 0, 22], [76, 110])
        .name("shelf", [80, -6, 0], [240, 140]);
    }),

  "level-feet": () =>
    draw([76, 10, 236, 158], (pen) => {
      pen.floor([0, 0, 0], 90, 46, 14);
      for (const [x, y] of [
        [76, 34],
        [8, 4],
        [74, 4],
      ] as const)
        pen.rod(y === 4 ? "k" : "s", [x, y, 0], 8, 4).rod(y === 4 ? "k" : "s", [x, y, 4], 4, 14);
      pen.box("b", [0, 0, 18], 90, 46, 50).front("r3", [16, 0, 18], 50, 7);
      pen.turn(pen.at([74, 4, 6]), [20 * pen.scale, 10 * pen.scale], -20, 160);
      pen.name("foot", [8, 0, 6], [70, 130]).name("turn-it", [86, 4, 2], [244, 140]);
    }),

  "leak-paper": () =>
    draw([76, 8, 240, 160], (pen) => {
      pen.floor([0, 0, 0], 60, 46, 34);
      pen
        .box("b", [0, 0, 0], 60, 46, 86)
        .front("b3", [0, 0, 56], 60, 1.2)
        .front("r2", [5, 0, 64], 2, 14)
        .front("r3", [0, 0, 0], 60, 4);
      pen.top("p1", [4, -32, 0], 46, 26).top("p1", [66, 6, 0], 26, 34);
      pen.sketch("k2", [78, 22, 0], "M-9 0q0 -5 9 -5t10 5q0 6 -10 6t-9 -6z");
      pen.name("dry-paper", [12, -26, 0], [70, 140]).name("wet-spot", [80, 22, 0], [244, 110]);
    }),

  "leak-places": () =>
    draw([70, 4, 250, 164], (pen) => {
      pen.floor([0, 0, 0], 66, 46, 22);
      pen.pipe("water", [66, 40, 10], [84, 40, 10], [96, 30, 0], [118, 40, 0]);
      pen.box("b", [0, 0, 0], 66, 46, 108);
      recess(pen, [4, 0, 74], 58, 30, 10);
      recess(pen, [4, 0, 12], 58, 58, 12);
      pen.box("s", [24, -1, 88], 26, 4, 8).front("t1", [20, 0, 76], 34, 9).front("k2", [30, -0.1, 80], 5, 5);
      pen.rod("b", [50, 2, 62], 4, 6, "x").front("k2", [46, 0, 60], 12, 6);
      pen.front("w2", [16, 0, 24], 22, 12).front("k2", [16, 0, 24], 22, 3);
      pen.front("r3", [4, 0, 2], 58, 7).front("k2", [10, 0, 3], 44, 3.5);
      openDoor(pen, [0, 0, 12], 44, 58);
      pen.side("r2", [0, -34, 34], 20, 24).side("k2", [0, -30, 36], 12, 4);
      pen.sketch("k2", [96, 26, 0], "M-12 0q0 -6 12 -6q13 0 13 6q0 7 -13 7q-12 0 -12 -7z");
      pen
        .name("ice-maker", [34, 0, 84], [106, 18])
        .name("filter", [56, 0, 63], [248, 44])
        .name("tank", [30, 0, 26], [250, 80]);
      pen
        .name("dispenser", [0, -24, 38], [72, 88])
        .name("drip-pan", [20, 0, 5], [100, 152])
        .name("water-tube", [98, 26, 0], [276, 128]);
    }),
};
