import { draw, type Pen, type Place } from "./pen.ts";
import { openDoor, packet, recess, shelf } from "./props.ts";

const plate = (pen: Pen, [x, y, z]: Place) =>
  pen
    .front("k2", [x, y, z], 9, 6)
    .front("k1", [x + 1.5, y, z + 3.4], 6, 1)
    .front("k1", [x + 1.5, y, z + 1.4], 4, 1);
const onSide = (pen: Pen, [x, y, z]: Place) =>
  pen.side("k2", [x, y, z], 9, 6).side("k1", [x, y + 1.5, z + 2.6], 6, 1);

/** A machine with its doors open, the fridge's inside from `foot` to `head`, the freezer's between two other heights. */
function opened(pen: Pen, [foot, head]: [number, number], [low, high]: [number, number]): void {
  pen.floor([0, 0, 0], 64, 46, 20);
  pen.box("b", [0, 0, 0], 64, 46, 104).front("r3", [0, 0, 0], 64, 4);
  recess(pen, [4, 0, low], 56, high - low, 10);
  recess(pen, [4, 0, foot], 56, head - foot, 14);
  shelf(pen, [4, 0, foot + (head - foot) * 0.5], 56, 14);
  pen.front("b4", [20, 0, foot + 3], 38, 12).front("s2", [30, 0, foot + 10], 18, 2);
}

/** The rating plate: what it says, and where it sits in each kind of machine. */
export const plates = {
  "rating-plate": () =>
    draw([30, 16, 290, 152], (pen) => {
      pen.box("s", [0, 0, 0], 120, 3, 62);
      const row = (z: number, parts: [number, number][]) => {
        for (const [x, w] of parts) pen.front("s3", [x, 0, z], w, 3.5);
      };
      pen.front("k2", [6, -0.1, 42], 108, 15);
      for (const [x, w] of [
        [10, 20],
        [38, 30],
        [72, 14],
        [90, 18],
      ] as const)
        pen.front("k3", [x, -0.2, 46], w, 7);
      row(33, [
        [10, 16],
        [38, 40],
      ]);
      row(25, [
        [10, 22],
        [38, 30],
      ]);
      for (const [i, w] of [3, 1, 2, 4, 1, 3, 2, 1, 3, 1, 2, 4, 1].entries())
        pen.front("r3", [10 + i * 6, 0, 6], w, 13);
      pen.name("model-code", [92, 0, 54], [228, 26]).name("not-serial", [60, 0, 34], [96, 140]);
    }),

  "plate-top-freezer": () =>
    draw([88, 6, 236, 162], (pen) => {
      opened(pen, [6, 68], [72, 100]);
      plate(pen, [44, 0, 54]);
      plate(pen, [8, 0, 20]);
      pen.front("k2", [60.5, 0, 40], 3, 9);
      onSide(pen, [64, 34, 70]);
      openDoor(pen, [0, 0, 72], 34, 30);
      openDoor(pen, [0, 0, 6], 34, 62);
      pen
        .name("1", [52, 0, 57], [250, 62])
        .name("2", [12, 0, 22], [92, 140])
        .name("3", [62, 0, 42], [230, 112])
        .name("4", [64, 38, 73], [250, 24]);
    }),

  "plate-bottom-freezer": () =>
    draw([88, 6, 236, 162], (pen) => {
      opened(pen, [40, 100], [6, 36]);
      plate(pen, [8, 0, 52]);
      plate(pen, [44, 0, 86]);
      pen.front("k2", [60.5, 0, 18], 3, 9);
      onSide(pen, [64, 34, 70]);
      openDoor(pen, [0, 0, 40], 34, 62);
      openDoor(pen, [0, 0, 6], 34, 30);
      pen
        .name("1", [12, 0, 54], [90, 130])
        .name("2", [52, 0, 89], [250, 50])
        .name("3", [62, 0, 20], [236, 136])
        .name("4", [64, 38, 73], [252, 20]);
    }),

  "plate-side-by-side": () =>
    draw([84, 6, 244, 162], (pen) => {
      pen.floor([0, 0, 0], 70, 46, 16);
      pen.box("b", [0, 0, 0], 70, 46, 104).front("r3", [0, 0, 0], 70, 4);
      recess(pen, [3, 0, 6], 28, 94, 9);
      recess(pen, [35, 0, 6], 32, 94, 10);
      for (const z of [38, 68]) {
        shelf(pen, [35, 0, z], 32, 10);
        shelf(pen, [3, 0, z], 28, 9);
      }
      plate(pen, [54, 0, 84]);
      plate(pen, [44, 0, 96]);
      plate(pen, [38, 0, 20]);
      onSide(pen, [70, 34, 64]);
      openDoor(pen, [0, 0, 6], 30, 96);
      pen
        .name("1", [60, 0, 87], [256, 62])
        .name("2", [48, 0, 99], [150, 14])
        .name("3", [42, 0, 22], [92, 148])
        .name("4", [70, 38, 67], [262, 24]);
    }),

  "plate-french-door": () =>
    draw([70, 6, 250, 162], (pen) => {
      pen.floor([0, 0, 0], 64, 46, 16);
      pen.box("b", [0, 0, 0], 64, 46, 104).front("r3", [0, 0, 0], 64, 4);
      recess(pen, [4, 0, 42], 56, 58, 14);
      shelf(pen, [4, 0, 72], 56, 14);
      recess(pen, [4, 0, 6], 56, 32, 8);
      plate(pen, [44, 0, 84]);
      plate(pen, [28, 0, 95]);
      pen.front("k2", [60.5, 0, 22], 3, 9);
      onSide(pen, [64, 34, 66]);
      pen.box("b", [64, -3, 42], 30, 3, 60).front("b4", [67, -3, 46], 24, 52);
      pen
        .box("b", [4, -20, 8], 56, 20, 20)
        .box("b", [2, -24, 6], 60, 4, 28)
        .front("r2", [20, -24, 26], 24, 2);
      openDoor(pen, [0, 0, 42], 30, 60);
      packet(pen, [40, 4, 73], 10, 6, 8);
      pen
        .name("1", [52, 0, 87], [120, 20])
        .name("2", [32, 0, 98], [92, 44])
        .name("3", [62, 0, 28], [236, 146])
        .name("4", [64, 40, 70], [262, 30]);
    }),
};
