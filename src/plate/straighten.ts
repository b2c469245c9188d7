import { evenLight } from "./even-light.ts";
import { type Grey, quarterTurn, scaleTo, shadeAt } from "./grey.ts";

/** Degrees to either side within which lines of print are looked for; what is more aslant is turned by a quarter. */
const widest = 40;

/** Pixels of the longer side of the small copy that angles are tried on: lines of print are still apart in it. */
const smallSide = 480;

/** A step from line to line, in shades, beyond which it is the edge of the plate and no line of print (tuned). */
const frame = 12;

/** How much clearer lines of print have to be down than across (tuned: turned photos have 1.4 to 9, others 0.2 to 1.3). */
const plain = 1.4;

/** An edge in shades up to which it is noise, or the squares that a camera's file is packed in (tuned). */
const faint = 10;

/** How print lies in a picture: its lines run across or down, and lean by so many degrees clockwise. */
export type Lie = { isUpended: boolean; lean: number };

/**
 * How lines of print lie: the angle at which the sums of edges along lines differ most from line to line (projection
 * profiles; Baird, "The skew angle of printed documents", 1987), of the picture as it is and turned by a quarter.
 */
export function lieOf(picture: Grey): Lie {
  const small = evenLight(scaleTo(picture, smallSide), 20);
  const across = leanOf(small);
  const down = leanOf(quarterTurn(small, 1));
  // Most people hold the phone along the print: it has to be plain that they did not.
  const isUpended = (down.lines / across.lines) * (down.squares / across.squares) > plain;
  return { isUpended, lean: (isUpended ? down : across).lean };
}

function leanOf(small: Grey): { lean: number; lines: number; squares: number } {
  const edges = edgesOf(small);
  const best = (from: number, to: number, step: number) => {
    let found = { squares: -1, lines: 0, lean: 0 };
    for (let lean = from; lean <= to; lean += step) {
      const here = contrastOfLines(edges, lean);
      if (here.squares > found.squares) found = { ...here, lean };
    }
    return found;
  };
  const rough = best(-widest, widest, 1).lean;
  return best(rough - 1, rough + 1, 0.25);
}

/** Turned back by so many degrees; what comes in at the corners continues the edge. */
export function rotate(picture: Grey, degrees: number): Grey {
  if (Math.abs(degrees) < 0.3) return picture;
  const { width, height } = picture;
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const wide = Math.round(width * Math.abs(cos) + height * Math.abs(sin));
  const high = Math.round(width * Math.abs(sin) + height * Math.abs(cos));
  const data = new Uint8Array(wide * high);
  for (let y = 0; y < high; y++)
    for (let x = 0; x < wide; x++) {
      const [right, down] = [x - wide / 2, y - high / 2];
      data[y * wide + x] = shadeAt(
        picture,
        right * cos - down * sin + width / 2,
        right * sin + down * cos + height / 2,
      );
    }
  return { width: wide, height: high, data };
}

/** Where shades change, to the right or below: print, whichever way it runs. A photo's own border is none. */
function edgesOf({ width, height, data }: Grey): Grey {
  const edges = new Uint8Array(data.length);
  const border = Math.ceil(0.02 * Math.max(width, height));
  for (let y = border; y < height - border; y++)
    for (let x = border; x < width - border; x++) {
      const at = y * width + x;
      const shade = data[at] ?? 0;
      const edge = Math.abs(shade - (data[at + 1] ?? 0)) + Math.abs(shade - (data[at + width] ?? 0));
      edges[at] = Math.max(0, (edge >> 1) - faint);
    }
  return { width, height, data: edges };
}

/**
 * How much the means along lines of one angle differ from each to the next: squared and weighed by the lines' length,
 * for the angle; and as they are, which the two edges of a plate weigh little in, for telling lines from columns. A
 * pixel counts for the two lines that it lies between: in whole steps some angles would differ by their grid alone.
 */
function contrastOfLines({ width, height, data }: Grey, degrees: number): { squares: number; lines: number } {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const offset = Math.ceil(width * Math.abs(sin)) + 1;
  const sums = new Float64Array(Math.ceil(height * cos) + 2 * offset + 3);
  const counts = new Float64Array(sums.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const place = y * cos - x * sin + offset;
      const line = Math.floor(place);
      const below = place - line;
      const edge = data[y * width + x] ?? 0;
      sums[line] = (sums[line] ?? 0) + edge * (1 - below);
      sums[line + 1] = (sums[line + 1] ?? 0) + edge * below;
      counts[line] = (counts[line] ?? 0) + 1 - below;
      counts[line + 1] = (counts[line + 1] ?? 0) + below;
    }
  let [squares, lines, mean] = [0, 0, 0];
  const fewest = Math.min(width, height) / 4;
  for (let line = 1; line < sums.length; line++) {
    const [here, before] = [counts[line] ?? 0, counts[line - 1] ?? 0];
    if (here < fewest || before < fewest) continue;
    const step = (sums[line] ?? 0) / here - (sums[line - 1] ?? 0) / before;
    squares += step * step * Math.min(here, before);
    lines += Math.min(frame, Math.abs(step));
    mean += (sums[line] ?? 0) / here;
  }
  return { squares, lines: lines / Math.max(1, mean) };
}
