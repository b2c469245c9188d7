import { evenLight } from "./even-light.ts";
import { type Grey, scaleTo, shadeAt } from "./grey.ts";

/** Degrees to either side within which lines of print are looked for; what is more aslant is turned by a quarter. */
const widest = 45;

/** Pixels of the longer side of the small copy that angles are tried on: lines of print are still apart in it. */
const smallSide = 480;

/**
 * How far lines of print lean, in degrees clockwise from level, -45 to 45: the angle at which the sums of edges along
 * lines differ most from line to line (projection profiles; Baird, "The skew angle of printed documents", 1987).
 */
export function leanOf(picture: Grey): number {
  const edges = edgesOf(evenLight(scaleTo(picture, smallSide), 20));
  const best = (from: number, to: number, step: number) => {
    let [most, at] = [-1, 0];
    for (let angle = from; angle <= to; angle += step) {
      const contrast = contrastOfLines(edges, angle);
      if (contrast > most) [most, at] = [contrast, angle];
    }
    return at;
  };
  const rough = best(-widest, widest, 1.5);
  return best(rough - 1.5, rough + 1.5, 0.25);
}

/** Turned back by so many degrees; what comes in at the corners continues the edge. */
export function rotate(picture: Grey, degrees: number): Grey {
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

/** Where shades change from a pixel to the one below: the tops and bottoms of print. */
function edgesOf({ width, height, data }: Grey): Grey {
  const edges = new Uint8Array(data.length);
  for (let at = 0; at < width * (height - 1); at++)
    edges[at] = Math.min(255, Math.abs((data[at] ?? 0) - (data[at + width] ?? 0)));
  return { width, height, data: edges };
}

/** How much the sums along lines of one angle differ from each to the next, squared. */
function contrastOfLines({ width, height, data }: Grey, degrees: number): number {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const offset = Math.ceil(width * Math.abs(sin)) + 1;
  const sums = new Float64Array(Math.ceil(height * cos) + 2 * offset + 2);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const line = Math.round(y * cos - x * sin) + offset;
      sums[line] = (sums[line] ?? 0) + (data[y * width + x] ?? 0);
    }
  let contrast = 0;
  for (let line = 1; line < sums.length; line++) contrast += ((sums[line] ?? 0) - (sums[line - 1] ?? 0)) ** 2;
  return contrast;
}
