/** A picture in shades of grey, row by row from the top; 0 is black. */
export type Grey = { width: number; height: number; data: Uint8Array };

/** What a canvas gives: four bytes a pixel, red, green, blue and opacity. */
export type Pixels = { width: number; height: number; data: Uint8ClampedArray };

/** Colours as brightness, by the weights of ITU-R BT.601. */
export function toGrey({ width, height, data }: Pixels): Grey {
  const grey = new Uint8Array(width * height);
  for (let at = 0; at < grey.length; at++)
    grey[at] = ((data[4 * at] ?? 0) * 77 + (data[4 * at + 1] ?? 0) * 150 + (data[4 * at + 2] ?? 0) * 29) >> 8;
  return { width, height, data: grey };
}

/** Black for white. */
export function invert({ width, height, data }: Grey): Grey {
  return { width, height, data: data.map((shade) => 255 - shade) };
}

/** Turned clockwise by that many quarters. */
export function quarterTurn(picture: Grey, quarters: number): Grey {
  const { width, height, data } = picture;
  const turns = ((quarters % 4) + 4) % 4;
  if (turns === 0) return picture;
  const turned = new Uint8Array(data.length);
  const wide = turns === 2 ? width : height;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [to, row] =
        turns === 1
          ? [height - 1 - y, x]
          : turns === 2
            ? [width - 1 - x, height - 1 - y]
            : [y, width - 1 - x];
      turned[row * wide + to] = data[y * width + x] ?? 0;
    }
  return { width: wide, height: data.length / wide, data: turned };
}

/** Scaled by averages where it shrinks, and between neighbours where it grows, so that its longer side has `side` pixels. */
export function scaleTo(picture: Grey, side: number): Grey {
  const factor = side / Math.max(picture.width, picture.height);
  const width = Math.max(1, Math.round(picture.width * factor));
  const height = Math.max(1, Math.round(picture.height * factor));
  const data = new Uint8Array(width * height);
  // Samples for each new pixel and side: enough that no old pixel is left out.
  const samples = Math.min(8, Math.max(1, Math.round(1 / factor)));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let down = 0; down < samples; down++)
        for (let across = 0; across < samples; across++)
          sum += shadeAt(
            picture,
            (x + (across + 0.5) / samples) / factor - 0.5,
            (y + (down + 0.5) / samples) / factor - 0.5,
          );
      data[y * width + x] = sum / (samples * samples);
    }
  return { width, height, data };
}

/** The shade between pixels; beyond the edge that of the edge. */
export function shadeAt({ width, height, data }: Grey, x: number, y: number): number {
  const inX = Math.min(width - 1, Math.max(0, x));
  const inY = Math.min(height - 1, Math.max(0, y));
  const left = Math.floor(inX);
  const top = Math.floor(inY);
  const right = Math.min(width - 1, left + 1);
  const bottom = Math.min(height - 1, top + 1);
  const [across, down] = [inX - left, inY - top];
  const above = (data[top * width + left] ?? 0) * (1 - across) + (data[top * width + right] ?? 0) * across;
  const below =
    (data[bottom * width + left] ?? 0) * (1 - across) + (data[bottom * width + right] ?? 0) * across;
  return above * (1 - down) + below * down;
}
