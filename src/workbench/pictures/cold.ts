import { draw } from "./pen.ts";
import { cavity, glass, iceMaker, openDoor, packet, recess, shelf, stopwatch, thermometer } from "./props.ts";

/** The cold, and what holds it up. */
export const cold = {
  "freezer-temperature": () =>
    draw([80, 6, 222, 162], (pen) => {
      cavity(pen, [0, 0, 0], 92, 50, 64);
      packet(pen, [10, 10, 0], 22, 32, 34);
      thermometer(pen, [46, 22, 0], 26);
      packet(pen, [60, 10, 0], 22, 32, 34);
      pen.name("thermometer", [50, 20, 36], [226, 30]).name("frozen-pack", [14, 10, 16], [78, 130]);
    }),

  "fridge-temperature": () =>
    draw([80, 6, 222, 162], (pen) => {
      cavity(pen, [0, 0, 0], 92, 50, 70);
      pen.top("t1", [0, 0, 8], 92, 50).front("b1", [0, 0, 6.5], 92, 1.5);
      pen.rod("t", [36, 24, 8], 14, 30, "z", "t3").rod("q", [36, 24, 9], 12.5, 20);
      thermometer(pen, [36, 24, 14], 26);
      stopwatch(pen, [74, 14, 21], 12);
      pen
        .name("thermometer", [44, 24, 50], [226, 28])
        .name("glass", [26, 16, 18], [78, 128])
        .name("hours", [82, 12, 22], [244, 116]);
    }),

  "ice-place": () =>
    draw([80, 6, 222, 162], (pen) => {
      cavity(pen, [0, 0, 0], 104, 46, 84);
      iceMaker(pen, [8, 18, 52], "w1");
      packet(pen, [18, 8, 0], 18, 26, 22);
      thermometer(pen, [52, 18, 0], 20);
      packet(pen, [66, 8, 0], 18, 26, 22);
      pen.name("ice-maker", [12, 17, 66], [78, 40]).name("thermometer", [56, 16, 30], [226, 44]);
    }),

  "too-full": () =>
    draw([84, 6, 236, 162], (pen) => {
      cavity(pen, [0, 0, 0], 92, 50, 76);
      for (const i of [0, 1, 2]) pen.front("k2", [26 + i * 14, 49.9, 58], 9, 4);
      packet(pen, [6, 24, 0], 26, 22, 30);
      packet(pen, [36, 24, 0], 30, 22, 22);
      pen.box("p", [40, 26, 22], 20, 18, 18);
      packet(pen, [10, 2, 0], 24, 18, 20);
      packet(pen, [58, 2, 0], 26, 18, 26);
      pen.arrow(pen.at([46, 44, 54]), pen.at([64, 8, 44]));
      pen.name("vents", [58, 50, 60], [242, 34]).name("room", [34, 22, 26], [78, 60]);
    }),

  condenser: () =>
    draw([76, 10, 236, 158], (pen) => {
      pen.floor([0, 0, 0], 92, 50, 14);
      pen.box("b", [0, 0, 18], 92, 50, 46).box("r", [0, 4, 0], 92, 46, 18);
      for (let i = 0; i < 15; i++) pen.front("k2", [4 + i * 5.8, 4, 4], 3, 10);
      pen
        .box("k", [20, -24, 2], 30, 7, 5)
        .poly("s3", [22, -20, 7], [48, -20, 7], [48, -12, 11], [22, -12, 11]);
      pen.name("dust-grille", [80, 4, 10], [236, 132]).name("soft-brush", [24, -24, 4], [70, 142]);
    }),

  drain: () =>
    draw([84, 6, 232, 162], (pen) => {
      cavity(pen, [0, 0, 0], 76, 44, 56);
      pen.poly("b2", [4, 43, 26], [38, 43, 16], [72, 43, 26], [72, 43, 22], [38, 43, 11], [4, 43, 22]);
      pen.poly("b1", [4, 43, 26], [38, 43, 16], [72, 43, 26], [72, 36, 26], [38, 36, 16], [4, 36, 26]);
      pen.rod("k", [38, 38, 9], 6, 6).disc("r3", [38, 38, 15], 3.6);
      pen
        .rod("p", [16, 14, 2], 1.2, 26, "x")
        .rod("p", [10, 14, 2], 3.2, 7, "x")
        .rod("p", [41, 14, 2], 3.2, 7, "x");
      pen
        .name("drain-hole", [42, 36, 12], [240, 130])
        .name("gutter", [62, 40, 24], [240, 40])
        .name("cotton-bud", [14, 14, 3], [70, 140]);
    }),

  sounds: () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      pen.box("b", [0, 0, 0], 62, 46, 104);
      recess(pen, [4, 0, 72], 54, 28, 10);
      pen.disc("k2", [36, 0, 88], 8, "y").disc("k3", [36, 0, 88], 2.4, "y");
      pen.front("b3", [0, 0, 70], 62, 1.2).front("r2", [5, 0, 44], 2, 20);
      pen.side("r3", [62, 24, 4], 20, 20).rod("k", [62, 34, 7], 8, 9);
      for (const r of [14, 20])
        pen.flat(
          "ar",
          `M${pen.at([74, 34, 22]).map(Math.round).join(" ")}m${r - 6} ${-r / 2}q${r / 2} ${r / 2} 0 ${r}`,
        );
      pen.name("fan", [42, 0, 90], [240, 40]).name("motor", [66, 32, 8], [240, 140]);
    }),

  "space-around": () =>
    draw([76, 6, 240, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 24);
      pen.box("b", [0, 0, 0], 62, 46, 84).front("r3", [0, 0, 0], 62, 7).front("b3", [0, 0, 54], 62, 1.2);
      for (let i = 0; i < 9; i++) pen.front("s3", [4 + i * 6, 0, 2], 3, 3.5);
      pen.box("k", [8, 8, 84], 28, 26, 12).box("k", [40, 14, 84], 16, 20, 18);
      pen.arrow(pen.at([86, 10, 30]), pen.at([86, 10, 66]));
      pen
        .name("on-top", [50, 14, 94], [240, 28])
        .name("air", [86, 10, 44], [244, 100])
        .name("dust-grille", [20, 0, 4], [74, 140]);
    }),

  "two-places": () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      pen.box("b", [0, 0, 0], 62, 46, 104).front("r3", [0, 0, 0], 62, 4);
      recess(pen, [4, 0, 72], 54, 28, 10);
      recess(pen, [4, 0, 6], 54, 62, 12);
      shelf(pen, [4, 0, 36], 54, 12);
      glass(pen, [34, 4, 38], 6, 13, 8);
      packet(pen, [22, 4, 74], 12, 6, 12);
      pen.front("k2", [42, 0, 84], 4, 12).front("k2", [46, 0, 48], 4, 14);
      pen.name("freezer", [46, 0, 90], [230, 40]).name("fridge", [50, 0, 54], [230, 92]);
    }),

  "food-covered": () =>
    draw([84, 8, 236, 160], (pen) => {
      pen.floor([0, 0, 0], 92, 50, 12);
      pen.rod("b", [22, 24, 0], 20, 6).rod("p", [22, 24, 6], 11, 7);
      pen.box("t", [52, 6, 0], 38, 36, 16).box("p", [58, 12, 1], 24, 22, 9).box("t", [52, 6, 0], 38, 36, 16);
      pen.box("k", [50, 4, 16], 42, 40, 4);
      pen.name("open-food", [14, 16, 10], [74, 50]).name("lid", [86, 14, 20], [244, 70]);
    }),

  thaw: () =>
    draw([84, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 24);
      pen.box("b", [0, 0, 0], 62, 46, 104);
      recess(pen, [4, 0, 72], 54, 28, 10);
      recess(pen, [4, 0, 6], 54, 62, 12);
      pen.front("i1", [14, 0, 84], 44, 14).front("i2", [20, 0, 80], 30, 5);
      openDoor(pen, [0, 0, 72], 40, 30);
      openDoor(pen, [0, 0, 6], 40, 62);
      pen.box("k", [8, -26, 0], 54, 22, 4);
      pen.name("frost", [46, 0, 92], [240, 36]).name("towel", [58, -20, 4], [240, 146]);
    }),

  wait: () =>
    draw([84, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 96, 46, 14);
      pen
        .box("b", [0, 0, 0], 56, 46, 92)
        .front("b3", [0, 0, 60], 56, 1.2)
        .front("r2", [5, 0, 66], 2, 16)
        .front("r2", [5, 0, 38], 2, 16)
        .front("r3", [0, 0, 0], 56, 4);
      stopwatch(pen, [84, -10, 26], 24);
      pen.turn(pen.at([84, -12, 26]), [10 * pen.scale, 14 * pen.scale], -60, 200);
    }),
};
