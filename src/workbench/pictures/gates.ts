import { draw } from "./pen.ts";
import { plug, socket } from "./props.ts";

/** What has to be made safe first: the plug, the machine itself, its cover. */
export const gates = {
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
      pen.box("b", [0, 0, 0], 66, 46, 100).box("k", [5, -2, 4], 56, 2, 30);
      for (let i = 0; i < 6; i++) pen.front("s2", [8, 0, 44 + i * 9], 50, 2);
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
};
