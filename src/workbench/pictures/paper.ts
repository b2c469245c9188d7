/** A place on the paper. */
export type Flat = [x: number, y: number];
/** A part of the paper. */
export type Area = [left: number, top: number, right: number, bottom: number];

/** What every drawing is drawn in, in pixels of its own. */
export const frame = { width: 320, height: 168 };

/** Shapes on the paper, in the order in which they are drawn. */
export class Paper {
  /** As `Drawing` of the panel wants them. */
  readonly shapes: string[] = [];
  /** What the solids take of the paper; floors and words may reach further. */
  readonly bounds = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

  /** A shape drawn on the paper itself. */
  flat(tone: string, path: string): this {
    this.shapes.push(`${tone} ${path}`);
    return this;
  }

  /** What may be cut off at the paper's edge: it does not count where a scene is fitted in. */
  around(surroundings: () => unknown): this {
    const before = { ...this.bounds };
    surroundings();
    Object.assign(this.bounds, before);
    return this;
  }

  /** The arrow of what to do, from one place on the paper to another. */
  arrow([x, y]: Flat, [toX, toY]: Flat): this {
    const length = Math.hypot(toX - x, toY - y);
    const along = (far: number, aside: number) =>
      pair(
        x + ((toX - x) * far - (toY - y) * aside) / length,
        y + ((toY - y) * far + (toX - x) * aside) / length,
      );
    const neck = length - 11;
    const outline = [
      [0, -2.6],
      [neck, -2.6],
      [neck, -7.5],
      [length, 0],
      [neck, 7.5],
      [neck, 2.6],
      [0, 2.6],
    ];
    return this.flat("a2", `M${outline.map(([far = 0, aside = 0]) => along(far, aside)).join("L")}z`);
  }

  /** The arrow of a turn: along an ellipse on the paper, between two angles in degrees, clockwise where `to` is larger. */
  turn([x, y]: Flat, [rx, ry]: Flat, from: number, to: number): this {
    const on = (angle: number, by = 0): Flat => {
      const a = (angle * Math.PI) / 180;
      return [x + (rx + by) * Math.cos(a), y + (ry + by) * Math.sin(a)];
    };
    const sign = Math.sign(to - from);
    const neck = to - sign * Math.min(Math.abs(to - from) / 2, 800 / (rx + ry));
    const large = Math.abs(neck - from) > 180 ? 1 : 0;
    this.flat(
      "ar",
      `M${pair(...on(from))}A${n(rx)} ${n(ry)} 0 ${large} ${sign > 0 ? 1 : 0} ${pair(...on(neck))}`,
    );
    return this.flat("a2", `M${pair(...on(neck, -7))}L${pair(...on(to))}L${pair(...on(neck, 7))}z`);
  }

  protected reach(...points: Flat[]): void {
    for (const [x, y] of points) {
      this.bounds.left = Math.min(this.bounds.left, x);
      this.bounds.top = Math.min(this.bounds.top, y);
      this.bounds.right = Math.max(this.bounds.right, x);
      this.bounds.bottom = Math.max(this.bounds.bottom, y);
    }
  }
}

/** A number in as few letters as a path takes: a tenth of a pixel is finer than a screen. */
export function n(value: number): string {
  return `${Math.round(value * 10) / 10 || 0}`.replace(/^(-?)0\./, "$1.");
}

/** Both coordinates of a place on the paper. */
export const pair = (x: number, y: number) => `${n(x)} ${n(y)}`;
