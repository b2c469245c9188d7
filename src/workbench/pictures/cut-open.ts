import { bin, fan, shut, smallCover, wallTap } from "./cut-open-props.ts";
import { type Flat, n } from "./paper.ts";
import { Pen, type Place } from "./pen.ts";
import { cube, recess, socket } from "./props.ts";

/*
 * The machine cut open, for where there is room beside the thread: the way of the water as one line from the tap, or from
 * the tank, to the ice. Nobody says where their freezer is, so there is one machine, with the freezer at its left.
 */

/** What it is drawn in, in pixels of its own: a column of words at each side. */
export const cutOpenFrame = { width: 540, height: 428 };

/** Width, depth and height; how far it stands from the wall, and how far pulled out. */
const [w, d, h] = [116, 76, 168];
const [close, pulled] = [8, 24];

/**
 * A group of shapes. `at` is the station that they are: what is in copper there is so only where the turn is about it,
 * and of the material `plain` otherwise. `where` lists what has to hold: a station that the machine has, `tap-fed` or
 * `tank-fed`, or with a sign a preparation: `-water` is changed by us, `+water` is not. What is `closed` is drawn alone,
 * while there is nothing to show inside.
 */
export type CutOpenGroup = { at?: string; plain?: string; where: string[]; shapes: string[] };

/** Where the word for a station points to, and the column that it stands in. The last one that holds counts. */
export type CutOpenPlace = { station: string; side: "left" | "right"; at: Flat; where: string[] };

export type CutOpen = { frame: typeof cutOpenFrame; groups: CutOpenGroup[]; places: CutOpenPlace[] };

/** Draws it all; which groups hold, a phone's session says. */
export function createCutOpen(): CutOpen {
  const pen = new Pen([104, 302], 1.3);
  const groups: CutOpenGroup[] = [];
  const places: CutOpenPlace[] = [];
  const group = (where: string, draw: () => unknown, at?: string, plain = "s") => {
    const before = pen.shapes.length;
    draw();
    const shapes = pen.shapes.splice(before);
    groups.push({ ...(at ? { at, plain } : {}), where: where.split(" ").filter(Boolean), shapes });
  };
  const name = (station: string, side: "left" | "right", place: Place, where = "") => {
    const [x, y] = pen.at(place);
    places.push({ station, side, at: [Number(n(x)), Number(n(y))], where: where.split(" ").filter(Boolean) });
  };

  for (const [is, gap] of [
    ["+machine", close],
    ["-machine", pulled],
  ] as const)
    behind(is, d + gap);
  body();
  waterInside();
  freezer();
  doors();
  inFront();
  group("closed", () => shut(pen, [w, d, h]));
  return { frame: cutOpenFrame, groups, places };

  /** Floor, wall, socket, tap and tube. */
  function behind(is: string, wall: number): void {
    group(is, () => {
      pen.poly(
        "f1",
        [-22, -56, 0],
        [90, -56, 0],
        [w + 26, -20, 0],
        [w + 26, 8, 0],
        [w + 64, 8, 0],
        [w + 64, wall + 4, 0],
        [-22, wall + 4, 0],
      );
      pen.top("f2", [-6, -14, 0], w + 16, d + 16);
      pen.box("b", [w - 24, wall, 0], 86, 4, 74);
      socket(pen, [w + 4, wall - 2, 40]);
    });
    group(`${is} +plug`, () => {
      pen.wire("le", [w + 16, wall - 10, 50], [w + 13, wall - 12, 18], [w, d - 4, 8]);
      pen.box("r", [w + 10, wall - 14, 46], 12, 12, 12);
    });
    group(`${is} -plug`, () => {
      pen.wire("le", [w, d - 4, 8], [w + 8, wall - 18, 1], [w + 20, wall - 16, 5]);
      pen.rod("s", [w + 23, wall - 8, 8], 1.3, 8, "y").rod("s", [w + 29, wall - 8, 8], 1.3, 8, "y");
      pen.box("r", [w + 20, wall - 20, 1], 12, 12, 12);
    });
    const tap: Place = [w + 48, wall - 8, 32];
    const [x, y] = tap;
    group(`tap-fed ${is} +water`, () => wallTap(pen, tap, true), "stop-tap", "r");
    group(`tap-fed ${is} -water`, () => wallTap(pen, tap, false), "stop-tap", "r");
    name("stop-tap", "right", [x + 6, y - 6, 36], `tap-fed ${is}`);
    group(
      `tap-fed ${is}`,
      () =>
        pen.pipe(
          "water",
          [x, y, 20],
          [x, y, 3],
          [x - 18, y - 30, 2],
          [w + 22, d - 34, 2],
          [w + 4, d - 14, 4],
          [w, d - 14, 14],
        ),
      "supply-line",
    );
    name("supply-line", "right", [x, y, 13], `tap-fed ${is}`);
  }

  /** The outside, and what is cut out of its side. */
  function body(): void {
    group("", () => {
      pen.box("b", [0, 0, 4], w, d, h - 4);
      pen.front("r3", [0, 0, 0], w, 5).side("r3", [w, 0, 0], d, 5);
    });
    group("tap-fed", () => {
      pen.side("c3", [w, 4, 7], d - 8, 36).side("c3", [w, d - 28, 43], 18, h - 52);
      pen.side("c2", [w, 7, 7], d - 11, 33).side("c2", [w, d - 25, 40], 15, h - 52);
    });
    group("tank-fed", () => {
      pen.side("c3", [w, 8, 52], 58, 48).side("c3", [w, d - 28, 60], 18, h - 69);
      pen.side("c2", [w, 11, 52], 55, 45).side("c2", [w, d - 25, 60], 15, h - 72);
    });
  }

  /** The line within the machine: up its side, over its top, into the tray. */
  function waterInside(): void {
    const up: Place[] = [
      [w, d - 18, h],
      [48, d - 18, h],
      [26, 16, h],
    ];
    group("tap-fed", () => {
      pen.pipe("water", [w, d - 14, 14], [w, 40, 14]).pipe("water", [w, 34, 28], [w, d - 26, 28]);
    });
    group("tap-fed", () => pen.pipe("water", [w, d - 18, 36], ...up));
    group("tap-fed filter +filter", () => pen.rod("k", [w - 6, 2, 20], 8.5, 36, "y"), "filter", "b");
    name("filter", "right", [w - 8, -12, 22], "tap-fed +filter");
    group(
      "tap-fed",
      () => {
        pen.box("k", [w - 2, d - 28, 18], 10, 16, 18);
        pen.side("r2", [w + 8, d - 24, 22], 8, 9);
      },
      "inlet-valve",
    );
    name("inlet-valve", "right", [w + 8, d - 16, 33], "tap-fed");
    group(
      "tank-fed",
      () => {
        pen.box("w", [w - 6, 14, 58], 12, 38, 22).box("k", [w - 7, 12, 80], 14, 42, 6);
        pen.box("k", [w + 6, 24, 66], 3, 18, 6);
      },
      "tank",
      "b",
    );
    name("tank", "right", [w + 8, 44, 70]);
    // A machine with a tank has its tube inside.
    group("tank-fed", () => pen.pipe("water", [w, 52, 62], [w, d - 18, 62], ...up), "supply-line");
    name("supply-line", "right", [w, d - 18, 118], "tank-fed");
    group("fill-tube", () => pen.pipe("water", ...up.slice(1)).rod("k", up[2] as Place, 7, 9), "fill-tube");
    name("fill-tube", "left", [22, 14, h + 5]);
  }

  /** The freezer: ice maker, bin, cold air. */
  function freezer(): void {
    group("", () => recess(pen, [5, 0, 12], 59, 150, 34));
    group("", () => fan(pen, [5.4, 12, 93]), "cold");
    name("cold", "left", [8, 12, 93]);
    group("fill-tube", () => pen.pipe("water", [30, 10, 151], [30, 10, 140]));
    group(
      "",
      () => {
        pen.box("k", [14, 3, 127], 34, 16, 8);
        for (const row of [1, 0])
          for (const column of [0, 1, 2, 3]) pen.top("w1", [16 + column * 8, 4 + row * 7.6, 135], 6.2, 6);
        pen.box("b", [6, 2, 122], 9, 18, 18);
      },
      "ice-tray",
    );
    name("ice-tray", "left", [19, 3, 130]);
    group("+bin", () => bin(pen, [7, 2, 52]), "ice-bin", "b");
    name("ice-bin", "left", [11, 2, 60], "+bin");
    group("", () => pen.front("b1", [5, 0, 48], 59, 3));
  }

  /** The seal round the freezer, the fridge's door, and what of the freezer's door the chute is in. */
  function doors(): void {
    const rim = (tone: string, by: number) => {
      pen.front(tone, [5 - by, -0.2, 12], by, 150).front(tone, [64, -0.2, 12], by, 150);
      pen
        .front(tone, [5 - by, -0.2, 162], 59 + 2 * by, by)
        .front(tone, [5 - by, -0.2, 12 - by], 59 + 2 * by, by);
    };
    group("", () => rim("k2", 2.6), "seal", "s");
    name("seal", "left", [4, 0, 44]);
    group("", () => {
      pen.box("b", [68, -9, 38], w - 68, 9, h - 38);
      pen.box("b", [66, -4, 5], w - 66, 4, 31);
      for (const z of [11, 17, 23, 29]) pen.front("s2", [72, -4, z], w - 76, 2);
    });
    group("", () => pen.box("k", [72, -13, 66], 4, 4, 52), "door", "r");
    name("door", "right", [76, -13, 92]);
    group(
      "filter +filter",
      () => pen.rod("k", [w - 11, -12, 20], 9.5, 8, "y", "k2").front("k3", [w - 17, -12.1, 18.6], 12, 2.8),
      "filter",
      "s",
    );
    group(
      "",
      () => {
        pen.front("r2", [82, -9, 126], 28, 18).front("k2", [85, -9, 135], 22, 6);
        for (const i of [0, 1, 2]) pen.disc("k1", [89 + i * 7, -9, 130.5], 1.9, "y");
      },
      "controls",
    );
    name("controls", "right", [105, -9, 138]);
    group(
      "chute",
      () => {
        pen.box("b", [3, -10, 7], 62, 10, 38);
        pen.front("r2", [12, -10, 12], 30, 24).front("r3", [15, -10, 12], 27, 21);
        pen.top("c3", [14, -9, 45], 26, 8);
        pen.poly("k2", [18, -10, 36], [36, -10, 36], [33, -12, 27], [21, -12, 27]);
        pen.front("k1", [14, -10, 42], 26, 3);
        cube(pen, [22, -9, 46], 8);
      },
      "chute",
    );
    name("chute", "left", [20, -11, 32]);
  }

  /** What stands on the floor in front while it is out. */
  function inFront(): void {
    group("-bin", () => bin(pen, [50, -50, 0]), "ice-bin", "b");
    name("ice-bin", "left", [58, -50, 12], "-bin");
    group("-panel", () => smallCover(pen, [w + 16, 4, 0]));
    group(
      "tap-fed filter -filter",
      () => pen.rod("b", [w + 8, -28, 9], 8.5, 24, "y").rod("k", [w + 8, -38, 9], 10, 12, "y", "k2"),
      "filter",
      "b",
    );
    name("filter", "right", [w + 14, -22, 12], "tap-fed -filter");
  }
}
