import { type Area, type Flat, n, Paper, pair } from "./paper.ts";

/** A place in the room: to the right along the front, away from the reader, and up; in pixels of the drawing. */
export type Place = [x: number, y: number, z: number];

type Axis = "x" | "y" | "z";

/** Half the way to the right in true isometric: the cosine of 30°. */
const slope = Math.sqrt(3) / 2;
/** How an axis of the room runs on the paper. */
const ways: Record<Axis, Flat> = { x: [slope, 0.5], y: [slope, -0.5], z: [0, -1] };
/** A circle of radius 1 in the room is an ellipse on the paper with these half axes. */
const long = Math.sqrt(3 / 2);
const short = Math.SQRT1_2;

/**
 * Draws solids as flat shapes, in the order in which they are called: what is nearer comes later. A material is one
 * letter, and a tone of it the letter with 1 for the top, 2 for the front or 3 for the side; tones.css has them.
 */
export class Pen extends Paper {
  readonly #origin: Flat;
  readonly #scale: number;

  /** @param origin where the room's zero lies on the paper */
  constructor(origin: Flat, scale: number) {
    super();
    this.#origin = origin;
    this.#scale = scale;
  }

  /** Pixels of the paper to a pixel of the room. */
  get scale(): number {
    return this.#scale;
  }

  /** The place on the paper. */
  at([x, y, z]: Place): Flat {
    const [left, top] = this.#origin;
    return [left + (x + y) * slope * this.#scale, top + ((x - y) / 2 - z) * this.#scale];
  }

  /** A flat shape in the room, by its corners. */
  poly(tone: string, ...corners: Place[]): this {
    return this.#closed(
      tone,
      corners.map((corner) => this.at(corner)),
    );
  }

  /** A rectangle that faces the reader's left. */
  front(tone: string, [x, y, z]: Place, width: number, height: number): this {
    return this.poly(tone, [x, y, z], [x + width, y, z], [x + width, y, z + height], [x, y, z + height]);
  }

  /** A rectangle that faces the reader's right. */
  side(tone: string, [x, y, z]: Place, depth: number, height: number): this {
    return this.poly(tone, [x, y, z], [x, y + depth, z], [x, y + depth, z + height], [x, y, z + height]);
  }

  /** A rectangle that lies flat. */
  top(tone: string, [x, y, z]: Place, width: number, depth: number): this {
    return this.poly(tone, [x, y, z], [x + width, y, z], [x + width, y + depth, z], [x, y + depth, z]);
  }

  /** A solid with right angles: its outline in the front's tone first, so that no seam shows the ground. */
  box(material: string, [x, y, z]: Place, width: number, depth: number, height: number): this {
    const [right, back, head] = [x + width, y + depth, z + height];
    this.poly(
      `${material}2`,
      ...([
        [x, y, z],
        [right, y, z],
        [right, back, z],
        [right, back, head],
        [x, back, head],
        [x, y, head],
      ] as Place[]),
    );
    return this.side(`${material}3`, [right, y, z], depth, height).top(
      `${material}1`,
      [x, y, head],
      width,
      depth,
    );
  }

  /** A disc that faces along an axis. */
  disc(tone: string, centre: Place, radius: number, axis: Axis = "z"): this {
    const [cx, cy] = this.at(centre);
    const [mx, my] = this.#across(axis, radius);
    this.#reachRound([cx, cy], radius);
    const half = this.#half(axis, radius);
    return this.flat(
      tone,
      `M${n(cx - mx)} ${n(cy - my)}${half}1 ${pair(2 * mx, 2 * my)}${half}1 ${pair(-2 * mx, -2 * my)}z`,
    );
  }

  /** A round solid that starts at `start` and runs along an axis. `cap` is the tone of the end that is seen. */
  rod(
    material: string,
    [x, y, z]: Place,
    radius: number,
    length: number,
    axis: Axis = "z",
    cap = `${material}1`,
  ): this {
    const end: Place = [
      x + (axis === "x" ? length : 0),
      y + (axis === "y" ? length : 0),
      z + (axis === "z" ? length : 0),
    ];
    const [near, far] = axis === "y" ? [[x, y, z] as Place, end] : [end, [x, y, z] as Place];
    const [nx, ny] = this.at(near);
    const [fx, fy] = this.at(far);
    const [mx, my] = this.#across(axis, radius);
    const half = this.#half(axis, radius);
    this.#reachRound([fx, fy], radius);
    const turn = axis === "y" ? 0 : 1;
    const back = pair(-2 * mx, -2 * my);
    this.flat(
      `${material}2`,
      `M${n(fx + mx)} ${n(fy + my)}${half}${turn} ${back}L${n(nx - mx)} ${n(ny - my)}L${n(nx + mx)} ${n(ny + my)}z`,
    );
    // The shaded side begins at a quarter of the radius.
    const [ax, ay] = this.#away(axis, radius);
    const [px, py] = [mx * 0.25 + ax * 0.97, my * 0.25 + ay * 0.97];
    this.flat(
      `${material}3`,
      `M${n(fx + px)} ${n(fy + py)}${half}${1 - turn} ${pair(mx - px, my - py)}L${n(nx + mx)} ${n(ny + my)}L${n(nx + px)} ${n(ny + py)}z`,
    );
    return this.disc(cap, near, radius, axis);
  }

  /** A pipe as wide as the brand's line, with or without water in it. */
  pipe(filling: "water" | "empty", ...places: Place[]): this {
    return this.wire(filling === "water" ? "pf" : "pd", ...places);
  }

  /** A wire or a lead along places in the room. */
  wire(tone: string, ...places: Place[]): this {
    this.reach(...places.map((place) => this.at(place)));
    return this.flat(tone, `M${places.map((place) => pair(...this.at(place))).join("L")}`);
  }

  /** A floor with the shadow of what stands on it. */
  floor([x, y, z]: Place, width: number, depth: number, room = 26): this {
    return this.around(() => {
      this.top("f1", [x - room, y - room, z], width + 2 * room, depth + 2 * room);
      this.top("f2", [x - 4, y - 9, z], width + 13, depth + 8);
    });
  }

  /** A path in pixels of the room, drawn on the paper around a place; it starts with a moveto and has no arcs. */
  sketch(tone: string, place: Place, path: string): this {
    const [x, y] = this.at(place);
    const scaled = path.replace(/-?[\d.]+/g, (number) => `${n(Number(number) * this.#scale)} `);
    return this.flat(tone, `M${pair(x, y)}${scaled.replace("M", "m")}`);
  }

  /** A word for a part: a dot on the part, and where the word stands on the paper. Its text is in pictures.yaml. */
  name(word: string, part: Place | Flat, [x, y]: Flat): this {
    const [px, py] = part.length === 3 ? this.at(part) : part;
    this.shapes.push(`@${word} ${pair(px, py)} ${pair(x, y)}`);
    return this;
  }

  #across(axis: Axis, radius: number): Flat {
    const [x, y] = ways[axis];
    const far = radius * long * this.#scale;
    return [-y * far, x * far];
  }

  /** Away from the end that is seen, half the width of its ellipse. */
  #away(axis: Axis, radius: number): Flat {
    const [x, y] = ways[axis];
    const far = radius * short * this.#scale * (axis === "y" ? 1 : -1);
    return [x * far, y * far];
  }

  #half(axis: Axis, radius: number): string {
    const angle = { x: -60, y: 60, z: 0 }[axis];
    return `a${n(radius * long * this.#scale)} ${n(radius * short * this.#scale)} ${angle} 0 `;
  }

  #reachRound([x, y]: Flat, radius: number): void {
    const far = radius * this.#scale;
    this.reach([x - far, y - far], [x + far, y + far]);
  }

  #closed(tone: string, corners: Flat[]): this {
    const [first, ...rest] = corners as [Flat, ...Flat[]];
    this.reach(...corners);
    let before = first;
    const steps = rest.map((corner) => {
      const step = pair(corner[0] - before[0], corner[1] - before[1]);
      before = corner;
      return step;
    });
    return this.flat(tone, `M${pair(...first)}l${steps.join(" ")}z`);
  }
}

/**
 * Draws a scene as large as it fits into a part of the paper, in its middle.
 * @param scene is drawn twice: first to see how large it is
 */
export function draw([left, top, right, bottom]: Area, scene: (pen: Pen) => unknown): string[] {
  const trial = new Pen([0, 0], 1);
  scene(trial);
  const { bounds } = trial;
  const [width, height] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
  const scale = Math.min((right - left) / width, (bottom - top) / height);
  const start = (from: number, to: number, low: number, size: number) =>
    (from + to) / 2 - (low + size / 2) * scale;
  const pen = new Pen(
    [start(left, right, bounds.left, width), start(top, bottom, bounds.top, height)],
    scale,
  );
  scene(pen);
  return pen.shapes;
}
