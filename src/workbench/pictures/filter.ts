import { draw } from "./pen.ts";
import { cartridge, cavity } from "./props.ts";

/** The water filter: where it is, how it sits, and what is left on it. */
export const filter = {
  "filter-seated": () =>
    draw([88, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 78, 56, 66);
      pen.top("t1", [0, 0, 12], 78, 56).front("b1", [0, 0, 10.5], 78, 1.5).side("b2", [78, 0, 10.5], 56, 1.5);
      pen.box("b", [6, 22, 30], 42, 34, 33);
      cartridge(pen, [48, 39, 46], 13, 6);
      pen.turn(pen.at([68, 39, 46]), [17 * pen.scale, 27 * pen.scale], -70, 105);
      pen.name("filter-cap", [62, 30, 38], [238, 126]).name("housing", [14, 22, 50], [78, 36]);
    }),

  "filter-places": () => [
    ...draw([14, 8, 146, 160], (pen) => {
      cavity(pen, [0, 0, 0], 62, 46, 62);
      pen.top("t1", [0, 0, 12], 62, 46).front("b1", [0, 0, 10.5], 62, 1.5).side("b2", [62, 0, 10.5], 46, 1.5);
      pen.box("b", [14, 20, 34], 30, 26, 24);
      cartridge(pen, [44, 33, 46], 9, 4);
      pen.name("inside", [58, 28, 40], [60, 154]);
    }),
    ...draw([178, 10, 306, 132], (pen) => {
      pen.floor([0, 0, 0], 66, 50, 20);
      pen.box("b", [0, 0, 14], 66, 50, 56).box("r", [0, 0, 0], 66, 50, 14);
      for (const i of [0, 1, 2, 3, 4, 5]) pen.front("s3", [4 + i * 5, 0, 3], 2, 8);
      pen
        .disc("r3", [52, 0, 7], 6, "y")
        .rod("b", [52, -16, 7], 4.6, 16, "y")
        .rod("k", [52, -26, 7], 6, 10, "y");
      pen.name("behind-grille", [50, -26, 2], [206, 144]);
    }),
  ],

  "filter-inline": () =>
    draw([20, 20, 300, 148], (pen) => {
      pen.pipe("water", [-70, 0, 0], [-34, 0, 0]).pipe("water", [42, 0, 0], [76, 0, 0]);
      pen.rod("s", [-36, 0, 0], 7, 8, "x").rod("b", [-30, 0, 0], 19, 64, "x").rod("s", [34, 0, 0], 7, 8, "x");
      const arrow = [
        [-18, 4],
        [4, 4],
        [4, 9],
        [18, 0],
        [4, -9],
        [4, -4],
        [-18, -4],
      ] as const;
      pen.poly("k2", ...arrow.map(([x, z]) => [x, -13, 13 + z] as [number, number, number]));
      pen.name("arrow", [-12, -13, 13], [82, 134]).name("to-fridge", [66, 0, -3], [204, 152]);
    }),

  "filter-cap": () =>
    draw([70, 16, 250, 152], (pen) => {
      pen.floor([-24, -18, -17], 120, 36, 14);
      pen.rod("b", [-26, 0, 0], 17, 58, "x").rod("s", [32, 0, 0], 9, 12, "x").disc("r2", [44, 0, 0], 5, "x");
      pen.rod("k", [62, 0, 0], 12, 14, "x");
      pen.arrow(pen.at([84, 0, 0]), pen.at([102, 0, 0]));
      pen.name("filter", [-6, -12, 10], [66, 44]).name("left-cap", [70, -6, -8], [200, 150]);
    }),

  "filter-date": () =>
    draw([80, 12, 240, 156], (pen) => {
      pen.floor([0, 0, 0], 100, 40, 18);
      pen.rod("b", [24, 20, 0], 17, 54).rod("s", [24, 20, 54], 8, 8);
      pen
        .poly("k2", [10, 10, 14], [20, 2, 14], [32, 2, 14], [32, 2, 38], [20, 2, 38], [10, 10, 38])
        .front("k3", [20, 2, 29], 10, 2.4)
        .front("k3", [20, 2, 22], 7, 2.4);
      pen.box("b", [60, 22, 0], 44, 5, 46).front("r2", [60, 22, 38], 44, 8);
      for (const row of [0, 1, 2])
        for (const col of [0, 1, 2, 3])
          pen.front(row === 1 && col === 2 ? "k2" : "b3", [64.5 + col * 9.5, 22, 6 + row * 10], 6, 6);
      pen.name("date", [20, 2, 34], [70, 44]).name("calendar", [100, 22, 40], [250, 60]);
    }),

  "bypass-plug": () =>
    draw([64, 10, 256, 158], (pen) => {
      pen.box("b", [0, 0, 0], 40, 40, 40).rod("r", [39, 20, 20], 13, 1, "x", "r3");
      pen.rod("k", [62, 20, 20], 12, 10, "x").rod("k", [72, 20, 20], 15, 7, "x");
      pen.arrow(pen.at([66, -6, 14]), pen.at([40, -6, 14]));
      pen.rod("b", [44, 96, -28], 12, 40, "x").rod("b", [84, 96, -28], 14, 12, "x");
      pen
        .name("housing", [10, 0, 20], [64, 60])
        .name("bypass-plug", [76, 10, 12], [120, 146])
        .name("filter", [60, 92, -18], [262, 120]);
    }),
};
