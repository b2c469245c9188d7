import { draw, type Pen } from "./pen.ts";
import { plug, smallTap, socket } from "./props.ts";

/** The back of a machine: its cover low down, its tube and its lead. */
function back(pen: Pen, cover: string): void {
  pen.box("b", [0, 0, 0], 66, 46, 100);
  for (let i = 0; i < 6; i++) pen.front("s2", [8, 0, 44 + i * 9], 50, 2);
  if (cover) pen.box(cover, [5, -2, 4], 56, 2, 30);
  else pen.front("r3", [5, 0, 4], 56, 30);
}

/** What has to be made safe first, what is behind the machine, and how it stands. */
export const gates = {
  "gate-water": () => [
    ...draw([28, 22, 178, 128], (pen) => {
      smallTap(pen, [0, 0, 0], "closed");
      pen.turn(pen.at([0, 0, 22]), [37 * pen.scale, 21 * pen.scale], 8, 100);
      pen.name("tap-closed", [0, -26, 19], [84, 152]);
    }),
    ...draw([206, 46, 300, 140], (pen) => {
      pen.floor([-20, -20, 0], 40, 40, 14);
      pen
        .rod("s", [0, 0, 0], 22, 38, "z", "s1")
        .disc("c3", [0, 0, 38], 19)
        .rod("s", [0, 0, 37], 22, 1, "z", "t3");
      pen.box("p", [24, -26, 0], 26, 24, 9);
      pen.name("bucket", [-6, -20, 20], [222, 30]);
    }),
  ],

  "plug-out": () =>
    draw([98, 22, 226, 136], (pen) => {
      pen.around(() => pen.front("f1", [-90, 26, -24], 260, 150).top("f2", [-120, -120, -24], 300, 146));
      socket(pen, [12, 24, 8]);
      plug(pen, [16, -26, 4]);
      pen.arrow(pen.at([48, 18, 0]), pen.at([48, -14, 0]));
      pen.name("socket", [34, 24, 30], [240, 30]).name("plug", [22, -26, 16], [76, 56]);
    }),

  "plug-in": () =>
    draw([106, 26, 222, 132], (pen) => {
      pen.around(() => pen.front("f1", [-90, 26, -24], 260, 150).top("f2", [-120, -120, -24], 300, 146));
      socket(pen, [12, 24, 8]);
      plug(pen, [16, 2, 12]);
      pen.arrow(pen.at([46, -8, 14]), pen.at([46, 20, 14]));
      pen.name("socket", [34, 24, 32], [240, 30]).name("plug", [22, 2, 24], [76, 56]);
    }),

  "pulled-out": () =>
    draw([84, 6, 240, 162], (pen) => {
      pen.floor([0, 0, 0], 54, 46, 26);
      pen.around(() => pen.front("f1", [-20, 96, 0], 110, 80));
      socket(pen, [60, 94, 12]);
      pen
        .box("b", [0, 0, 0], 54, 46, 92)
        .front("b3", [0, 0, 58], 54, 1.2)
        .front("r2", [5, 0, 66], 2, 16)
        .front("r2", [5, 0, 36], 2, 16)
        .front("r3", [0, 0, 0], 54, 4);
      plug(pen, [66, 62, 0]);
      pen.arrow(pen.at([76, 30, 30]), pen.at([76, -8, 30]));
      pen.name("plug", [80, 62, 10], [246, 132]).name("shut-doors", [30, 0, 70], [78, 44]);
    }),

  "back-panel": () =>
    draw([84, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 66, 46, 22);
      back(pen, "k");
      for (const [x, z] of [
        [9, 8],
        [57, 8],
        [9, 30],
        [57, 30],
      ] as const)
        pen.disc("k3", [x, -2.1, z], 1.6, "y");
      pen.wire("le", [50, 0, 38], [56, -14, 20], [60, -20, 0], [84, -26, 0]);
      pen
        .name("cover", [30, -2, 20], [74, 128])
        .name("lead", [74, -23, 0], [240, 140])
        .name("cooling-pipes", [50, 0, 72], [228, 40]);
    }),

  "inlet-valve": () =>
    draw([76, 6, 236, 162], (pen) => {
      pen.box("b", [0, 20, 0], 92, 14, 84).front("r3", [8, 20, 6], 76, 66);
      pen.pipe("water", [30, 14, 58], [30, 14, 92]);
      pen.box("s", [16, 2, 26], 30, 18, 30).box("r", [20, 0, 56], 9, 16, 10).box("r", [34, 0, 56], 9, 16, 10);
      pen
        .rod("k", [30, -8, 40], 9, 10, "y")
        .disc("k3", [30, -8, 40], 6, "y")
        .disc("k2", [30, -8, 40], 4, "y");
      pen.pipe("empty", [30, -34, 40], [18, -52, 34], [0, -60, 20]);
      pen.rod("s", [30, -34, 40], 7, 7, "y");
      pen
        .name("inlet-valve", [40, 2, 46], [242, 60])
        .name("sieve", [30, -8, 40], [70, 44])
        .name("water-tube", [10, -56, 28], [76, 150]);
    }),

  "supply-line": () =>
    draw([60, 10, 250, 158], (pen) => {
      pen.floor([0, 0, 0], 110, 40, 26);
      pen.box("b", [-14, 40, 0], 50, 34, 56);
      for (let i = 0; i < 4; i++) pen.front("s2", [-6, 40, 26 + i * 7], 34, 2);
      pen.rod("s", [26, 40, 12], 5, 4, "y");
      pen.pipe("empty", [26, 40, 12], [30, 22, 10], [36, 8, 2], [58, -8, 0]);
      pen.pipe("empty", [72, -8, 0], [100, -4, 0], [118, 14, 0], [126, 40, 0]);
      pen.poly(
        "k2",
        [54, -10, 3],
        [58, -4, 4],
        [66, -6, 12],
        [74, -12, 4],
        [76, -6, 3],
        [72, -12, -3],
        [66, -14, 4],
        [60, -14, -3],
      );
      pen.poly("k3", [66, -6, 12], [74, -12, 4], [72, -12, -3], [66, -14, 4]);
      pen.name("kink", [65, -9, 6], [96, 150]).name("water-tube", [112, 8, 0], [246, 136]);
    }),

  "tap-joint": () =>
    draw([60, 16, 250, 152], (pen) => {
      pen.pipe("water", [-60, 0, 0], [-30, 0, 0]).pipe("water", [34, 0, 0], [62, 0, 0]);
      pen.rod("s", [-30, 0, 0], 11, 44, "x").rod("r", [-6, 0, 10], 6, 8);
      pen.box("s", [-11, -24, 18], 10, 30, 4);
      pen.rod("k", [14, 0, 0], 13, 18, "x").rod("s", [32, 0, 0], 7, 6, "x");
      pen.sketch("w2", [22, 0, -22], "M0 -4q5 8 5 10q0 5 -5 5t-5 -5q0 -2 5 -10z");
      pen.turn(pen.at([24, 0, 0]), [26 * pen.scale, 26 * pen.scale], -120, -20);
      pen.name("nut", [22, -10, 8], [110, 146]).name("drip", [22, 0, -24], [232, 140]);
    }),

  "house-tap": () =>
    draw([80, 8, 236, 160], (pen) => {
      pen.floor([0, -20, 0], 90, 50, 12);
      pen.rod("s", [20, 20, 0], 7, 62).wire("ws", [20, 20, 62]).rod("k", [20, 20, 62], 8, 8);
      pen.box("s", [15, -18, 54], 10, 40, 7).pipe("water", [20, -14, 52], [20, -14, 24]);
      pen.rod("b", [20, -16, 0], 22, 28, "z", "b2").disc("w1", [20, -16, 24], 19);
      pen
        .rod("k", [84, -6, 20], 3, 6)
        .rod("k", [84, -6, 20], 17, 6, "y", "k2")
        .disc("b1", [84, -6, 20], 13, "y")
        .poly("k3", [83, -6, 20], [85, -6, 20], [84, -6, 31]);
      pen
        .name("cold-tap", [24, 12, 66], [240, 36])
        .name("bucket", [6, -30, 14], [70, 138])
        .name("stopwatch", [96, -6, 24], [250, 96]);
    }),

  "tap-water": () =>
    draw([84, 8, 232, 160], (pen) => {
      pen.floor([0, -24, 0], 60, 50, 18);
      pen.rod("s", [20, 20, 0], 7, 70).rod("s", [20, 20, 70], 8, 8).box("s", [15, -18, 62], 10, 40, 7);
      pen.pipe("water", [20, -14, 60], [20, -14, 30]);
      pen
        .rod("t", [20, -14, 0], 15, 42, "z", "t3")
        .rod("q", [20, -14, 1], 13.5, 24)
        .disc("k2", [20, -14, 25], 13.5)
        .disc("q1", [20, -14, 25], 11.5);
      pen.name("cold-tap", [24, 12, 74], [240, 36]).name("glass", [10, -22, 14], [76, 130]);
    }),

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
};
