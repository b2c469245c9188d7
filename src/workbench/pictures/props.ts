import type { Pen, Place } from "./pen.ts";

/** The kinds of machine, by where their freezer is. */
export type Machine = "top-freezer" | "bottom-freezer" | "side-by-side" | "french-door";

/** Width, depth and height of a machine that fills the drawing. */
export const machineSize: [number, number, number] = [58, 50, 96];

/** A whole machine with its doors shut. */
export function machine(pen: Pen, kind: Machine, [x, y, z]: Place): void {
  const [w, d, h] = machineSize;
  const gap = (left: number, foot: number, wide: number, high: number) =>
    pen.front("b3", [x + left, y, z + foot], wide, high);
  const handle = (left: number, foot: number, wide: number, high: number) =>
    pen.front("r2", [x + left, y, z + foot], wide, high);
  pen
    .box("b", [x, y, z], w, d, h)
    .front("r3", [x, y, z], w, 5)
    .side("r3", [x + w, y, z], d, 2);
  if (kind === "side-by-side") {
    gap(25, 5, 1.2, h - 5);
    handle(21, 34, 2, 36);
    handle(28, 34, 2, 36);
    pen.front("r2", [x + 6, y, z + 46], 11, 22).front("r3", [x + 7.5, y, z + 48], 8, 12);
  } else if (kind === "french-door") {
    gap(0, 36, w, 1.2);
    gap(28.5, 36, 1.2, h - 36);
    handle(24.5, 44, 2, 34);
    handle(32, 44, 2, 34);
    handle(16, 30, 26, 2);
  } else {
    const line = kind === "top-freezer" ? 64 : 36;
    gap(0, line, w, 1.2);
    handle(5, line + 4, 2, 18);
    handle(5, line - 22, 2, 18);
  }
}

/** A machine's inside, cut open at the top, the right and the front. */
export function cavity(pen: Pen, [x, y, z]: Place, w: number, d: number, h: number): void {
  const t = 5;
  pen
    .front("c1", [x, y + d, z], w, h)
    .side("c2", [x, y, z], d, h)
    .top("c3", [x, y, z], w, d);
  pen.poly(
    "b1",
    [x - t, y, z + h],
    [x, y, z + h],
    [x, y + d, z + h],
    [x + w, y + d, z + h],
    [x + w, y + d + t, z + h],
    [x - t, y + d + t, z + h],
  );
  pen.front("b2", [x - t, y, z - t], t, h + t).side("b3", [x + w, y + d, z - t], t, h + t);
  pen.front("b2", [x, y, z - t], w, t).side("b3", [x + w, y, z - t], d, t);
}

/** A cube of ice; copper where it is what to look at. */
export const cube = (pen: Pen, at: Place, size = 10, material = "i") =>
  pen.box(material, at, size, size, size);

/** Cubes in a heap: rows along the front, layer by layer, the far ones first. */
export function cubes(pen: Pen, [x, y, z]: Place, rows: number[][], step = 13, size = 10): void {
  for (const [layer, row] of rows.entries())
    for (let back = row.length - 1; back >= 0; back--)
      for (let i = 0; i < (row[back] ?? 0); i++)
        cube(
          pen,
          [x + i * step + ((back + layer) % 2) * 4, y + back * step, z + layer * size + (i % 2) * 2],
          size,
        );
}

/** A clear bin, the part behind what is in it. */
export function binBack(pen: Pen, [x, y, z]: Place, w: number, d: number, h: number): void {
  pen
    .top("c2", [x, y, z], w, d)
    .front("t1", [x, y + d, z], w, h)
    .side("t2", [x, y, z], d, h);
}

/** The part of a clear bin before what is in it. */
export function binFront(pen: Pen, [x, y, z]: Place, w: number, d: number, h: number): void {
  pen.front("t2", [x, y, z], w, h).side("t3", [x + w, y, z], d, h);
  const rim = 2.5;
  pen.front("b1", [x, y, z + h - rim], w, rim).side("b2", [x + w, y, z + h - rim], d, rim);
}

/** An ice maker with its tray: 84 long, 26 deep. `tray` is the tone in its cells. */
export function iceMaker(pen: Pen, [x, y, z]: Place, tray = "w1"): void {
  pen.box("s", [x + 16, y, z], 68, 26, 12);
  for (const [row, col] of cells(2, 6))
    pen.top(tray, [x + 20 + col * 10.6, y + 2.5 + row * 11.5, z + 12], 8, 9);
  pen.box("b", [x, y - 1, z - 5], 16, 28, 26);
}

/** Every place of a grid, the far row first. */
export function cells(rows: number, columns: number): [row: number, column: number][] {
  return Array.from({ length: rows * columns }, (_, i) => [rows - 1 - Math.floor(i / columns), i % columns]);
}

/** A glass, a cup or a jug of water: round, clear and open. @param level how high its water stands */
export function glass(pen: Pen, [x, y, z]: Place, radius: number, height: number, level: number): void {
  pen.rod("t", [x, y, z], radius, height, "z", "t3");
  if (level > 0) pen.rod("q", [x, y, z + 1], radius - 1.5, level);
}

/** A stopwatch that faces the reader's left. */
export function stopwatch(pen: Pen, [x, y, z]: Place, radius: number): void {
  pen.rod("k", [x, y + 1, z + radius - 1], 2.5, 7);
  pen.rod("k", [x, y, z], radius, 6, "y", "k2").disc("b1", [x, y, z], radius * 0.8, "y");
  const hand = radius * 0.62;
  pen.poly("k3", [x - 1, y, z], [x + 1, y, z], [x + 0.6, y, z + hand], [x - 0.6, y, z + hand]);
  pen.disc("r2", [x, y, z], 1.6, "y");
  for (const [dx, dz] of [
    [0, 1],
    [1, 0],
    [0, -1],
    [-1, 0],
  ] as const)
    pen.disc("r1", [x + dx * radius * 0.66, y, z + dz * radius * 0.66], 1, "y");
}

/** A thermometer that lies or stands: a stem with a round dial that faces the reader's left. */
export function thermometer(pen: Pen, [x, y, z]: Place, length: number): void {
  pen.rod("s", [x, y, z], 1.6, length);
  pen.rod("k", [x, y - 2, z + length + 8], 10, 5, "y", "k2").disc("b1", [x, y - 2, z + length + 8], 7.5, "y");
  pen.poly(
    "r2",
    [x - 1, y - 2, z + length + 7],
    [x + 1, y - 2, z + length + 7],
    [x - 4, y - 2, z + length + 14],
  );
}

/** A small tap in a pipe that runs along the front. @param state how its handle stands, or that a screwdriver turns it */
export function smallTap(pen: Pen, [x, y, z]: Place, state: "open" | "closed" | "slot"): void {
  pen.pipe("water", [x - 34, y, z], [x - 16, y, z]);
  pen.pipe(state === "closed" ? "empty" : "water", [x + 16, y, z], [x + 36, y, z]);
  pen
    .rod("s", [x - 17, y, z], 6, 8, "x")
    .rod("s", [x - 10, y, z], 8.5, 20, "x")
    .rod("s", [x + 10, y, z], 6, 8, "x");
  pen.rod("r", [x, y, z + 7], 4.5, 8);
  if (state === "slot") {
    pen
      .rod("s", [x, y, z + 14], 6, 3)
      .poly(
        "r3",
        [x - 4.5, y - 1, z + 17],
        [x + 4.5, y - 1, z + 17],
        [x + 4.5, y + 1, z + 17],
        [x - 4.5, y + 1, z + 17],
      );
    return;
  }
  if (state === "open") pen.box("k", [x - 5, y - 4.5, z + 15], 36, 9, 4);
  else pen.box("k", [x - 4.5, y - 31, z + 15], 9, 36, 4);
}

/** A water filter with its cap towards the reader's right. @param shown the length that is out of its seat */
export function cartridge(pen: Pen, [x, y, z]: Place, radius: number, shown: number): void {
  pen.rod("b", [x, y, z], radius * 0.86, shown, "x").rod("k", [x + shown, y, z], radius, radius * 0.9, "x");
  const end = x + shown + radius * 0.9;
  pen.poly(
    "k3",
    [end, y - radius * 0.6, z - 1.6],
    [end, y + radius * 0.6, z - 1.6],
    [end, y + radius * 0.6, z + 1.6],
    [end, y - radius * 0.6, z + 1.6],
  );
}

/** A socket in a wall that faces the reader's left. */
export function socket(pen: Pen, [x, y, z]: Place): void {
  pen.box("b", [x, y, z], 26, 2, 26).disc("b4", [x + 13, y, z + 13], 9.5, "y");
  pen.disc("r3", [x + 9, y, z + 13], 1.7, "y").disc("r3", [x + 17, y, z + 13], 1.7, "y");
}

/** A plug whose pins point away from the reader, with its lead. */
export function plug(pen: Pen, [x, y, z]: Place, material = "k"): void {
  const [cx, cy] = pen.at([x + 9, y, z + 8]);
  pen.flat("le", `M${cx.toFixed(0)} ${cy.toFixed(0)}q-26 10-30 26t-34 14`);
  pen.rod("s", [x + 5, y + 14, z + 9], 1.4, 9, "y").rod("s", [x + 13, y + 14, z + 9], 1.4, 9, "y");
  pen.box(material, [x, y, z], 18, 15, 18);
}

/** A hand with a sleeve, on the paper; its fingertips are at the place. @param from where the arm comes from */
export function hand(pen: Pen, at: Place, from: "left" | "right" = "right"): void {
  const turned = (path: string) =>
    from === "right" ? path : path.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x, y) => `${-Number(x)} ${y}`);
  pen.sketch("h3", at, turned("M6 6l12 12 22 5 22 -6 0 -22 -24 -2z"));
  pen.sketch(
    "h2",
    at,
    turned("M0 -2q-2 -5 4 -6l20 -5q12 -4 22 -2l18 3 0 24 -22 1q-9 -1 -15 -6l-9 -5 -14 1q-4 -1 -4 -5z"),
  );
  pen.sketch("h1", at, turned("M-1 1q1 -4 7 -4l16 1q4 1 3 5q-1 4 -8 4l-13 0q-6 -2 -5 -6z"));
  pen.sketch("b3", at, turned("M60 -16l8 -4 60 10 0 36 -60 -4 -8 -8z"));
}

/**
 * An opening in a front, with the inside seen through it.
 * @param deep how much of the left wall and of the floor is seen
 */
export function recess(pen: Pen, [x, y, z]: Place, w: number, h: number, deep: number): void {
  pen.front("c1", [x, y, z], w, h);
  pen.poly("c2", [x, y, z], [x + deep, y, z + deep], [x + deep, y, z + h], [x, y, z + h]);
  pen.poly("c3", [x, y, z], [x + w, y, z], [x + w, y, z + deep], [x + deep, y, z + deep]);
}

/** A shelf across such an opening. */
export function shelf(pen: Pen, [x, y, z]: Place, w: number, deep: number): void {
  pen
    .poly("t1", [x, y, z], [x + w, y, z], [x + w, y, z + deep], [x + deep, y, z + deep])
    .front("b1", [x, y, z - 1], w, 1.5);
}

/** A door that stands open at the left of a front, with its seal and racks. */
export function openDoor(pen: Pen, [x, y, z]: Place, w: number, h: number, seal = "b1"): void {
  pen.box("b", [x - 5, y - w, z], 5, w, h).side(seal, [x, y - w + 1.5, z + 1.5], w - 3, h - 3);
  pen.side("b4", [x, y - w + 4, z + 4], w - 8, h - 8);
}

/** A row of racks on such a door. */
export function racks(pen: Pen, [x, y, z]: Place, w: number, h: number): void {
  for (const at of [0.18, 0.55]) pen.box("b", [x, y - w + 6, z + h * at], 5, w - 12, 6);
}

/** Boxes of food. */
export function packet(pen: Pen, at: Place, w: number, d: number, h: number): void {
  pen.box("p", at, w, d, h).front("s2", [at[0] + w * 0.2, at[1], at[2] + h * 0.3], w * 0.6, h * 0.3);
}
