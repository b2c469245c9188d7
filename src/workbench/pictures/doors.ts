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
      packet(pen, [14, 2, 82], 14, 4, 10);
      openDoor(pen, [0, 0, 71], 44, 31);
      pen.box("k", [26, -26, 76], 22, 28, 12);
      pen.name("in-the-way", [46, -22, 84], [240, 40]).name("door", [0, -36, 90], [74, 36]);
    }),

  "door-open": () =>
    draw([80, 6, 236, 162], (pen) => {
      pen.floor([0, 0, 0], 62, 46, 20);
      opened(pen, { freezer: false });
      shelf(pen, [4, 0, 38], 54, 12);
      packet(pen, [24, 6, 38], 14, 8, 12);
      openDoor(pen, [0, 0, 6], 46, 62);
      racks(pen, [0, 0, 6], 46, 62);
      pen.arrow(pen.at([30, -50, 26]), pen.at([30, -2, 26]));
      pen.name("warm-air", [30, -42, 26], [80, 146]);
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
    draw([70, 4, 236, 164], (pen) => {
      pen.box("b", [0, 0, 0], 8, 84, 92).side("b1", [8, 3, 3], 78, 86).side("b4", [8, 12, 12], 60, 68);
      pen.box("b", [8, 18, 22], 8, 48, 8).box("b", [8, 18, 50], 8, 48, 8);
      pen.side("k2", [8.2, 4, 84], 76, 5).side("k2", [8.2, 75, 4], 5, 80).side("k2", [8.2, 4, 18], 5, 66);
      pen.side("k2", [8.2, 30, 4], 50, 5);
      pen
        .poly("k1", [8.2, 30, 4], [8.2, 30, 9], [18, 12, 3], [17, 10, -3])
        .poly("k3", [8.2, 4, 18], [8.2, 9, 18], [15, 12, 2], [17, 10, -3]);
      pen
        .name("seal", [8, 78, 60], [240, 60])
        .name("gap", [14, 20, 2], [236, 146])
        .name("hinge-side", [8, 6, 60], [78, 60]);
    }),

  "paper-strip": () =>
    draw([74, 6, 214, 162], (pen) => {
      pen
        .box("b", [0, 30, 0], 70, 40, 90)
        .box("r", [2, 26, 2], 66, 4, 86)
        .box("b", [0, 10, 0], 70, 16, 90)
        .front("r2", [6, 10, 30], 3, 34);
      for (const x of [14, 36, 60]) pen.disc("k2", [x, 18, 90], 2.8);
      for (const z of [76, 12]) pen.disc("k2", [70, 18, z], 2.8, "x");
      pen.around(() => {
        pen
          .poly("k1", [68, 28, 34], [100, 28, 34], [100, 28, 52], [68, 28, 52])
          .poly("k2", [68, 28, 34], [100, 28, 34], [100, 28, 37], [68, 28, 37]);
        hand(pen, [96, 28, 40]);
        pen.arrow(pen.at([84, 28, 64]), pen.at([112, 28, 64]));
      });
      pen
        .name("seal", [40, 28, 90], [222, 24])
        .name("try-here", [14, 18, 90], [66, 24])
        .name("paper", [74, 28, 38], [122, 156]);
    }),

  "door-switch": () =>
    draw([80, 6, 226, 162], (pen) => {
      pen.box("b", [0, 0, 0], 92, 30, 96);
      recess(pen, [12, 0, 0], 68, 78, 18);
      pen.poly("l1", [30, 0, 78], [62, 0, 78], [80, 0, 46], [80, 0, 18], [30, 0, 18]);
      shelf(pen, [12, 0, 30], 68, 18);
      pen.front("s2", [60, 0, 82], 18, 10).rod("k", [69, -8, 87], 4, 8, "y", "k1");
      pen.around(() => hand(pen, [72, -10, 86]));
      pen.name("door-switch", [65, -6, 90], [84, 22]).name("light", [40, 0, 56], [74, 100]);
    }),
};
