import { pair } from "./paper.ts";

/** More names than these would cover the drawing: they are numbered, and stand below. */
const mostNames = 3;
const lineHeight = 15;

/** What a phone draws in one language: paths by their class, and texts as `T… x y words`. */
export type Labelled = { shapes: string[]; legend: string[] };

/** The names of parts in a drawing; a number is none. */
export const namesIn = (shapes: string[]): string[] =>
  shapes.flatMap((shape) => shape.match(/^@(\D\S*)/)?.[1] ?? []);

/**
 * Puts words to the parts of a drawing: a dot on the part, a line, and its name where the line ends, or a number with
 * the names below. A line of water becomes its wall and, within it, what it holds.
 */
export function label(shapes: string[], wordsOf: (part: string) => string): Labelled {
  const parts = namesIn(shapes);
  const legend = parts.length > mostNames ? parts.map(wordsOf) : [];
  const drawn = shapes.flatMap((shape) => {
    const [kind = "", ...places] = shape.split(" ");
    if (/^p[fd]$/.test(kind)) return [shape, `${kind}i${shape.slice(2)}`];
    if (kind[0] !== "@") return [shape];
    const part = kind.slice(1);
    const [x = 0, y = 0, toX = 0, toY = 0] = places.map(Number);
    const side = toX < x ? -1 : 1;
    const number = /^\d$/.test(part) ? part : legend.length && parts.indexOf(part) + 1;
    if (number)
      return [
        `cl M${pair(x, y)}L${pair(toX, toY)}`,
        dot(x, y, 2.5),
        dot(toX, toY, 9),
        `Tn ${pair(toX, toY + 5)} ${number}`,
      ];
    const lines = wordsOf(part).split("\n");
    const texts = lines.map((line, i) => {
      const foot = toY + 5 + (i - (lines.length - 1) / 2) * lineHeight;
      return `${side < 0 ? "Te" : "Ts"} ${pair(toX + 4 * side, foot)} ${line}`;
    });
    return [`cl M${pair(x, y)}L${pair(toX - 9 * side, toY)}H${toX}`, dot(x, y, 2.5), ...texts];
  });
  return { shapes: drawn, legend };
}

const dot = (x: number, y: number, radius: number) =>
  `n M${pair(x - radius, y)}${[1, -1].map((way) => `a${radius} ${radius} 0 1 1 ${2 * radius * way} 0`).join("")}`;
