import { draw, type Pen, type Place } from "./pen.ts";
import { binBack, binFront, cube, cubes } from "./props.ts";

/** A lump of cubes that have frozen into one. */
function lump(pen: Pen, [x, y, z]: Place): void {
  pen
    .box("k", [x, y, z], 52, 30, 9)
    .box("k", [x + 5, y + 4, z + 9], 40, 22, 7)
    .box("k", [x + 14, y + 8, z + 16], 16, 12, 5);
}

/** Ice as it lies in the bin, and the bin. */
export const ice = {
  "ice-bin": () => [
    ...draw([16, 26, 152, 134], (pen) => {
      binBack(pen, [0, 0, 0], 64, 42, 30);
      cubes(
        pen,
        [4, 3, 1],
        [
          [4, 4, 4],
          [4, 3, 2],
        ],
        14,
        11,
      );
      binFront(pen, [0, 0, 0], 64, 42, 30);
      pen.name("loose", [40, 4, 20], [66, 152]);
    }),
    ...draw([170, 26, 306, 134], (pen) => {
      binBack(pen, [0, 0, 0], 64, 42, 30);
      lump(pen, [5, 5, 1]);
      binFront(pen, [0, 0, 0], 64, 42, 30);
      pen.name("lump", [40, 6, 16], [222, 152]);
    }),
  ],

  "bin-seated": () =>
    draw([84, 8, 236, 160], (pen) => {
      pen.box("b", [-6, 44, 0], 88, 6, 66).box("c", [-6, -4, -8], 88, 48, 8);
      binBack(pen, [4, -22, 0], 64, 42, 30);
      cubes(pen, [8, -19, 1], [[4, 4, 4]], 14, 11);
      binFront(pen, [4, -22, 0], 64, 42, 30);
      pen.arrow(pen.at([86, -14, 8]), pen.at([86, 20, 8]));
      pen.box("k", [4, -24, 22], 64, 2, 8);
      pen.name("bin", [14, -22, 10], [76, 140]).name("push-in", [86, 6, 8], [246, 112]);
    }),

  "ice-screw": () =>
    draw([60, 8, 244, 160], (pen) => {
      binBack(pen, [0, 0, 0], 100, 40, 36);
      for (let i = 0; i < 7; i++) pen.rod("k", [6 + i * 13, 20, 18], 14, 3, "x");
      binFront(pen, [0, 0, 0], 100, 40, 36);
      pen.rod("s", [100, 20, 18], 4, 6, "x").rod("k", [106, 20, 18], 13, 4, "x");
      pen
        .poly("k3", [110, 11, 17], [110, 29, 17], [110, 29, 19], [110, 11, 19])
        .poly("k3", [110, 19, 9], [110, 21, 9], [110, 21, 27], [110, 19, 27]);
      pen.turn(pen.at([116, 20, 18]), [14 * pen.scale, 22 * pen.scale], -80, 80);
      pen.name("ice-screw", [34, 20, 30], [92, 22]).name("drive-wheel", [108, 14, 12], [238, 154]);
    }),

  "ice-count": () =>
    draw([70, 14, 250, 154], (pen) => {
      pen.floor([0, 0, 0], 100, 44, 12);
      binBack(pen, [0, 0, 0], 70, 46, 30);
      cubes(
        pen,
        [4, 4, 1],
        [
          [4, 4, 4],
          [3, 3, 2],
        ],
        15,
        12,
      );
      binFront(pen, [0, 0, 0], 70, 46, 30);
      pen.rod("t", [104, 12, 0], 16, 28, "z", "t2");
      for (const [x, y, z] of [
        [100, 14, 6],
        [92, 6, 8],
        [102, 2, 10],
        [97, 8, 20],
      ] as const)
        cube(pen, [x, y, z], 10, "k");
      pen.rod("t", [104, 12, 0], 16, 28, "z", "t3");
      pen.name("bin", [14, 0, 14], [58, 132]).name("one-cup", [112, 4, 22], [256, 70]);
    }),

  "ice-scales": () =>
    draw([84, 10, 232, 158], (pen) => {
      pen.floor([0, 0, 0], 70, 60, 16);
      pen.box("s", [0, 0, 0], 70, 60, 10).front("r3", [22, 0, 2], 26, 6).front("k1", [25, 0, 3.5], 20, 3);
      pen.rod("b", [35, 32, 10], 24, 3).rod("t", [35, 32, 13], 16, 26, "z", "t2");
      for (const [x, y, z] of [
        [34, 34, 14],
        [24, 26, 15],
        [36, 24, 16],
        [28, 30, 27],
      ] as const)
        cube(pen, [x, y, z], 10, "k");
      pen.rod("t", [35, 32, 13], 16, 26, "z", "t3");
      pen.name("cup", [20, 28, 24], [84, 44]).name("scales", [34, 0, 5], [84, 146]);
    }),

  "ice-pieces": () => [
    ...[
      { word: "full-piece", at: 10, scene: (pen: Pen) => cube(pen, [0, 0, 0], 26) },
      {
        word: "small-piece",
        at: 88,
        scene: (pen: Pen) => {
          cube(pen, [8, 8, 0], 14, "k");
        },
      },
      {
        word: "hollow-piece",
        at: 166,
        scene: (pen: Pen) => {
          pen
            .box("k", [0, 0, 0], 26, 26, 26)
            .top("k3", [5, 5, 26], 16, 16)
            .poly("k2", [5, 5, 26], [5, 21, 26], [10, 21, 26], [10, 10, 26], [21, 10, 26], [21, 5, 26]);
        },
      },
      {
        word: "joined-pieces",
        at: 244,
        scene: (pen: Pen) => {
          pen.box("k", [2, 14, 0], 15, 12, 16);
          pen.box("k", [13, 10, 0], 13, 14, 14);
          pen.box("k", [4, 0, 0], 16, 13, 13);
        },
      },
    ].flatMap(({ word, at, scene }) =>
      draw([at, 44, at + 66, 124], (pen) => {
        pen.around(() => pen.poly("f2", [-2, -6, 0], [34, -6, 0], [34, 24, 0], [-2, 24, 0]));
        pen.around(() => scene(pen));
        pen.box("t", [0, 0, 0], 0, 0, 0);
        pen.poly("t3", [0, 0, 0], [26, 0, 0], [26, 26, 0], [26, 26, 26], [0, 26, 26], [0, 0, 26]);
        pen.name(word, [13, 0, 10], [at + 33, 144]);
      }),
    ),
  ],

  "ice-bag": () =>
    draw([80, 10, 236, 144], (pen) => {
      pen.floor([0, 0, 0], 96, 44, 14);
      binBack(pen, [0, 4, 0], 52, 36, 26);
      cubes(pen, [4, 7, 1], [[3, 3]], 14, 11);
      binFront(pen, [0, 4, 0], 52, 36, 26);
      pen.sketch("t2", [92, 12, 0], "M-20 6q-5 -22 2 -36l14 -10h8l14 10q7 14 2 36q-20 10 -40 0z");
      for (const [x, y, z] of [
        [78, 20, 4],
        [76, 10, 3],
        [87, 15, 6],
        [80, 15, 15],
      ] as const)
        cube(pen, [x, y, z], 10, "k");
      pen.sketch("t1", [92, 12, 0], "M-20 6q-5 -22 2 -36l14 -10h8l14 10q7 14 2 36q-20 10 -40 0z");
      pen.sketch("k2", [92, 12, 40], "M-5 -2h10l5 -9h-20z");
      pen.name("bin", [10, 4, 12], [72, 132]).name("bag", [100, 12, 30], [244, 52]);
    }),

  "ice-glass": () =>
    draw([96, 8, 224, 160], (pen) => {
      pen.floor([-24, -24, 0], 48, 48, 18);
      pen.rod("t", [0, 0, 0], 26, 64, "z", "t2");
      pen.rod("q", [0, 0, 2], 24, 34);
      for (const [x, y, z] of [
        [-2, 2, 32],
        [-16, -6, 33],
        [0, -14, 30],
      ] as const)
        cube(pen, [x, y, z], 15);
      pen.rod("t", [0, 0, 0], 26, 64, "z", "t3");
      for (const [x, z] of [
        [4, 12],
        [12, 4],
        [26, 14],
        [18, 20],
        [32, 16],
      ] as const)
        pen.disc("k2", [x, -24, z], 2.2, "y");
      pen.name("melting-ice", [-10, -10, 46], [92, 44]).name("bits", [26, -24, 14], [232, 134]);
    }),
};
