import { draw, type Pen } from "./pen.ts";
import { glass, machine, plug, smallTap, socket, stopwatch } from "./props.ts";

/** The dispenser's niche, cut out of a door: 66 wide, 78 high, its spout at [34, -8, 60]. */
function niche(pen: Pen): void {
  pen.box("b", [0, 0, 0], 66, 12, 78).front("r2", [10, 0, 8], 46, 62).side("r3", [10, 0, 8], 9, 62);
  pen.front("r1", [10, 0, 8], 46, 3).box("s", [26, -12, 58], 16, 12, 9);
}

/** The water's way into the machine. */
export const water = {
  supply: () => [
    ...draw([10, 8, 150, 140], (pen) => {
      pen.floor([0, 0, 0], 58, 50);
      machine(pen, "bottom-freezer", [0, 0, 0]);
      pen.pipe("water", [58, 36, 8], [76, 36, 8], [84, 30, 0], [104, 30, 0], [104, 50, 0], [104, 50, 22]);
      pen.rod("s", [104, 50, 20], 4, 8).box("k", [96, 45, 28], 18, 10, 5);
      pen.name("water-tube", [94, 30, 0], [88, 152]);
    }),
    ...draw([184, 24, 304, 132], (pen) => {
      pen.floor([0, 0, 0], 70, 44);
      pen.box("w", [4, 4, 0], 62, 36, 30).box("t", [4, 4, 30], 62, 36, 10);
      pen.box("b", [0, 0, 40], 70, 44, 6).rod("k", [35, 22, 46], 11, 3);
      pen.name("tank", [40, 4, 10], [222, 152]);
    }),
  ],

  "stop-tap": () => {
    const one = (left: number, state: "open" | "closed" | "slot", to: [number, number]) =>
      draw([left, 42, left + 92, 124], (pen) => {
        smallTap(pen, [0, 0, 0], state);
        pen.name(state, state === "slot" ? [0, 0, 17] : state === "open" ? [26, 0, 19] : [0, -26, 19], to);
      });
    return [...one(8, "open", [42, 24]), ...one(112, "closed", [152, 144]), ...one(220, "slot", [254, 22])];
  },

  "flow-test": () =>
    draw([92, 8, 236, 160], (pen) => {
      pen.floor([10, -34, 0], 84, 26, 18);
      niche(pen);
      pen.pipe("water", [34, -8, 58], [34, -8, 20]);
      pen.wire("ws", [48, -8, 32], [60, -8, 30], [60, -8, 16], [48, -8, 12]);
      glass(pen, [34, -8, 4], 15, 32, 15);
      for (const [z, w] of [
        [9, 5],
        [15, 9],
        [21, 5],
        [27, 9],
      ] as const)
        pen.front("r2", [30, -23, z], w, 1.4);
      stopwatch(pen, [88, -26, 20], 19);
      pen
        .name("spout", [27, -12, 62], [84, 40])
        .name("jug", [22, -18, 14], [80, 118])
        .name("stopwatch", [102, -26, 26], [246, 78]);
    }),

  "plug-out": () =>
    draw([90, 10, 230, 158], (pen) => {
      pen.front("b4", [-16, 26, -20], 84, 78).top("f1", [-60, -50, -20], 128, 76);
      socket(pen, [12, 24, 8]);
      plug(pen, [14, -30, -12]);
      pen.name("socket", [34, 24, 30], [240, 30]).name("plug", [32, -24, 0], [240, 132]);
    }),
};
