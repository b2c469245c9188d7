import { draw, type Pen } from "./pen.ts";
import { hand, openDoor, packet, racks, recess, shelf } from "./props.ts";

/** A machine with its freezer above: both openings are seen, the fridge's or the freezer's door stands open. */
function opened(pen: Pen, { fridge = true, freezer = true }): void {
  pen.box("b", [0, 0, 0], 62, 46, 104).front("r3", [0, 0, 0], 62, 4);
  if (freezer) recess(pen, [4, 0, 72], 54, 28, 10);
  else pen.front("r2", [5, 0, 74], 2, 20).front("b3", [0, 0, 70], 62, 1.2);
  if (fridge) recess(pen, [4, 0, 6], 54, 62, 12);
  else pen.front("r2", [5, 0, 44], 2, 20).front("b3", [0, 0, 69], 62, 1.2);
}

/** Doors, their seals and their switches. */
export const doors = {
  "door-closing": () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      opened(pen, { fridge: false });
      packet(pen, [20, -4, 74], 18, 10, 12);
      pen.box("k", [34, -16, 74], 18, 18, 10);
      pen.poly("b2", [0, 0, 70], [0, 0, 102], [-30, -46, 102], [-30, -46, 70]);
      pen.poly("b1", [0, 0, 102], [3, -1, 102], [-27, -47, 102], [-30, -46, 102]).poly("b4", [3, -1, 102], [3, -1, 70], [-27, -47, 70], [-27, -47, 102]);
      pen.name("in-the-way", [52, -10, 79], [240, 60]).name("gap", [-10, -20, 84], [74, 30]);
    }),

  "door-open": () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      opened(pen, { freezer: false });
      shelf(pen, [4, 0, 38], 54, 12);
      packet(pen, [24, 6, 38], 14, 8, 12);
      openDoor(pen, [0, 0, 6], 46, 62);
      racks(pen, [0, 0, 6], 46, 62);
      pen.arrow(pen.at([92, -30, 60]), pen.at([62, -10, 56]));
      pen.name("warm-air", [86, -26, 59], [238, 60]);
    }),

  "power-light": () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      opened(pen, { freezer: false });
      pen.poly("l1", [22, 0, 68], [46, 0, 68], [58, 0, 40], [58, 0, 18], [16, 0, 18], [16, 0, 40]);
      shelf(pen, [4, 0, 38], 54, 12);
      pen.front("k2", [26, 0, 63], 16, 5);
      openDoor(pen, [0, 0, 6], 46, 62);
      racks(pen, [0, 0, 6], 46, 62);
      pen.front("r3", [26, 0, 80], 22, 12).front("k2", [30, 0, 85], 6, 3).front("k2", [39, 0, 85], 4, 3);
      pen.name("light", [38, 0, 66], [240, 84]).name("display", [46, 0, 86], [240, 36]);
    }),

  "door-seal": () =>
    draw([80, 6, 240, 162], (pen) => {
      pen.box("b", [0, 0, 0], 8, 78, 108).side("s2", [8, 4, 4], 70, 100).side("b4", [8, 10, 10], 58, 88);
      pen.box("b", [8, 14, 20], 8, 50, 8).box("b", [8, 14, 56], 8, 50, 8);
      pen.side("k1", [8.2, 4, 4], 70, 5).side("k1", [8.2, 4, 9], 5, 95);
      pen.poly("k2", [8.4, 4, 4], [8.4, 30, 4], [18, 12, -2], [16, -2, 2]);
      pen.name("seal", [8, 76, 60], [242, 40]).name("gap", [15, 4, 0], [232, 148]).name("hinge-side", [8, 6, 70], [78, 60]);
    }),

  "paper-strip": () =>
    draw([70, 8, 210, 160], (pen) => {
      pen.box("b", [0, 30, 0], 70, 40, 90);
      pen.box("r", [2, 26, 2], 66, 4, 86);
      pen.box("b", [0, 10, 0], 70, 16, 90).front("r2", [6, 10, 30], 3, 34);
      pen.poly("p1", [67, 27, 50], [108, 27, 46], [108, 27, 30], [67, 27, 34]);
      hand(pen, [100, 27, 36]);
      for (const [x, z] of [[14, 90], [38, 90], [60, 90]] as const) pen.disc("k2", [x, 18, z], 2.6);
      for (const z of [70, 16]) pen.disc("k2", [70, 18, z], 2.6, "x");
      pen.arrow(pen.at([84, 27, 64]), pen.at([112, 27, 62]));
      pen.name("seal", [30, 28, 90], [214, 20]).name("try-here", [14, 18, 90], [70, 24]).name("paper", [84, 27, 36], [212, 152]);
    }),

  "door-switch": () =>
    draw([84, 6, 236, 162], (pen) => {
      pen.box("b", [0, 0, 0], 88, 30, 96);
      recess(pen, [12, 0, 0], 64, 82, 18);
      pen.poly("l1", [34, 0, 82], [62, 0, 82], [76, 0, 50], [76, 0, 24], [30, 0, 24]);
      pen.front("s2", [58, 0, 84], 14, 8).rod("k", [65, -6, 88], 3.4, 6, "y", "k1");
      hand(pen, [65, -9, 88]);
      pen.name("door-switch", [60, 0, 88], [78, 24]).name("light", [48, 0, 60], [78, 96]);
    }),
};
