import { draw, type Pen } from "./pen.ts";
import { binBack, binFront, cube, cubes, glass } from "./props.ts";

/** The dispenser's niche, cut out of a door: 66 wide, 78 high. */
export function niche(pen: Pen): void {
  pen
    .box("b", [0, 0, 0], 66, 12, 78)
    .front("r2", [10, 0, 8], 46, 62)
    .poly("r3", [10, 0, 8], [19, 0, 17], [19, 0, 70], [10, 0, 70]);
  pen.front("r1", [10, 0, 8], 46, 3);
}

/** Three keys under a display. */
function panel(pen: Pen): void {
  pen.box("b", [0, 0, 0], 96, 10, 72).front("r2", [8, 0, 10], 80, 52).front("r3", [13, 0, 32], 70, 25);
}

/** What is at the door's outside: keys, display, lever, chute. */
export const dispenser = {
  chute: () =>
    draw([84, 4, 240, 164], (pen) => {
      // Cut through the door: ice comes down from the bin to the flap, and falls into the cup.
      pen.box("b", [0, 0, 0], 108, 16, 92).front("b4", [0, 0, 0], 108, 92).front("c2", [70, 0, 0], 38, 92);
      pen.front("s2", [66, 0, 0], 4, 48).front("s2", [66, 0, 82], 4, 10);
      pen.front("r3", [0, 0, 4], 46, 46).front("r1", [0, 0, 4], 46, 4);
      pen.poly("r2", [12, 0, 50], [38, 0, 50], [70, 0, 56], [70, 0, 84], [56, 0, 84], [12, 0, 66]);
      for (const [x, z] of [
        [72, 56],
        [88, 56],
        [76, 71],
        [92, 71],
        [54, 58],
        [36, 54],
      ] as const)
        pen.front("i2", [x, -0.1, z], 14, 14).front("i1", [x, -0.1, z + 10], 14, 4);
      pen
        .front("k2", [8, -0.2, 47], 30, 6)
        .disc("k3", [37, -0.2, 50], 5, "y")
        .disc("k1", [37, -0.2, 50], 2.2, "y");
      pen.poly("s1", [38, -0.2, 44], [42, -0.2, 44], [37, -0.2, 14], [33, -0.2, 14]);
      pen.poly("t1", [5, -0.2, 8], [24, -0.2, 8], [28, -0.2, 32], [1, -0.2, 32]);
      pen
        .name("chute", [50, 0, 76], [78, 22])
        .name("flap", [14, 0, 50], [72, 64])
        .name("lever", [36, 0, 20], [76, 146]);
    }),

  lever: () =>
    draw([92, 8, 228, 160], (pen) => {
      niche(pen);
      pen.box("s", [24, -9, 60], 20, 9, 10);
      pen.box("k", [28, -6, 24], 12, 4, 34);
      pen.arrow(pen.at([34, -40, 36]), pen.at([34, -10, 36]));
      pen.name("lever", [39, -6, 50], [240, 60]).name("spout", [26, -9, 66], [84, 40]);
    }),

  dispenser: () =>
    draw([92, 8, 228, 160], (pen) => {
      niche(pen);
      pen.box("s", [24, -9, 60], 20, 9, 10).box("k", [29, -4, 26], 10, 3, 32);
      pen.around(() => pen.rod("t", [34, -16, 10], 13, 26, "z", "t2"));
      cube(pen, [30, -20, 12], 9);
      cube(pen, [29, -16, 42], 9);
      pen.rod("t", [34, -16, 10], 13, 26, "z", "t3");
      pen
        .name("spout", [26, -9, 66], [84, 36])
        .name("lever", [38, -4, 48], [238, 70])
        .name("cup", [26, -22, 18], [84, 130]);
    }),

  "dispenser-water": () =>
    draw([92, 8, 228, 160], (pen) => {
      niche(pen);
      pen.box("k", [24, -9, 58], 20, 9, 11).pipe("water", [34, -7, 58], [34, -7, 20]);
      glass(pen, [34, -8, 8], 12, 28, 12);
      pen.name("spout", [26, -9, 64], [84, 36]).name("glass", [26, -14, 18], [84, 130]);
    }),

  flush: () =>
    draw([84, 8, 228, 160], (pen) => {
      pen.floor([0, -50, -40], 70, 60, 10);
      niche(pen);
      pen.box("s", [24, -9, 58], 20, 9, 11).pipe("water", [34, -7, 58], [34, -7, 18]);
      glass(pen, [34, -8, 8], 11, 24, 12);
      pen.rod("k", [40, -46, -40], 26, 36, "z", "k1").disc("w1", [40, -46, -8], 23);
      pen.name("glass", [26, -12, 18], [80, 56]).name("bucket", [18, -52, -22], [72, 140]);
    }),

  "dispenser-locked": () => [
    ...draw([14, 20, 130, 140], (pen) => {
      panel(pen);
      lock(pen, 0);
      pen.name("lock-on", [40, 0, 22], [60, 150]);
    }),
    ...draw([160, 26, 306, 140], (pen) => {
      pen.box("b", [-6, 44, 0], 80, 6, 54).box("c", [-6, 2, -6], 80, 42, 6);
      binBack(pen, [0, -50, 0], 64, 42, 28);
      cubes(pen, [4, -47, 1], [[4, 4, 4]], 14, 11);
      binFront(pen, [0, -50, 0], 64, 42, 28);
      pen.box("k", [0, -52, 20], 64, 2, 8);
      pen.arrow(pen.at([78, -14, 8]), pen.at([78, -46, 8]));
      pen.name("bin-out", [50, -52, 22], [262, 150]);
    }),
  ],

  "control-lock": () =>
    draw([84, 12, 236, 156], (pen) => {
      panel(pen);
      pen.disc("r1", [24, 0, 21], 7, "y").disc("r1", [72, 0, 21], 7, "y");
      lock(pen, 0);
      pen.front("l1", [20, 0, 42], 22, 3).front("l1", [20, 0, 48], 14, 3);
      pen.name("lock-key", [54, 0, 20], [246, 124]).name("display", [20, 0, 50], [76, 36]);
    }),

  settings: () =>
    draw([84, 12, 236, 156], (pen) => {
      panel(pen);
      for (const i of [0, 1, 2]) pen.front("l1", [20 + i * 9, 0, 38], 5, 13);
      pen.front("k2", [56, 0, 37], 20, 14).poly("k1", [60, -0.1, 41], [66, -0.1, 48], [72, -0.1, 41]);
      pen.disc("r1", [24, 0, 21], 7, "y").disc("k2", [48, 0, 21], 7, "y").disc("r1", [72, 0, 21], 7, "y");
      pen.front("k1", [44, -0.1, 20.2], 8, 1.6);
      pen
        .name("set-to", [24, 0, 46], [76, 36])
        .name("mode-sign", [70, 0, 46], [246, 62])
        .name("mode-key", [50, 0, 19], [246, 128]);
    }),

  "ice-settings": () =>
    draw([84, 12, 236, 156], (pen) => {
      panel(pen);
      for (const [i, size] of [6, 9, 12].entries())
        pen.front(i === 1 ? "k2" : "r1", [20 + i * 20, 0, 38], size, size);
      pen.disc("r1", [24, 0, 21], 7, "y").disc("k2", [48, 0, 21], 7, "y").disc("r1", [72, 0, 21], 7, "y");
      pen.name("ice-size", [45, 0, 44], [76, 36]).name("ice-key", [50, 0, 19], [246, 128]);
    }),
};

/** The key with the padlock, in the middle of the panel. */
function lock(pen: Pen, y: number): void {
  pen.disc("k2", [48, y, 21], 9.5, "y");
  pen.poly("k3", [44, y, 16], [52, y, 16], [52, y, 22], [44, y, 22]);
  pen.poly(
    "k3",
    [45, y, 22],
    [46.6, y, 22],
    [46.6, y, 26],
    [49.4, y, 26],
    [49.4, y, 22],
    [51, y, 22],
    [51, y, 27.6],
    [45, y, 27.6],
  );
}
