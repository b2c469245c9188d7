/** Red, green and blue, each 0 to 255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/**
 * The contrast ratio of two colours, 1 to 21, whichever is in front (WCAG 2.2, 'contrast ratio' and 'relative
 * luminance').
 */
export function contrastOf(one: Rgb, other: Rgb): number {
  const [dark = 0, light = 0] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminanceOf(colour: Rgb): number {
  const [red = 0, green = 0, blue = 0] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** A colour as a console names it: `#07456b`. */
export function hexOf(colour: Rgb): string {
  return `#${colour.map((value) => Math.round(value).toString(16).padStart(2, "0")).join("")}`;
}

/**
 * A colour as browsers write a computed one: `rgb(…)`, `color(srgb …)`, or six hexadecimal digits.
 * @returns null where it is written in other ways, or something shows through it
 */
export function rgbOf(written: string): Rgb | null {
  const text = written.trim();
  const digits = /^#(..?)(..?)(..?)$/.exec(text);
  if (digits && (text.length === 4 || text.length === 7)) {
    const [red = 0, green = 0, blue = 0] = digits
      .slice(1)
      .map((value) => Number.parseInt(value.length === 1 ? value + value : value, 16));
    return [red, green, blue];
  }
  const scale = /^rgba?\(/.test(text) ? 1 : /^color\(srgb /.test(text) ? 255 : 0;
  const [red, green, blue, alpha = 1] =
    text
      .slice(text.indexOf("(") + 1)
      .match(/-?(\d+\.?\d*|\.\d+)(e-?\d+)?/g)
      ?.map(Number) ?? [];
  if (!scale || red === undefined || green === undefined || blue === undefined || alpha < 1) return null;
  const within = (value: number) => Math.min(255, Math.max(0, value * scale));
  return [within(red), within(green), within(blue)];
}
